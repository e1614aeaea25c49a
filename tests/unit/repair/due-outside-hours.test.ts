import { describe, expect, it } from 'vitest';
import { on, said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

/** P1 with 30 °C at the joint: handling 150 min after closing. */
function warmP1(at: string, job = '501', shift = new Shift()): Shift {
  shift.enters('tomek', at, { kind: 'cure', job, card: 'P1' });
  shift.enters('tomek', at, { kind: 'read', job, value: warm(30) });
  return shift;
}

describe('outside shop hours', () => {
  it('everything waits for one bundle at opening, with its true time', () => {
    const shift = new Shift({ night: null });
    shift.enters('tomek', 'Fri 16:58', { kind: 'cure', job: '501', card: 'E1' });
    expect(shift.plan().map((one) => [one.kind, said(one.dueAt), said(one.ringAt), one.route])).toEqual([['recoat-from', 'Fri 17:28', '2026-03-09 07:30', 'bundle']]);
  });

  it('what came due in the day and could not be said waits when the bot comes back at night', () => {
    const shift = warmP1('09:33');
    shift.until('11:50');
    expect(shift.plan(on('Tue 03:00')).map((one) => [one.kind, said(one.ringAt), one.route])).toEqual([['handling', 'Tue 07:30', 'bundle']]);
    shift.wakesUp('Tue 03:00');
    expect(shift.heard('handling')).toEqual([]);
    shift.wakesUp('Tue 07:30');
    expect(shift.heard('handling')).toEqual(['Tue 07:30 handling tomek']);
  });

  it('open limits, too much heat and decisions do not wait', () => {
    const shift = new Shift();
    shift.enters('tomek', '17:30', { kind: 'paste', job: '501', card: 'P1' });
    shift.until('19:00');
    expect(shift.posts.map((post) => `${said(post.saidAt)} ${post.route}`)).toEqual(['18:20 alone', '18:30 alone', '18:30 alone']);
  });

  it('a person who stays hears it at once, and the heat counts until midnight', () => {
    const shift = new Shift();
    shift.enters('tomek', '13:50', { kind: 'cure', job: '501', card: 'P1', setting: warm(30) });
    shift.enters('tomek', '15:20', { kind: 'read', job: '501', value: warm(30) });
    expect(shift.due('501', 'handling')).toBe('never');
    shift.enters('tomek', '16:50', { kind: 'stay', job: '501' });
    // 90 of 300 min at 20 °C, then 105 of 150 min at 30 °C.
    expect(shift.due('501', 'handling')).toBe('17:05');
    expect(shift.due('501', 'full')).toBe('never');
    shift.until('17:10');
    expect(shift.heard('handling')).toEqual(['17:05 handling tomek']);
  });

  it('staying counts for that evening only', () => {
    const shift = new Shift();
    shift.enters('tomek', '17:30', { kind: 'cure', job: '501', card: 'P2', setting: warm(35), stays: true });
    shift.enters('tomek', '18:55', { kind: 'check', job: '501', milestone: 'handling', result: 'hard' });
    expect(shift.says('tomek', 'Tue 16:10', { kind: 'lamp', job: '501', setting: warm(55) })).toMatchObject({ ok: false, refusal: { code: 'lamp-alone' } });
    expect(shift.due('501', 'handling')).toBe('18:50');
    expect(shift.due('501', 'full')).toBe('never');
  });

  it('a lamp put on after closing counts until midnight without anybody saying so', () => {
    const shift = new Shift();
    shift.enters('tomek', '18:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '18:00', { kind: 'read', job: '501', value: warm(20) });
    expect(shift.due('501', 'handling')).toBe('23:00');
    shift.enters('tomek', '19:30', { kind: 'cure', job: '502', card: 'P1' });
    shift.enters('tomek', '19:30', { kind: 'read', job: '502', value: warm(20) });
    expect(shift.due('502', 'handling')).toBe('never');
  });
});
