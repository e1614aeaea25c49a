import { describe, expect, it } from 'vitest';
import { bansOn, carBans, type BannedDeed } from '../../../src/repair/car-bans.js';
import type { Decision } from '../../../src/repair/decision.js';
import { jointNo } from '../../../src/repair/ids.js';
import { aStep, after, code, Walk } from '../../support/walk.js';

const job = '501';
const holds = (walk: Walk, deed: BannedDeed): number => bansOn(deed, carBans(walk.job(job), walk.outlooks(job))).length;
const lifted = (decision: Decision): string[] =>
  decision.ok ? decision.notes.flatMap((note) => (note.note === 'lifted' ? [...note.blocks.map(({ why }) => why), ...note.waits.map(({ milestone }) => milestone)] : [])) : [decision.refusal.code];

describe('a step and a hold across the car that are called the same', () => {
  it('sand: only the step is lifted while it is held, the hold across the car stands', () => {
    const walk = Walk.through(aStep('sand', { joint: 'j1', needs: [{ need: 'confirmed', joint: jointNo('j1'), milestone: 'sand' }] }));
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'F1' });
    expect(lifted(walk.enters('ines', '08:10', { kind: 'override', job, step: 'sand', reason: 'test panel only' }))).toEqual(['confirmed']);
    expect(walk.stands('sand', '08:11')).toBe('open');
    expect(holds(walk, 'sand')).toBe(1);
    // Said once more it is the other one, and that is said too.
    expect(lifted(walk.enters('ines', '08:12', { kind: 'override', job, step: 'sand', reason: 'test panel only' }))).toEqual(['sand']);
    expect(holds(walk, 'sand')).toBe(0);
  });

  it('bake: with the step held, nothing that waits for strength is let into the oven', () => {
    const walk = Walk.through(aStep('paint'), aStep('bake', { needs: after('paint') }));
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'F1' });
    walk.enters('ines', '08:10', { kind: 'override', job, step: 'bake', reason: 'painted elsewhere' });
    expect([walk.stands('bake', '08:11'), holds(walk, 'bake')]).toEqual(['open', 1]);
  });

  it('fill: what keeps the filler from being entered comes first, and its step stays as it was', () => {
    const walk = Walk.through(aStep('clean'), aStep('fill', { joint: 'j2', needs: after('clean'), done: { by: 'entry', entry: 'closed' } }));
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'P1' });
    const filler = { kind: 'closed', job, joint: 'j2', card: 'F1' } as const;
    expect(code(walk.says('tomek', '08:30', filler))).toBe('bond-unconfirmed');
    expect(lifted(walk.enters('ines', '08:31', { kind: 'override', job, step: 'fill', reason: 'other end of the car' }))).toEqual(['full']);
    expect(walk.stands('fill', '08:32')).toBe('blocked step clean');
    expect(code(walk.says('tomek', '08:33', filler))).toBe('ok');
    expect(walk.stands('fill', '08:34')).toBe('blocked out-of-turn (step clean)');
  });

  it('the same need may not be met later for another reason: that is not lifted', () => {
    const walk = Walk.through(aStep('paint', { needs: [{ need: 'cures-done' }] }));
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'F1' });
    walk.enters('ines', '08:10', { kind: 'override', job, step: 'paint', reason: 'far side of the car' });
    expect(walk.stands('paint', '08:11')).toBe('open');
    walk.enters('tomek', '08:20', { kind: 'weld', job });
    expect(walk.stands('paint', '08:21')).toBe('blocked fire-watch');
  });
});

describe('a mistyped step of an override', () => {
  const walk = (): Walk => {
    const begun = Walk.through(aStep('bond', { needs: [{ need: 'dew-margin' }] }), aStep('set', { needs: after('bond') }), aStep('clamps-off', { needs: [{ need: 'confirmed', joint: jointNo('j1'), milestone: 'handling' }] }));
    begun.enters('tomek', '08:05', { kind: 'cure', job, card: 'P1' });
    return begun;
  };
  const asked = (step: string): readonly string[] => {
    const decision = walk().says('ines', '08:10', { kind: 'override', job, step, reason: 'retested' });
    return decision.ok || decision.refusal.code !== 'which-step' ? [code(decision)] : decision.refusal.choices.map(({ label }) => label);
  };

  it('offers what is held at this moment, and never what waits for strength', () => {
    expect(asked('btach')).toEqual(['bond']);
    expect(asked('clampz-off')).toEqual([]);
    expect(asked('clamps-off')).toEqual(['ok']);
  });
});

describe('the fire watch', () => {
  it('keeps a step closed that needs everything on the car to be over, from the first spark to the answer', () => {
    const walk = Walk.through(aStep('paint', { needs: [{ need: 'cures-done' }] }));
    expect(walk.stands('paint', '08:05')).toBe('open');
    walk.enters('tomek', '08:10', { kind: 'weld', job });
    expect(walk.stands('paint', '08:11')).toBe('blocked fire-watch');
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'weld' });
    expect(walk.stands('paint', '09:30')).toBe('blocked fire-watch 09:20');
    walk.enters('tomek', '09:31', { kind: 'check', job, milestone: 'fire-watch', result: 'hard' });
    expect(walk.stands('paint', '09:32')).toBe('open');
  });
});

it('no bake while a fire watch runs, and nobody lifts it by their word', () => {
  const walk = new Walk([]);
  walk.enters('tomek', '08:00', { kind: 'weld', job });
  expect(holds(walk, 'bake')).toBe(1);
  walk.enters('tomek', '08:10', { kind: 'done', job, step: 'weld' });
  expect(holds(walk, 'bake')).toBe(1);
  expect(walk.says('ines', '08:20', { kind: 'override', job, step: 'bake', reason: 'customer waits' }).ok).toBe(false);
  walk.enters('tomek', '09:11', { kind: 'check', job, milestone: 'fire-watch', result: 'hard' });
  expect(holds(walk, 'bake')).toBe(0);
});
