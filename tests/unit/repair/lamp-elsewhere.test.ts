import { describe, expect, it } from 'vitest';
import { readLine } from '../../../src/grammar/read-line.js';
import { lampName } from '../../../src/repair/ids.js';
import { CARDS } from '../../support/card-shelf.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const heaters = { lamp: lampName('A'), pad: lampName('1') };

/** The heater went from 501, where it was switched off, to 502. */
function moved(heater: 'lamp' | 'pad'): Shift {
  const shift = new Shift({ lamps: [heaters.lamp], pads: [heaters.pad] });
  const heat = { card: 'P1', setting: warm(40), heater, lamp: heaters[heater] };
  shift.enters('tomek', 'Tue 08:00', { kind: 'cure', job: '501', ...heat });
  shift.enters('tomek', 'Tue 08:05', { kind: 'off', job: '501' });
  shift.enters('tomek', 'Tue 08:10', { kind: 'cure', job: '502', ...heat });
  return shift;
}

const lamps = (shift: Shift): string[] => ['501', '502'].map((no) => shift.outlook(no).heat.lamp);

describe.each(['lamp', 'pad'] as const)('a %s that is on another job by now', (heater) => {
  it.each([
    ['on', { kind: 'on', job: '501' }, 'on 501 j1 at 2026-03-03T08:15:00.000Z yes'],
    ['set anew without its name', { kind: 'lamp', job: '501', setting: warm(45), heater }, `${heater} 501 j1 45 at 2026-03-03T08:15:00.000Z yes`],
  ] as const)('is asked about before it counts on two: %s', (_name, short, line) => {
    const shift = moved(heater);
    expect(shift.says('tomek', 'Tue 08:15', short)).toEqual({ ok: false, refusal: { code: 'lamp-elsewhere', lamp: heaters[heater], heater, job: '502', line } });
    expect(lamps(shift)).toEqual(['off', 'on']);
    const read = readLine(line, { now: on('Tue 08:15'), zone: 'UTC', cards: CARDS.map((card) => card.name), lamps: shift.shop.lamps, pads: shift.shop.pads, procedures: [], openJobs: [] });
    expect(read).toMatchObject({ ok: true, command: { kind: short.kind, job: '501', when: { confirmed: true } } });
    shift.enters('tomek', 'Tue 08:15', { ...short, yes: true });
    expect(lamps(shift)).toEqual(['on', 'off']);
  });

  it('is not asked about once it is off there, nor where it heats already', () => {
    const shift = moved(heater);
    shift.enters('tomek', 'Tue 08:12', { kind: 'on', job: '502' });
    shift.enters('tomek', 'Tue 08:15', { kind: 'off', job: '502' });
    shift.enters('tomek', 'Tue 08:20', { kind: 'on', job: '501' });
    expect(lamps(shift)).toEqual(['on', 'off']);
  });
});
