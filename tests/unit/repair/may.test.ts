import { describe, expect, it } from 'vitest';
import { composeMay } from '../../../src/reply/compose/may.js';
import { toText } from '../../../src/reply/to-text.js';
import { jobNo } from '../../../src/repair/ids.js';
import { mayNow, type Deed } from '../../../src/repair/may.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const DEEDS: readonly Deed[] = ['sand', 'weld', 'move', 'bake', 'fill', 'unclamp'];

function asks(shift: Shift, when: string, deed: Deed, job: string | null = '501'): string {
  shift.until(when);
  const now = on(when);
  const may = mayNow({ kind: 'may', job: job === null ? null : jobNo(job), joint: null, deed }, shift.situation('wren', now));
  return toText(composeMay(may, { shop: shift.shop, now }));
}

/** P1 at 65 °C from 09:00: handling 09:25, full 10:20. */
function bonded(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
  shift.enters('tomek', '09:00', { kind: 'read', job: '501', value: warm(65) });
  return shift;
}

describe('a question about what stands against a deed', () => {
  it.each([
    ['sand', /^501 NOT yet\. Full 10:20 earliest\. Squeeze-out clogs paper/],
    ['weld', /^501 NOT yet\. Full 10:20 earliest\. Heat/],
    ['fill', /^501 NOT yet\. Full 10:20 earliest\. Filler/],
    ['bake', /^501 NOT yet\. Full 10:20 earliest\. The oven/],
    ['move', /^501 NOT yet\. Handling 09:25 earliest\. A push/],
    ['unclamp', /^501 NOT yet\. Handling 09:25 earliest\. The gap/],
  ] as const)('about %s names the wait and one reason', (deed, words) => {
    expect(asks(bonded(), '09:10', deed)).toMatch(words);
  });

  it('says that a check is open once it is due', () => {
    expect(asks(bonded(), '10:30', 'sand')).toMatch(/Full due since 10:20 and not checked/);
  });

  it('names who confirmed it, who decides, and the caution', () => {
    const shift = bonded();
    shift.enters('ines', '09:27', { kind: 'check', job: '501', milestone: 'handling', result: 'hard' });
    expect(asks(shift, '09:30', 'unclamp')).toMatch(/^501 handling confirmed 09:27 by Ines\. Data sheet and repair method decide\.\nClamps off one at a time/);
    expect(asks(shift, '09:30', 'sand')).toMatch(/NOT yet\. Full 10:20/);
  });

  it('to bake waits for the end of a fire watch, whatever else is confirmed', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'weld', job: '501' });
    expect(asks(shift, '09:05', 'bake')).toMatch(/^501 NOT yet\. Hot work goes on and nobody watches so far\./);
    shift.enters('tomek', '09:10', { kind: 'done', job: '501', step: 'weld' });
    expect(asks(shift, '09:30', 'bake')).toMatch(/^501 NOT yet\. Fire watch 10:10 earliest\. Oven heat/);
    expect(asks(shift, '10:11', 'bake')).toMatch(/^501 NOT yet\. Fire watch due since 10:10 and not checked\./);
    shift.enters('tomek', '10:12', { kind: 'check', job: '501', milestone: 'fire-watch', result: 'hard' });
    expect(asks(shift, '10:13', 'bake')).not.toContain('Fire watch');
  });

  it('says that it is held', () => {
    const shift = bonded();
    shift.enters('tomek', '09:26', { kind: 'check', job: '501', milestone: 'handling', result: 'hard' });
    shift.enters('ines', '09:27', { kind: 'hold', job: '501', reason: 'panel bowed' });
    expect(asks(shift, '09:30', 'unclamp')).toMatch(/NOT yet\. HELD by Ines since 09:27: panel bowed/);
  });

  it('says that a cure is held', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(asks(shift, '09:05', 'sand')).toMatch(/NOT yet\. Not noted as closed/);
    shift.enters('tomek', '10:30', { kind: 'closed', job: '501' });
    expect(asks(shift, '10:31', 'sand')).toMatch(/NOT yet\. Full HELD, open limit was passed: the foreman decides/);
  });

  it('says that it sleeps', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'air', value: warm(12) });
    shift.enters('tomek', '09:01', { kind: 'cure', job: '501', card: 'P1' });
    expect(asks(shift, '09:10', 'sand')).toMatch(/NOT yet\. Full asleep, too cold \(needs 15 °C\)/);
  });

  it('knows nothing about a car without entries', () => {
    expect(asks(new Shift(), '09:00', 'sand')).toMatch(/^501: nothing entered about 501: no clock runs/);
  });

  it('asks which car where several wait', () => {
    const shift = bonded();
    shift.enters('tomek', '09:05', { kind: 'cure', job: '502', card: 'P1' });
    expect(asks(shift, '09:10', 'sand', null)).toMatch(/Which job/);
    expect(asks(bonded(), '09:10', 'sand', null)).toMatch(/^501 NOT yet/);
  });

  it('waits for filler where filler is what would be sanded', () => {
    const shift = new Shift();
    shift.enters('wren', '10:10', { kind: 'cure', job: '501', card: 'F1' });
    expect(asks(shift, '10:40', 'sand')).toMatch(/^501 NOT yet\. Sanding time .* Paper clogs/);
  });

  it('takes what holds the car longest, of all that is on it', () => {
    const shift = bonded();
    shift.enters('tomek', '09:05', { kind: 'cure', job: '501', card: 'P1', joint: 'j2' });
    expect(asks(shift, '09:10', 'weld')).toMatch(/^501 j2 NOT yet\..*1 more wait on this car/);
  });

  it('has no time where no card has one', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'E1' });
    expect(asks(shift, '09:10', 'weld')).toMatch(/no sheet time for welding on E1/);
  });

  it.each(['weld', 'bake'] as const)('says STOP to %s on a car with wax in it', (deed) => {
    const shift = bonded();
    shift.enters('tomek', '10:25', { kind: 'check', job: '501', milestone: 'full', result: 'hard' });
    shift.enters('tomek', '11:00', { kind: 'cure', job: '501', card: 'W1', joint: 'j2' });
    expect(asks(shift, '11:10', deed)).toMatch(/^501 STOP: no heat, no flame\. W1 is in this car since 11:00/);
  });

  it('gives leave to nothing', () => {
    const shift = bonded();
    shift.enters('tomek', '10:25', { kind: 'check', job: '501', milestone: 'full', result: 'hard' });
    for (const deed of DEEDS) expect(asks(shift, '10:30', deed)).not.toMatch(/\b(?:yes|you may|you can|go ahead|ok)\b/i);
  });
});
