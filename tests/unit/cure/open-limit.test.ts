import { describe, expect, it } from 'vitest';
import type { AirStep } from '../../../src/cure/air.js';
import { openLimit } from '../../../src/cure/open-limit.js';
import { celsius } from '../../../src/cure/units.js';
import { cardNamed } from '../../support/card-shelf.js';
import { on, said } from '../../support/joint.js';

const step = (from: string, temperature: number | null): AirStep => ({ from: on(from), temperature: temperature === null ? null : celsius(temperature), humidity: null, vapour: null, source: 'air reading' });

interface Given {
  readonly card?: string;
  readonly pasted?: string;
  readonly until?: string;
  readonly readings?: readonly (readonly [string, number])[];
}

function limit(air: readonly AirStep[], { card = 'P1', pasted = '09:00', until, readings = [] }: Given = {}): string {
  const open = openLimit(cardNamed(card), { pasted: on(pasted), until: until === undefined ? null : on(until), air, readings: readings.map(([at, value]) => ({ at: on(at), value: celsius(value) })) });
  if (open.kind === 'none') return 'none';
  return open.kind === 'too hot' ? `${said(open.at)} too hot ${open.temperature}` : `${said(open.at)} ${open.minutes} min at ${open.temperature ?? 'unknown'}`;
}

describe('the open limit', () => {
  it.each<[string, readonly AirStep[], Given, string]>([
    ['at 20 °C', [step('09:00', 20)], {}, '10:00 60 min at 20'],
    ['at 27 °C by the next hotter row', [step('09:00', 27)], {}, '09:30 30 min at 27'],
    ['colder than the coldest row gives no more', [step('09:00', 5)], {}, '10:00 60 min at 5'],
    ['hotter air later makes it earlier', [step('09:00', 20), step('09:20', 27)], {}, '09:30 30 min at 27'],
    ['even into the past', [step('09:00', 20), step('09:50', 27)], {}, '09:30 30 min at 27'],
    ['hotter air after it says nothing', [step('09:00', 20), step('10:00', 27)], {}, '10:00 60 min at 20'],
    ['hotter air after the panel was closed says nothing', [step('09:00', 20), step('09:50', 27)], { until: '09:41' }, '10:00 60 min at 20'],
    ['colder air later does not make it later', [step('09:00', 27), step('09:10', 20)], {}, '09:30 30 min at 27'],
    ['a hotter joint counts as well', [step('09:00', 20)], { readings: [['09:10', 24]] }, '09:30 30 min at 24'],
    ['a joint read before the paste does not', [step('09:00', 20)], { readings: [['08:50', 24]] }, '10:00 60 min at 20'],
    ['unknown air is the hottest row', [step('09:00', null)], {}, '09:30 30 min at unknown'],
    ['unknown air that is read in time', [step('09:00', null), step('09:10', 20)], {}, '10:00 60 min at 20'],
    ['unknown air that is read too late', [step('09:00', null), step('09:40', 20)], {}, '09:30 30 min at unknown'],
    ['hotter than any row: do not start', [step('09:00', 31)], {}, '09:00 too hot 31'],
    ['hotter than any row from later on', [step('09:00', 20), step('09:20', 31), step('09:25', 20)], {}, '09:20 too hot 31'],
    ['a plain number of minutes, whatever the air', [step('09:00', 40)], { card: 'T1' }, '09:03 3 min at 40'],
    ['rounded down', [step('09:00:40', 20)], { pasted: '09:00:40' }, '10:00 60 min at 20'],
    ['no open time on the sheet', [step('09:00', 20)], { card: 'F1' }, 'none'],
  ])('%s', (_name, air, given, expected) => {
    expect(limit(air, given)).toBe(expected);
  });
});
