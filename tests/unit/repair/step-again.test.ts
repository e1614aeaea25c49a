import { describe, expect, it } from 'vitest';
import { minutes } from '../../../src/cure/units.js';
import { stepId } from '../../../src/repair/ids.js';
import type { Need } from '../../../src/repair/procedure.js';
import { after, aStep, code, Walk } from '../../support/walk.js';

const job = '501';
const within = (step: string, length: number): Need => ({ need: 'within', step: stepId(step), minutes: minutes(length) });
/** Cleaned, then primed within 45 min, then bonded within two hours of that. */
const chain = [aStep('clean'), aStep('prime', { needs: [within('clean', 45)] }), aStep('bond', { joint: 'j1', needs: [within('prime', 120)], done: { by: 'entry', entry: 'pasted' } })];
const states = (walk: Walk, when: string): string[] => ['clean', 'prime', 'bond'].map((step) => walk.stands(step, when));

function primed(): Walk {
  const walk = Walk.through(...chain);
  walk.enters('tomek', '08:00', { kind: 'done', job, step: 'clean' });
  walk.enters('tomek', '08:10', { kind: 'done', job, step: 'prime' });
  return walk;
}

describe('times that hang on each other', () => {
  it('a window that ran out opens every step that has to be done again, from the first on, and the last opens after them', () => {
    const walk = primed();
    expect(states(walk, '10:10')).toEqual(['done 08:00 tomek', 'done 08:10 tomek', 'open']);
    expect(states(walk, '10:11')).toEqual(['again', 'blocked again clean', 'blocked again prime']);
    walk.enters('tomek', '10:20', { kind: 'done', job, step: 'clean' });
    expect(states(walk, '10:21')).toEqual(['done 10:20 tomek', 'again', 'blocked again prime']);
    walk.enters('tomek', '10:30', { kind: 'done', job, step: 'prime' });
    expect(states(walk, '10:31')).toEqual(['done 10:20 tomek', 'done 10:30 tomek', 'open']);
    walk.enters('tomek', '11:00', { kind: 'paste', job, card: 'P1' });
    // What was pasted in time is not asked for again.
    expect(states(walk, '15:00')).toEqual(['done 10:20 tomek', 'done 10:30 tomek', 'done 11:00 tomek']);
  });

  it('cleaned again before its time ran out: the minutes begin anew, and what stood on it before is done again', () => {
    const walk = primed();
    walk.enters('tomek', '08:40', { kind: 'done', job, step: 'clean again' });
    expect(states(walk, '09:00')).toEqual(['done 08:40 tomek', 'again', 'blocked outdated prime']);
    expect(code(walk.says('tomek', '09:25', { kind: 'done', job, step: 'prime' }))).toBe('ok');
    expect(states(walk, '09:26')).toEqual(['done 08:40 tomek', 'done 09:25 tomek', 'open']);
  });

  it('without a step in between the follower simply has its whole time again', () => {
    const walk = Walk.through(aStep('clean'), aStep('bond', { joint: 'j1', needs: [within('clean', 45)], done: { by: 'entry', entry: 'pasted' } }));
    walk.enters('tomek', '08:00', { kind: 'done', job, step: 'clean' });
    walk.enters('tomek', '08:40', { kind: 'done', job, step: 'clean', yes: true });
    expect([walk.stands('bond', '09:25'), walk.stands('bond', '09:26')]).toEqual(['open', 'blocked again clean']);
  });

  it('is asked about, since it could be the same cleaning told twice; the button says once more', () => {
    const walk = primed();
    const asked = walk.says('ines', '08:30', { kind: 'done', job, step: 'clean' });
    expect(!asked.ok && asked.refusal.code === 'step-again' ? [asked.refusal.by, asked.refusal.line] : []).toEqual(['tomek', 'done 501 clean at 2026-03-02T08:30:00.000Z yes']);
    expect(states(walk, '08:31')).toEqual(['done 08:00 tomek', 'done 08:10 tomek', 'open']);
  });

  it('not once what had to follow is done: then it stands', () => {
    const walk = primed();
    walk.enters('tomek', '08:30', { kind: 'paste', job, card: 'P1' });
    const again = walk.says('tomek', '08:40', { kind: 'done', job, step: 'clean again' });
    expect(again.ok ? again.notes.map(({ note }) => note) : []).toEqual(['step-already']);
  });

  it('a step that is called that is meant by it', () => {
    const walk = Walk.through(aStep('clean'), aStep('clean-again', { needs: after('clean') }));
    walk.enters('tomek', '08:00', { kind: 'done', job, step: 'clean' });
    walk.enters('tomek', '08:05', { kind: 'done', job, step: 'clean again' });
    expect(walk.stands('clean-again', '08:06')).toBe('done 08:05 tomek');
  });

  it('its taps are asked for again; the same tap at once is one', () => {
    const walk = Walk.through(aStep('grind', { taps: ['mask on'] }), aStep('prime', { needs: [within('grind', 120)] }));
    walk.enters('tomek', '08:00', { kind: 'tap', job, step: 'grind', tap: 0 });
    walk.enters('tomek', '08:01', { kind: 'done', job, step: 'grind' });
    const twice = walk.says('wren', '08:01:30', { kind: 'tap', job, step: 'grind', tap: 0 });
    expect(twice.ok ? twice.facts : []).toEqual([]);
    expect(code(walk.says('tomek', '08:30', { kind: 'done', job, step: 'grind again' }))).toBe('step-missing');
    walk.enters('tomek', '08:31', { kind: 'tap', job, step: 'grind', tap: 0 });
    expect(code(walk.says('tomek', '08:32', { kind: 'done', job, step: 'grind again' }))).toBe('ok');
    expect(walk.stands('grind', '08:33')).toBe('done 08:32 tomek');
  });
});
