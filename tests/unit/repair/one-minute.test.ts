import { describe, expect, it } from 'vitest';
import { celsius } from '../../../src/cure/units.js';
import type { HeatEvent } from '../../../src/cure/history.js';
import { colderInOneMinute } from '../../../src/repair/one-minute.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const read = (at: string, value: number): HeatEvent => ({ kind: 'reading', at: on(at), value: celsius(value) });
const values = (events: readonly HeatEvent[], maximum: number | null = null): number[] =>
  colderInOneMinute(events, maximum === null ? null : celsius(maximum)).flatMap((event) => (event.kind === 'reading' ? [event.value] : []));

// Common practice, no source: strength is judged at the coldest spot of the joint.
describe('two readings in one minute', () => {
  it.each<[string, HeatEvent[], number[]]>([
    ['the warmer one second', [read('09:00', 30), read('09:00', 40)], [30, 30]],
    ['the colder one second', [read('09:00', 40), read('09:00', 30)], [40, 30]],
    ['three places', [read('09:00', 40), read('09:00', 30), read('09:00', 40)], [40, 30, 30]],
    ['a minute later it is another reading', [read('09:00', 30), read('09:01', 40)], [30, 40]],
    ['the lamp was set between them', [read('09:00', 30), { kind: 'lamp-set', at: on('09:00'), setting: celsius(60), heater: 'lamp' }, read('09:00', 40)], [30, 40]],
  ])('count as the colder: %s', (_what, events, wanted) => {
    expect(values(events)).toEqual(wanted);
  });

  it('hide no harm: one over the maximum stays what it is', () => {
    expect(values([read('09:00', 58), read('09:00', 88)], 85)).toEqual([58, 88]);
  });

  it('never make a strength earlier than the coldest of them alone', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '09:30', { kind: 'read', job: '501', value: warm(30) });
    const cold = shift.due('501', 'handling');
    shift.enters('wren', '09:30', { kind: 'read', job: '501', value: warm(40) });
    expect(shift.due('501', 'handling')).toBe(cold);
  });

  it('raise the alarm when the second is too hot', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '09:30', { kind: 'read', job: '501', value: warm(58) });
    shift.enters('wren', '09:30', { kind: 'read', job: '501', value: warm(88) });
    shift.until('09:31');
    expect(shift.heard('safety').length).toBeGreaterThan(0);
  });
});
