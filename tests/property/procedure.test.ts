import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewMargin } from '../../src/cure/dew-margin.js';
import { instant, minutes, plus, type Instant } from '../../src/cure/units.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import type { StepId } from '../../src/repair/ids.js';
import type { Need, ProcedureStep } from '../../src/repair/procedure.js';
import { isThrough, stepsAt, type StepAt } from '../../src/repair/step-state.js';
import { on, said } from '../support/joint.js';
import { randomSteps } from '../support/random-procedure.js';
import { warm } from '../support/shift.js';
import { Walk } from '../support/walk.js';

const RUNS = { numRuns: 2000 };
const PATIENCE = 300_000;
const MINUTE = 60_000;
const PEOPLE = ['tomek', 'wren', 'ines', 'quinn'] as const;
const job = '501';

type Short = Parameters<Walk['says']>[2];

const step = fc.nat({ max: 4 }).map((index) => `step-${index}`);

/** Something that somebody says, some minutes after the thing before; `ago`: it happened that much earlier. */
const answer = fc.record({
  after: fc.integer({ min: 0, max: 40 }),
  who: fc.oneof({ weight: 3, arbitrary: fc.constantFrom<(typeof PEOPLE)[number]>('tomek', 'ines') }, { weight: 1, arbitrary: fc.constantFrom(...PEOPLE) }),
  ago: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.integer({ min: 1, max: 60 }) }),
  short: fc.oneof<fc.Arbitrary<Short>[]>(
    step.map((id): Short => ({ kind: 'done', job, step: id })),
    step.map((id): Short => ({ kind: 'done', job, step: id })),
    fc.constant<Short>({ kind: 'done', job, step: null }),
    fc.tuple(step, fc.nat({ max: 1 })).map(([id, tap]): Short => ({ kind: 'tap', job, step: id, tap })),
    step.map((id): Short => ({ kind: 'sign', job, step: id })),
    fc.constantFrom('2026-02', '2027-03').map((text): Short => ({ kind: 'enter', job, what: 'expiry', text })),
    fc.tuple(step, fc.constantFrom('measured by hand', 'ok')).map(([id, reason]): Short => ({ kind: 'override', job, step: id, reason })),
    fc.constantFrom<Short>({ kind: 'closed', job, card: 'K' }, { kind: 'lamp', job, setting: warm(30) }, { kind: 'off', job }, { kind: 'scrap', job, reason: 'wrong mixer' }),
    fc.constantFrom(15, 30, 55).map((value): Short => ({ kind: 'read', job, value: warm(value) })),
    fc.constantFrom(40, 80).map((humidity): Short => ({ kind: 'air', value: warm(20), humidity })),
    fc.constantFrom<Short>({ kind: 'check', job, milestone: 'handling', result: 'hard' }, { kind: 'check', job, milestone: 'handling', result: 'soft' }),
    fc.constantFrom<Short>({ kind: 'hold', job, reason: 'odd smell' }, { kind: 'release', job, reason: 'aired' }),
  ),
  takenBack: fc.boolean(),
  /** Instead of all that: what the walk waits for. */
  helpful: fc.option(fc.nat({ max: 4 }), { freq: 2 }),
});

describe('walks through random procedures', () => {
  it('no step is done whose conditions were not met at that moment, or that the foreman did not let go on with a reason', () => {
    let [done, signed, overridden] = [0, 0, 0];
    fc.assert(
      fc.property(randomSteps, fc.array(answer, { minLength: 4, maxLength: 16 }), (steps, answers) => {
        const walk = Walk.silently(...steps);
        let now = on('08:00');
        for (const { after, who, ago, short, helpful: wanted } of answers) {
          now = plus(now, minutes(after));
          const helped = wanted === null ? null : helpful(walk, now, wanted);
          const decision = walk.says(helped?.who ?? who, said(now), helped?.short ?? (ago > 0 ? { ...short, at: said(instant(now - ago * MINUTE)) } : short));
          if (!decision.ok || decision.facts.length === 0) continue;
          for (const one of stepsAt(walk.course(), now)) {
            expect(complaints(one, walk)).toEqual([]);
            done += one.state.is === 'done' ? 1 : 0;
            signed += one.state.is === 'signed' ? 1 : 0;
            overridden += one.state.is === 'overridden' ? 1 : 0;
          }
        }
      }),
      RUNS,
    );
    // It would prove nothing if no step ever were.
    expect(Math.min(done, signed, overridden)).toBeGreaterThan(100);
  }, PATIENCE);

  it('undo restores every state', () => {
    let stored = 0;
    fc.assert(
      fc.property(randomSteps, fc.array(answer, { minLength: 2, maxLength: 10 }), (steps, answers) => {
        const walk = Walk.silently(...steps);
        let now = on('08:00');
        for (const { after, who, short, takenBack, helpful: wanted } of answers) {
          now = plus(now, minutes(after));
          const before = stepsAt(walk.course(), now);
          const helped = wanted === null ? null : helpful(walk, now, wanted);
          const decision = walk.says(helped?.who ?? who, said(now), helped?.short ?? short);
          if (!decision.ok || decision.facts.length === 0 || !takenBack) continue;
          stored += 1;
          walk.enters('ines', said(now), { kind: 'undo', entry: walk.facts.at(-1)?.entry ?? null });
          expect(stepsAt(walk.course(), now)).toEqual(before);
        }
      }),
      RUNS,
    );
    expect(stored).toBeGreaterThan(1000);
  }, PATIENCE);
});

/** What one of the open steps waits for, or a foreman's word about one that is blocked. */
function helpful(walk: Walk, now: Instant, pick: number): { readonly who: string; readonly short: Short } | null {
  const waiting = stepsAt(walk.course(), now).filter((one) => !isThrough(one));
  const one = waiting[pick % Math.max(1, waiting.length)];
  if (one === undefined) return null;
  const { step: { id, sign }, state } = one;
  if (state.is === 'blocked') return { who: 'ines', short: { kind: 'override', job, step: id, reason: 'measured by hand' } };
  if (state.is !== 'open') return null;
  const [tap] = state.missing.taps;
  if (tap !== undefined) return { who: 'wren', short: { kind: 'tap', job, step: id, tap } };
  if (state.missing.enter.length > 0) return { who: 'wren', short: { kind: 'enter', job, what: 'expiry', text: '2027-03' } };
  const signer = walk.shop.people.find(({ role }) => sign?.includes(role) === true)?.id;
  return state.work === null ? { who: 'ines', short: { kind: 'done', job, step: id } } : { who: signer ?? 'ines', short: { kind: 'sign', job, step: id } };
}

/** What the plain facts say against a step that counts as done. */
function complaints(one: StepAt, walk: Walk): string[] {
  if (!isThrough(one)) return [];
  const { step: about, state } = one;
  if (state.is === 'open' || state.is === 'blocked') return [];
  const live = standing(walk.facts);
  const named = told(live, about.id);
  const letGo = named.some(({ fact, by }) => fact.type === 'step-overridden' && by === 'ines' && fact.reason.length > 2);
  if (state.is === 'overridden') return letGo ? [] : ['overridden by nobody'];
  const at = state.is === 'signed' ? state.done.at : state.at;
  const taps = about.taps.filter((_, tap) => !named.some(({ fact }) => fact.type === 'step-tapped' && fact.tap === tap)).map((tap) => `not tapped: ${tap}`);
  const labels = about.enter.includes('expiry') && !named.some(({ fact }) => fact.type === 'step-entered' && fact.text === '2027-03') ? ['no label in date'] : [];
  const unsigned = about.sign !== null && !named.some(({ fact, by }) => fact.type === 'step-signed' && about.sign?.includes(fact.role) === true && walk.shop.people.some(({ id, role }) => id === by && role === fact.role)) ? ['not signed'] : [];
  const unmet = about.needs.filter((need) => !isMet(need, at, live, walk.course().procedure.steps)).map(({ need }) => need);
  return [...taps, ...labels, ...unsigned, ...unmet];
}

const standing = (facts: readonly FactRecord[]): FactRecord[] => {
  const undone = new Set(facts.flatMap(({ fact }) => (fact.type === 'undone' ? [fact.entry] : [])));
  return facts.filter(({ entry }) => !undone.has(entry));
};

const told = (live: readonly FactRecord[], id: StepId): FactRecord[] => live.filter(({ fact }) => 'step' in fact && fact.step === id);

/** Necessary conditions, from the plain facts alone. */
function isMet(need: Need, at: Instant, live: readonly FactRecord[], steps: readonly ProcedureStep[]): boolean {
  const happened = (is: (fact: Fact) => boolean): FactRecord[] => live.filter(({ fact, happenedAt }) => happenedAt <= at && is(fact)).sort((a, b) => a.happenedAt - b.happenedAt);
  switch (need.need) {
    case 'step':
      return worked(need.step, at, live, steps).length > 0;
    case 'within':
      return worked(need.step, at, live, steps).some((when) => at <= plus(when, need.minutes));
    case 'not-before':
      return worked(need.step, at, live, steps).some((when) => at >= plus(when, need.minutes));
    case 'confirmed':
      return happened((fact) => fact.type === 'checked' && fact.result === 'hard').length > 0;
    case 'joint-below': {
      const lamp = happened((fact) => fact.type === 'lamp-set').at(-1);
      const last = happened((fact) => fact.type === 'reading').at(-1);
      if (lamp === undefined && last === undefined) return true;
      return last?.fact.type === 'reading' && last.fact.value < need.temperature && (lamp === undefined || last.happenedAt >= lamp.happenedAt);
    }
    case 'dew-margin': {
      const air = happened((fact) => fact.type === 'air').at(-1);
      const metal = happened((fact) => fact.type === 'reading').at(-1);
      if (air?.fact.type !== 'air' || metal?.fact.type !== 'reading' || air.fact.humidity === null) return false;
      return dewMargin(metal.fact.value, air.fact.value, air.fact.humidity)?.verdict === 'enough' && at - air.happenedAt <= 180 * MINUTE && at - metal.happenedAt <= 180 * MINUTE;
    }
    case 'cures-done':
      return happened((fact) => fact.type === 'cure-opened').every(({ fact: opened }) => opened.type !== 'cure-opened' || live.some(({ fact }) => fact.type === 'scrapped' && fact.cure.run === opened.cure.run) || happened((fact) => fact.type === 'checked' && fact.milestone === 'full' && fact.result === 'hard').length > 0);
  }
}

/** When the work of a step happened by then, as far as its hold point was signed or overridden by then. */
function worked(id: StepId, at: Instant, live: readonly FactRecord[], steps: readonly ProcedureStep[]): Instant[] {
  const named = told(live, id);
  const about = steps.find((one) => one.id === id);
  if (about === undefined) return [];
  const letGo = named.some(({ fact, happenedAt }) => fact.type === 'step-overridden' && happenedAt <= at);
  const isOpen = about.sign === null || letGo || named.some(({ fact, happenedAt }) => fact.type === 'step-signed' && about.sign?.includes(fact.role) === true && happenedAt <= at);
  const tapped = about.taps.every((_, tap) => named.some(({ fact }) => fact.type === 'step-tapped' && fact.tap === tap));
  if (!isOpen || !tapped) return [];
  return live.flatMap(({ fact, happenedAt }) => (happenedAt <= at && shows(fact, about) ? [happenedAt] : []));
}

function shows(fact: Fact, { id, done }: ProcedureStep): boolean {
  if (fact.type === 'step-done') return fact.step === id;
  if (done.by === 'entry') return fact.type === done.entry;
  return done.by === 'check' && fact.type === 'checked' && fact.result === 'hard';
}
