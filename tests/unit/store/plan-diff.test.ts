import { describe, expect, it } from 'vitest';
import { jointNo } from '../../../src/repair/ids.js';
import type { Reminder } from '../../../src/repair/reminder.js';
import { planDiff } from '../../../src/store/plan-diff.js';
import { at, BEN, CURE, JOB, reminder } from '../../contract/store-samples.js';

describe('the difference between two plans', () => {
  it('is empty when nothing changed, whatever the order', () => {
    const plan = [reminder('a', at(1)), reminder('b', at(2))];
    expect(planDiff(JOB, plan, [reminder('b', at(2)), reminder('a', at(1))])).toEqual({ gone: [], changed: [] });
  });

  it('names what is gone and what is new', () => {
    expect(planDiff(JOB, [reminder('a', at(1))], [reminder('b', at(2))])).toEqual({ gone: ['a'], changed: [reminder('b', at(2))] });
  });

  it.each<[keyof Reminder, Partial<Reminder>]>([
    ['dueAt', { dueAt: at(2) }],
    ['ringAt', { ringAt: at(2) }],
    ['to', { to: BEN }],
    ['route', { route: 'bundle' }],
    ['kind', { kind: 'full' }],
    ['round', { round: 1 }],
    ['step', { step: 1 }],
    ['cure', { cure: { ...CURE, joint: jointNo('j2') } }],
    ['cure', { cure: { ...CURE, card: 'S1' } }],
    ['cure', { cure: { ...CURE, run: 2 } }],
  ])('sees a change of %s', (_part, change) => {
    const changed = reminder('a', at(1), { dueAt: at(1), ...change });
    expect(planDiff(JOB, [reminder('a', at(1))], [changed])).toEqual({ gone: [], changed: [changed] });
  });
});
