import { describe, expect, it } from 'vitest';
import { minutes } from '../../src/cure/units.js';
import { CAUTIONS, type CautionKind, type Need, type Procedure, type ProcedureStep } from '../../src/repair/procedure.js';
import { procedureSchema as storedProcedure } from '../../src/store/procedure-schema.js';
import { procedureNamed, PROCEDURES, stepNamed } from '../support/procedure-shelf.js';
import { walk } from '../support/procedure-walk.js';

const STEPS = PROCEDURES.flatMap((procedure) => procedure.steps.map((step) => ({ procedure, step, name: `${procedure.name}/${step.id}` })));
const needs = (step: ProcedureStep, need: string): boolean => step.needs.some((one) => one.need === need);
const taps = (step: ProcedureStep, ...words: readonly string[]): boolean => words.every((word) => step.taps.some((tap) => tap.includes(word)));
const enters = (step: ProcedureStep, ...what: readonly string[]): boolean => what.every((one) => step.enter.some((entered) => entered === one));
const warns = (step: ProcedureStep, ...cautions: readonly CautionKind[]): boolean => cautions.every((caution) => step.cautions.includes(caution));
const checks = (step: ProcedureStep, milestone: string): boolean => step.done.by === 'check' && step.done.milestone === milestone;
const enteredBy = (step: ProcedureStep, entry: string): boolean => step.done.by === 'entry' && step.done.entry === entry;
const confirmed = (step: ProcedureStep, milestone: string): boolean => step.needs.some((need) => need.need === 'confirmed' && need.milestone === milestone);

/** What happens in a repair with bonding, in order, and what must hold there: common practice, no source. */
const STAGES: readonly (readonly [number, string, string, string, (step: ProcedureStep) => boolean])[] = [
  [1, 'plan: method read, joints named', 'bonded-panel', 'plan', (step) => step.sign !== null && warns(step, 'before-work')],
  [2, 'dry fit', 'bonded-panel', 'dry-fit', (step) => step.sign !== null && taps(step, 'clamps counted')],
  [3, 'cartridge', 'bonded-panel', 'bond', (step) => enters(step, 'batch', 'expiry', 'opened') && taps(step, 'mixer right', 'nozzle new')],
  [4, 'purge', 'bonded-panel', 'bond', (step) => taps(step, 'both components flow', 'first mixer length binned', 'witness bead laid and dated')],
  [5, 'surface', 'bonded-panel', 'clean', (step) => warns(step, 'solvent')],
  [6, 'climate', 'bonded-panel', 'climate', (step) => enters(step, 'air', 'metal')],
  [7, 'paste', 'bonded-panel', 'bond', (step) => enteredBy(step, 'pasted') && needs(step, 'within') && needs(step, 'dew-margin')],
  [8, 'set once', 'bonded-panel', 'set', (step) => enteredBy(step, 'closed') && taps(step, 'squeeze-out')],
  [9, 'rivet wet', 'bonded-panel', 'rivet', (step) => !needs(step, 'confirmed')],
  [10, 'weld beside the wet joint', 'bonded-panel', 'weld-wet', (step) => step.joint === 'j2' && !needs(step, 'confirmed') && step.starts.includes('fire-watch')],
  [11, 'lamp, gentle', 'bonded-panel', 'lamp-gentle', (step) => enteredBy(step, 'lamp-set') && warns(step, 'lamp')],
  [12, 'handling strength', 'bonded-panel', 'handling', (step) => checks(step, 'handling')],
  [13, 'clamps off', 'bonded-panel', 'clamps-off', (step) => confirmed(step, 'handling') && warns(step, 'clamps-off')],
  [14, 'lamp, hot', 'bonded-panel', 'lamp-hot', (step) => confirmed(step, 'handling') && warns(step, 'lamp')],
  [15, 'full strength', 'bonded-panel', 'full', (step) => checks(step, 'full')],
  [16, 'weld beside the hard joint', 'bonded-panel', 'weld-after', (step) => step.joint === 'j3' && confirmed(step, 'full') && step.starts.includes('fire-watch')],
  [17, 'grind and prime', 'bonded-panel', 'grind', (step) => confirmed(step, 'full') && warns(step, 'sanding')],
  [18, 'filler', 'seam-filler', 'fill', (step) => enteredBy(step, 'closed') && warns(step, 'filler')],
  [19, 'sanding', 'seam-filler', 'sand', (step) => confirmed(step, 'sand') && warns(step, 'sanding')],
  [20, 'paint and bake', 'bonded-panel', 'bake', (step) => warns(step, 'bake') && taps(step, 'nothing on this car waits')],
  [21, 'sealant and glass', 'windscreen', 'set-glass', (step) => enteredBy(step, 'closed') && warns(step, 'glass')],
  [22, 'cavity protection', 'seal-and-cavity', 'wax', (step) => step.starts.includes('heat-ban') && taps(step, 'no hot work', 'drains open')],
  [23, 'handover', 'bonded-panel', 'handover', (step) => needs(step, 'cures-done') && step.sign?.join() === 'foreman'],
];

describe('the example procedures', () => {
  it('are seven, and every one says that it is an example', () => {
    expect(PROCEDURES.map(({ name }) => name)).toEqual(['bonded-panel', 'bonded-roof', 'hem-flange-door', 'plastic-bumper', 'seal-and-cavity', 'seam-filler', 'windscreen']);
    expect(PROCEDURES.filter(({ example, version }) => !example || version !== 'example 1')).toEqual([]);
  });

  it.each(STAGES)('hold stage %i, %s, in %s/%s', (_, __, procedure, step, holds) => {
    expect(holds(stepNamed(procedureNamed(procedure), step))).toBe(true);
  });

  it('hold all twenty-three stages', () => {
    expect(STAGES.map(([stage]) => stage)).toEqual(Array.from({ length: 23 }, (_, index) => index + 1));
  });

  it('come back out of the book as they went in', () => {
    expect(PROCEDURES.map((procedure) => storedProcedure.parse(JSON.parse(JSON.stringify(procedure))))).toEqual(PROCEDURES);
  });

  it('use every caution somewhere', () => {
    expect(CAUTIONS.filter((caution) => !STEPS.some(({ step }) => step.cautions.includes(caution)))).toEqual([]);
  });

  it('say each step in one short line, and leave to the repair method what it decides', () => {
    expect(STEPS.filter(({ step }) => step.act.length > 95).map(({ name }) => name)).toEqual([]);
    const decided = STEPS.filter(({ step }) => /^(?:plan|old-.*|rivet|weld-.*|seal|seal-hem|wax)$/.test(step.id));
    expect(decided.length).toBeGreaterThan(15);
    expect(decided.filter(({ step }) => !/repair method/i.test(step.act)).map(({ name }) => name)).toEqual([]);
  });
});

describe('every example procedure', () => {
  it.each(PROCEDURES.flatMap((procedure) => (['first', 'last'] as const).map((choice) => [procedure.name, choice, procedure] as const)))('%s is gone through to its end, taking the %s step that is open', (_, choice, procedure) => {
    const ids = procedure.steps.map(({ id }) => id);
    expect([...walk(procedure, choice)].sort()).toEqual([...ids].sort());
  });

  it.each(PROCEDURES.map((procedure) => [procedure.name, procedure] as const))('%s has its hold points and who may sign them', (_, procedure) => {
    expect(stepNamed(procedure, 'plan').sign).toEqual(['foreman']);
    expect(procedure.steps.filter(({ id }) => id === 'dry-fit').filter(({ sign }) => sign?.includes('technician') !== true)).toEqual([]);
    const paint = procedure.steps.some(({ id }) => id === 'paint');
    expect(procedure.steps.some(({ id, sign }) => id === 'before-paint' && sign?.join() === 'foreman')).toBe(paint || procedure.name === 'seam-filler');
    expect(procedure.steps.at(-1)).toMatchObject({ id: procedure.name === 'seam-filler' ? 'before-paint' : 'handover', sign: ['foreman'] });
  });

  it.each(PROCEDURES.filter(({ steps }) => steps.some(({ done }) => done.by === 'entry' && done.entry === 'pasted')).map((procedure) => [procedure.name, procedure] as const))('%s asks for batch, expiry, opening and purge with the paste', (_, procedure) => {
    const pasting = procedure.steps.filter((step) => enteredBy(step, 'pasted'));
    expect(pasting.filter((step) => !enters(step, 'batch', 'expiry', 'opened') || !taps(step, 'witness bead laid and dated', 'binned'))).toEqual([]);
  });

  it('lets no step that is hot come after the wax', () => {
    const waxed = PROCEDURES.filter(({ steps }) => steps.some(({ starts }) => starts.includes('heat-ban')));
    expect(waxed.map(({ name }) => name)).toEqual(['bonded-panel', 'hem-flange-door', 'seal-and-cavity']);
    const pairs = waxed.flatMap((procedure) => hotSteps(procedure).map((hot) => ({ hot, walked: walk(procedure, 'first', hot), banned: banOf(procedure) })));
    expect(pairs.map(({ hot }) => hot)).toEqual(['weld-wet', 'weld-after', 'bake', 'weld-tacks', 'bake']);
    expect(pairs.filter(({ walked, banned }) => walked.includes(banned))).toEqual([]);
  });
});

const hotSteps = ({ steps }: Procedure): string[] => steps.filter(({ starts, cautions }) => starts.includes('fire-watch') || cautions.includes('bake')).map(({ id }) => id);
const banOf = ({ steps }: Procedure): string => steps.find(({ starts }) => starts.includes('heat-ban'))?.id ?? '';

describe('every step that can hurt', () => {
  const byWord = ({ done }: ProcedureStep): boolean => done.by === 'word';
  const DANGERS: readonly (readonly [string, (step: ProcedureStep) => boolean, readonly CautionKind[], number])[] = [
    ['welds', (step) => /^(?:weld|tack|last welds)/i.test(step.act), ['fire-watch'], 4],
    ['welds before the glue is hard', (step) => step.starts.includes('fire-watch') && !confirmed(step, 'full'), ['weld-wet'], 2],
    ['welds beside hard glue', (step) => step.starts.includes('fire-watch') && confirmed(step, 'full'), ['weld-after'], 2],
    ['sands, grinds or abrades', (step) => byWord(step) && /\b(?:sand|grind|abrade|bevel)\b/i.test(step.act), ['sanding'], 11],
    ['takes an old bonded panel off', (step) => /^old-(?:panel|skin)/.test(step.id), ['sanding'], 3],
    ['sets a lamp', (step) => /\blamps?\b/i.test(step.act) && /lamp/.test(step.id), ['lamp', 'battery'], 8],
    ['wipes with solvent', (step) => byWord(step) && /\b(?:wipe in one direction|clean|cleaner)\b/i.test(step.act), ['solvent'], 12],
    ['lays paste', (step) => enteredBy(step, 'pasted'), ['paste'], 5],
    ['mixes filler', (step) => /\bfiller\b/i.test(step.act) && enteredBy(step, 'closed'), ['filler'], 2],
    ['paints', (step) => step.id === 'paint', ['isocyanate', 'solvent'], 4],
    ['primes with what hardens', (step) => /^prime$/.test(step.id), ['isocyanate'], 5],
    ['bakes', (step) => /^bake\b/i.test(step.act), ['bake', 'battery'], 4],
    ['sprays wax', (step) => step.starts.includes('heat-ban'), ['wax'], 3],
    ['handles glass', (step) => /\bglass\b/i.test(step.act) && !/own procedure|glass bonding|doors and glass/.test(step.act), ['glass'], 4],
    ['sets clamps', (step) => /\bclamps?\b/i.test(step.act) && !/clamps off/i.test(step.act), ['clamps'], 6],
    ['takes clamps off', (step) => /\bclamps off\b/i.test(step.act), ['clamps-off'], 3],
    ['begins the work', (step) => step.id === 'plan', ['before-work'], 7],
    ['reads temperatures', (step) => step.enter.includes('metal'), ['reading'], 7],
  ];

  it.each(DANGERS)('%s: it carries its caution', (_, isOne, cautions, least) => {
    const found = STEPS.filter(({ step }) => isOne(step));
    expect(found.length).toBeGreaterThanOrEqual(least);
    expect(found.filter(({ step }) => !warns(step, ...cautions)).map(({ name }) => name)).toEqual([]);
  });

  it('begins a fire watch wherever the caution of it is shown', () => {
    expect(STEPS.filter(({ step }) => step.cautions.includes('fire-watch') !== step.starts.includes('fire-watch'))).toEqual([]);
  });
});

describe('the walk', () => {
  const blank = procedureNamed('seal-and-cavity');
  const bare = stepNamed(blank, 'plan');
  const seal = stepNamed(blank, 'seal');
  const sealed = stepNamed(blank, 'sealed');

  it('does not get past a step that waits for what comes later', () => {
    const early: ProcedureStep = { ...bare, id: stepNamed(blank, 'refit').id, needs: [{ need: 'cures-done' }] };
    const stuck: Procedure = { ...blank, steps: [{ ...seal, needs: [] }, early, { ...sealed, needs: [{ need: 'step', step: early.id }] }] };
    expect(walk(stuck)).toEqual(['seal']);
  });

  it('waits out a time, and does not come too late', () => {
    const between = (least: number, most: number): Procedure => {
      const needs: readonly Need[] = [{ need: 'not-before', step: bare.id, minutes: minutes(least) }, { need: 'within', step: bare.id, minutes: minutes(most) }];
      return { ...blank, steps: [{ ...bare, needs: [] }, { ...bare, id: seal.id, needs }] };
    };
    expect(walk(between(30, 30))).toEqual(['plan', 'seal']);
    expect(walk(between(30, 29))).toEqual(['plan']);
  });
});
