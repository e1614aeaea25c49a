import { expect, it } from 'vitest';
import type { Instant } from '../../../src/cure/units.js';
import { jobNo, lampName } from '../../../src/repair/ids.js';
import { whatIsMeant } from '../../../src/repair/what-yes-means.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const withDueCheck = (): Shift => {
  const shift = new Shift();
  shift.enters('tomek', 'Tue 09:00', { kind: 'cure', job: '501', card: 'K' });
  shift.enters('tomek', 'Tue 09:00', { kind: 'lamp', job: '501', setting: warm(30), lamp: lampName('A') });
  shift.until('Tue 10:01');
  return shift;
};
const NOW: Instant = on('Tue 10:02');
const answers = (who: string, word: 'ok' | 'hard', thread: string | null): ReturnType<typeof whatIsMeant> =>
  whatIsMeant({ kind: 'check', job: null, joint: null, milestone: null, result: 'hard', when: { earliest: NOW, latest: NOW, confirmed: false, stated: false }, ...(word === 'ok' ? { yes: true } : {}) }, withDueCheck().situation(who, NOW, thread === null ? null : jobNo(thread)));

it('a yes of whoever was asked answers that question', () => {
  expect(answers('tomek', 'ok', null)).toMatchObject({ ok: true, command: { kind: 'check', job: '501', milestone: 'handling', result: 'hard' } });
});

it.each([null, '501'])('a yes of somebody who was not asked is a question with its button, in the thread too (%s)', (thread) => {
  expect(answers('ines', 'ok', thread)).toMatchObject({ ok: false, refusal: { code: 'which-question', choices: [{ yes: 'hard', job: '501' }] } });
});

it('the word of the check stands for itself, asked or not', () => {
  expect(answers('ines', 'hard', '501')).toMatchObject({ ok: true, command: { kind: 'check', result: 'hard' } });
});
