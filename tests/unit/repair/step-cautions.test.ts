import { describe, expect, it } from 'vitest';
import { said } from '../../support/joint.js';
import { after, aProcedure, aStep, Walk } from '../../support/walk.js';

const job = '501';
const cautioned = (walk: Walk): string[] =>
  walk.job(job).live.flatMap(({ fact, by, happenedAt }) => (fact.type === 'cautioned' ? [`${said(happenedAt)} ${by} ${fact.step} ${fact.caution}`] : []));

const clean = aStep('clean', { cautions: ['solvent'] });
const sand = aStep('sand', { cautions: ['sanding', 'reading'], taps: ['mask and gloves on'], needs: after('clean') });

describe('a caution', () => {
  it('is kept for whoever was shown it with the step before', () => {
    const walk = new Walk([aProcedure([clean, sand])]);
    walk.enters('tomek', '08:00', { kind: 'begin', job, procedure: 'panel' });
    expect(cautioned(walk)).toEqual(['08:00 tomek clean solvent']);
    walk.enters('tomek', '08:05', { kind: 'done', job, step: 'clean' });
    expect(cautioned(walk)).toEqual(['08:00 tomek clean solvent', '08:05 tomek sand sanding', '08:05 tomek sand reading']);
  });

  it('once for each person, with the step itself at the latest, beside what they tapped', () => {
    const walk = Walk.through(clean, sand);
    walk.enters('tomek', '08:05', { kind: 'done', job, step: 'clean' });
    walk.enters('wren', '08:06', { kind: 'tap', job, step: 'sand', tap: 0 });
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'sand' });
    expect(cautioned(walk).slice(3)).toEqual(['08:06 wren sand sanding', '08:06 wren sand reading']);
    expect(walk.job(job).live.filter(({ fact }) => fact.type === 'step-tapped').map(({ by, happenedAt }) => `${by} ${said(happenedAt)}`)).toEqual(['wren 08:06']);
  });

  it('of work that the book shows', () => {
    const walk = Walk.through(aStep('plan'), aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' }, cautions: ['paste'] }));
    walk.enters('wren', '08:10', { kind: 'paste', job, card: 'P1' });
    expect(cautioned(walk)).toEqual(['08:10 wren bond paste']);
  });

  it('anew when the step is done anew', () => {
    const walk = Walk.through(aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' }, cautions: ['paste'] }));
    walk.enters('tomek', '08:10', { kind: 'paste', job, card: 'P1' });
    walk.enters('tomek', '08:12', { kind: 'scrap', job, reason: 'wrong mixer' });
    walk.enters('tomek', '08:15', { kind: 'paste', job, card: 'P1' });
    expect(cautioned(walk)).toEqual(['08:00 tomek bond paste', '08:15 tomek bond paste']);
  });

  it('is neither kept of a refusal nor of a job without a procedure', () => {
    const walk = Walk.through(clean, sand);
    const before = walk.facts.length;
    walk.says('tomek', '08:05', { kind: 'done', job, step: 'sand' });
    expect(walk.facts.length).toBe(before);
    walk.enters('tomek', '08:06', { kind: 'paste', job: '777', card: 'P1' });
    expect(walk.job('777').live.map(({ fact }) => fact.type)).toEqual(['cure-opened', 'pasted']);
  });

  it('goes with the entry that is taken back', () => {
    const walk = Walk.through(clean, sand);
    walk.enters('tomek', '08:05', { kind: 'done', job, step: 'clean' });
    walk.enters('tomek', '08:06', { kind: 'undo', entry: null });
    expect(cautioned(walk)).toEqual(['08:00 tomek clean solvent']);
  });
});
