import { describe, expect, it } from 'vitest';
import { celsius } from '../../../src/cure/units.js';
import { said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const CLOSED_8 = { closedDays: celsius(8) };

/** The air that counts for one job's strength. */
const air = (shift: Shift, job: string): string[] => shift.outlook(job).air.map((step) => `${said(step.from)} ${step.temperature ?? 'nothing'} ${step.source}`);

describe('the air of a joint that stands over closed days', () => {
  it('sees the weekend ahead, days before it', () => {
    const shift = new Shift(CLOSED_8);
    shift.enters('tomek', 'Wed 16:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(air(shift, '501')).toEqual(['Wed 16:00 20 usual air', 'Wed 17:00 12 night setting', 'Fri 17:00 8 closed days']);
  });

  it('and a holiday ahead', () => {
    const shift = new Shift({ ...CLOSED_8, holidays: ['2026-03-05'] });
    shift.enters('tomek', 'Tue 16:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(air(shift, '501')).toEqual(['Tue 16:00 20 usual air', 'Tue 17:00 12 night setting', 'Wed 17:00 8 closed days']);
  });

  it('knows which closure it began in, also on its second day', () => {
    const shift = new Shift(CLOSED_8);
    shift.enters('tomek', 'Sun 11:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(air(shift, '501')).toEqual(['Sun 11:00 8 closed days']);
  });

  it('is not made warmer for the past by a reading that comes later', () => {
    const shift = new Shift({ ...CLOSED_8, holidays: ['2026-03-03'] });
    shift.enters('tomek', 'Mon 16:00', { kind: 'cure', job: '501', card: 'P1' });
    const before = air(shift, '501');
    shift.enters('ines', 'Thu 08:00', { kind: 'air', value: warm(20) });
    expect(before).toEqual(['16:00 20 usual air', '17:00 8 closed days']);
    expect(air(shift, '501')).toEqual([...before, 'Thu 08:00 20 air reading', 'Thu 11:00 20 old air reading', 'Thu 17:00 12 night setting', 'Fri 17:00 8 closed days']);
  });

  it('is that of any night in a shop that says nothing about closed days', () => {
    const shift = new Shift();
    shift.enters('tomek', 'Fri 16:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(air(shift, '501')).toEqual(['Fri 16:00 20 usual air', 'Fri 17:00 12 night setting']);
  });

  it('has no bearing on the open limit', () => {
    const limits = [CLOSED_8, {}].map((change) => {
      const shift = new Shift(change);
      shift.enters('tomek', 'Fri 16:30', { kind: 'paste', job: '501', card: 'P1' });
      return shift.outlook('501').open;
    });
    expect(limits[0]).toEqual(limits[1]);
  });
});
