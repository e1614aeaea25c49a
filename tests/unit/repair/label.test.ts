import { describe, expect, it } from 'vitest';
import { minutesBetween } from '../../../src/cure/units.js';
import { readLabelDate } from '../../../src/repair/label-date.js';
import { stepId } from '../../../src/repair/ids.js';
import { aStep, code, Walk } from '../../support/walk.js';

const job = '501';
const bond = aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' }, enter: ['batch', 'expiry', 'opened'], openedDays: 28 });

describe('a date as it stands on a label', () => {
  it.each<[string, string]>([
    ['11/26', '2026-11-01 30'],
    ['11-26', '2026-11-01 30'],
    ['11 2026', '2026-11-01 30'],
    ['2026-11', '2026-11-01 30'],
    ['2026/11', '2026-11-01 30'],
    ['30.11.2026', '2026-11-30 1'],
    ['30-11-26', '2026-11-30 1'],
    ['2026-11-30', '2026-11-30 1'],
    ['30 Nov 2026', '2026-11-30 1'],
    ['30. März 2027', '2027-03-30 1'],
    ['Nov 26', '2026-11-01 30'],
    ['ene 2027', '2027-01-01 31'],
    ['Dez. 2026', '2026-12-01 31'],
    // Day or month first: the earlier of the two counts.
    ['01/12/2026', '2026-01-12 1'],
    ['30/11/2026', '2026-11-30 1'],
    ['2024-02', '2024-02-01 29'],
  ])('%s is %s days', (typed, expected) => {
    const date = readLabelDate(typed, 'UTC');
    expect(date === null ? null : `${new Date(date.begins).toISOString().slice(0, 10)} ${minutesBetween(date.begins, date.ends) / 1440}`).toBe(expected);
  });

  it.each(['soon', '13/2026', '2026-13-01', '31.02.2026', '30', 'box 11', ''])('%s is none', (typed) => {
    expect(readLabelDate(typed, 'UTC')).toBeNull();
  });

  it('ends with the shop\'s own day', () => {
    // Madrid is an hour ahead of UTC in November.
    expect(new Date(readLabelDate('2026-11', 'Europe/Madrid')?.ends ?? 0).toISOString()).toBe('2026-11-30T23:00:00.000Z');
  });
});

/** Everything else about the cartridge is in order. */
function withLabel(figures: Readonly<Record<'expiry' | 'opened', string>>): Walk {
  const walk = Walk.through(bond, aStep('set', { joint: 'j1', needs: [{ need: 'step', step: stepId('bond') }] }));
  walk.enters('tomek', '08:01', { kind: 'enter', job, what: 'batch', text: '55-B' });
  for (const what of ['expiry', 'opened'] as const) walk.enters('tomek', '08:02', { kind: 'enter', job, what, text: figures[what] });
  return walk;
}

describe('paste out of a cartridge', () => {
  // The walks take place on 2 March 2026.
  it.each([
    ['in date', { expiry: '03/26', opened: '2026-02-28' }, 'ok'],
    ['expired', { expiry: '02/26', opened: '2026-02-28' }, 'step-blocked'],
    ['opened on the last day that counts', { expiry: '03/26', opened: '2026-02-03' }, 'ok'],
    ['open too long', { expiry: '03/26', opened: '2026-02-02' }, 'step-blocked'],
    ['opened in a month of which nobody knows the day', { expiry: '03/26', opened: '02/26' }, 'step-blocked'],
  ] as const)('%s', (_, figures, expected) => {
    const walk = withLabel(figures);
    const pasted = walk.says('tomek', '08:05', { kind: 'paste', job, card: 'P1' });
    expect(code(pasted)).toBe(expected);
    expect(walk.job(job).live.some(({ fact }) => fact.type === 'pasted')).toBe(expected === 'ok');
  });

  it('a new cartridge goes on at once', () => {
    const walk = withLabel({ expiry: '01/26', opened: '2026-02-28' });
    expect(code(walk.says('tomek', '08:05', { kind: 'cure', job, card: 'P1' }))).toBe('step-blocked');
    walk.enters('tomek', '08:06', { kind: 'enter', job, what: 'expiry', text: '2027-01' });
    expect(code(walk.says('tomek', '08:07', { kind: 'paste', job, card: 'P1' }))).toBe('ok');
    expect(walk.stands('bond', '08:08')).toBe('done 08:07 tomek');
  });

  it('the old one only on the foreman\'s written word, also where the paste was on before that was given', () => {
    const walk = withLabel({ expiry: '01/26', opened: '2026-01-10' });
    expect(code(walk.says('tomek', '08:10', { kind: 'override', job, step: 'bond', reason: 'sheet gives three months' }))).toBe('foreman-only');
    expect(code(walk.says('ines', '08:10', { kind: 'override', job, step: 'bond', reason: 'ok' }))).toBe('reason-missing');
    walk.enters('ines', '08:11', { kind: 'override', job, step: 'bond', reason: 'sheet gives three months' });
    walk.enters('tomek', '08:15', { kind: 'paste', job, card: 'P1', at: '08:05' });
    expect(walk.stands('bond', '08:16')).toBe('overridden 08:11 ines');
    expect(walk.stands('set', '08:16')).toBe('open');
  });

  it('another joint is not held by it', () => {
    const walk = withLabel({ expiry: '01/26', opened: '2026-02-28' });
    expect(code(walk.says('tomek', '08:05', { kind: 'paste', job, joint: 'j2', card: 'P1' }))).toBe('ok');
  });
});

it('what was tapped is kept with its name and time', () => {
  const walk = Walk.through(aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' }, taps: ['both components flow', 'first mixer length binned', 'witness bead laid and dated'] }));
  for (const [tap, who, at] of [[0, 'tomek', '08:01'], [1, 'wren', '08:02'], [2, 'wren', '08:03']] as const) walk.enters(who, at, { kind: 'tap', job, step: 'bond', tap });
  const taps = walk.course().steps[0]?.doings.at(-1)?.taps;
  expect([...(taps ?? [])].map(([tap, { at, by }]) => `${tap} ${by} ${new Date(at).toISOString().slice(11, 16)}`)).toEqual(['0 tomek 08:01', '1 wren 08:02', '2 wren 08:03']);
});
