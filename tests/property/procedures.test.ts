import fc from 'fast-check';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { Clerk } from '../../src/clerk/clerk.js';
import { NO_ADDRESSING } from '../../src/clerk/desk-ports.js';
import { messageId } from '../../src/clerk/message.js';
import { openStandingClock } from '../../src/clock/standing-clock.js';
import { readProcedures } from '../../src/config/procedures-file.js';
import { minutes, plus } from '../../src/cure/units.js';
import { jobNo, personId } from '../../src/repair/ids.js';
import { lineOf } from '../../src/repair/line-of.js';
import type { Need, ProcedureStep } from '../../src/repair/procedure.js';
import { stepsAt, type StepAt } from '../../src/repair/step-state.js';
import type { Answer } from '../../src/reply/answer.js';
import { memoryBook } from '../../src/store/memory-book.js';
import { CARDS } from '../support/card-shelf.js';
import { on, said } from '../support/joint.js';
import { quietLog } from '../support/quiet-log.js';
import { randomSteps } from '../support/random-procedure.js';
import { aProcedure, Walk } from '../support/walk.js';

const RUNS = { numRuns: 2000 };
const PATIENCE = 300_000;
const job = '501';

type Short = Parameters<Walk['says']>[2];

const step = fc.nat({ max: 4 }).map((index) => `step-${index}`);
const answer = fc.record({
  after: fc.integer({ min: 0, max: 30 }),
  who: fc.constantFrom('tomek', 'tomek', 'ines', 'ines', 'wren', 'quinn'),
  short: fc.oneof<fc.Arbitrary<Short>[]>(
    step.map((id): Short => ({ kind: 'done', job, step: id })),
    step.map((id): Short => ({ kind: 'done', job, step: id })),
    step.map((id): Short => ({ kind: 'done', job, step: `${id} again` })),
    step.map((id): Short => ({ kind: 'sign', job, step: id })),
    fc.tuple(step, fc.nat({ max: 1 })).map(([id, tap]): Short => ({ kind: 'tap', job, step: id, tap })),
    fc.constantFrom('2026-02', '2027-03').map((text): Short => ({ kind: 'enter', job, what: 'expiry', text })),
    fc.tuple(step, fc.constantFrom('measured by hand', 'ok')).map(([id, reason]): Short => ({ kind: 'override', job, step: id, reason })),
    fc.constantFrom<Short>({ kind: 'weld', job }, { kind: 'done', job, step: 'weld' }, { kind: 'check', job, milestone: 'fire-watch', result: 'hard' }, { kind: 'hold', job, reason: 'odd smell' }, { kind: 'release', job, reason: 'aired' }),
  ),
});
/** Words alone, so that what has happened can be read off the steps' own entries. */
const spoken = randomSteps.map((steps) => steps.map((one): ProcedureStep => ({ ...one, done: { by: 'word' }, needs: one.needs.filter(({ need }) => need !== 'dew-margin' && need !== 'joint-below' && need !== 'confirmed') })));

/** The same, where every step is a hold point and asks for nothing besides. */
const held = spoken.map((steps) => steps.map((one): ProcedureStep => ({ ...one, taps: [], enter: [], sign: one.sign ?? ['foreman'] })));

/** Walks through the procedure and looks at it after every answer. */
function walked(steps: readonly ProcedureStep[], answers: readonly { readonly after: number; readonly who: string; readonly short: Short }[], look: (walk: Walk, now: string) => void): void {
  const walk = Walk.silently(...steps);
  let now = on('08:00');
  for (const { after, who, short } of answers) {
    now = plus(now, minutes(after));
    walk.says(who, said(now), short);
    look(walk, said(now));
  }
}

describe('a random procedure and random answers', () => {
  it('opens no step whose conditions are not met, unless the foreman let it go on with a reason', () => {
    let [opened, later] = [0, 0];
    fc.assert(
      fc.property(spoken, fc.array(answer, { minLength: 4, maxLength: 14 }), (steps, answers) => {
        walked(steps, answers, (walk, now) => {
          for (const one of stepsAt(walk.course(), on(now))) {
            if (one.state.is !== 'open' || one.state.work !== null) continue;
            opened += 1;
            later += one.step.needs.length > 0 ? 1 : 0;
            expect([one.step.id, wrongWith(one, walk, now)]).toEqual([one.step.id, []]);
          }
        });
      }),
      RUNS,
    );
    expect(Math.min(opened, later)).toBeGreaterThan(1000);
  }, PATIENCE);

  it('passes every hold point by a signature of somebody who may, or by an override with a reason', () => {
    let [signed, overridden] = [0, 0];
    fc.assert(
      fc.property(held, fc.array(answer, { minLength: 6, maxLength: 14 }), (steps, answers) => {
        walked(steps, answers, (walk, now) => {
          for (const { step: { id, sign }, state } of stepsAt(walk.course(), on(now))) {
            if (sign === null || (state.is !== 'signed' && state.is !== 'overridden' && state.is !== 'done')) continue;
            if (state.is === 'overridden') {
              overridden += 1;
              expect(walk.facts.some(({ fact, by }) => fact.type === 'step-overridden' && fact.step === id && by === 'ines' && /\p{L}{3}/u.test(fact.reason))).toBe(true);
            } else {
              signed += 1;
              const signatures = walk.facts.filter(({ fact }) => fact.type === 'step-signed' && fact.step === id);
              expect(signatures.some(({ by }) => walk.shop.people.some((person) => person.id === by && sign.includes(person.role)))).toBe(true);
            }
          }
        });
      }),
      RUNS,
    );
    expect(Math.min(signed, overridden)).toBeGreaterThan(50);
  }, PATIENCE);
});

describe('at the desk, where lines are typed', () => {
  it('a refused step stores nothing', () => {
    let [refused, stored] = [0, 0];
    fc.assert(
      fc.property(spoken, fc.array(answer, { minLength: 2, maxLength: 5 }), (steps, answers) => {
        const walk = new Walk([aProcedure(steps)]);
        const store = memoryBook();
        const clock = openStandingClock(on('08:00'), (error) => { throw error; });
        const clerk = new Clerk({ store, clock, shop: walk.shop, cards: CARDS, procedures: [aProcedure(steps)], addressing: NO_ADDRESSING, log: quietLog(), clockRingsBells: true });
        let messages = 0;
        const says = (who: string, text: string): Answer => clerk.say({ id: messageId(`m${(messages += 1)}`), from: { id: personId(who), name: who }, text, thread: null, returnPath: { chat: 'page' } }).answer;
        const rows = (): number => store.transact((tx) => tx.factsOf(jobNo(job)).length);
        says('tomek', `begin ${job} panel`);
        let now = on('08:00');
        for (const { after, who, short } of answers) {
          now = plus(now, minutes(after));
          clock.advanceTo(now);
          clerk.catchUp();
          const before = rows();
          const { tone } = says(who, lineOf(walk.command(short, now)));
          if (tone !== 'refusal') stored += rows() > before ? 1 : 0;
          else {
            refused += 1;
            expect(rows()).toBe(before);
          }
        }
      }),
      RUNS,
    );
    expect(Math.min(refused, stored)).toBeGreaterThan(500);
  }, PATIENCE);
});

/** What the plain entries say against a step that is offered as the next thing to do. */
function wrongWith({ step: { needs, id } }: StepAt, walk: Walk, now: string): string[] {
  const told = (is: (fact: (typeof walk.facts)[number]['fact']) => boolean) => walk.facts.filter(({ fact, happenedAt }) => happenedAt <= on(now) && is(fact));
  if (told((fact) => fact.type === 'step-overridden' && fact.step === id && fact.reason.length > 2).length > 0) return [];
  const work = (name: string): number[] => told((fact) => fact.type === 'step-done' && fact.step === name).map(({ happenedAt }) => happenedAt);
  const isMet = (need: Need): boolean => {
    switch (need.need) {
      case 'step':
        return work(need.step).length > 0;
      case 'within':
        return Math.max(...work(need.step), -Infinity) >= on(now) - need.minutes * 60_000;
      case 'not-before':
        return Math.min(...work(need.step), Infinity) <= on(now) - need.minutes * 60_000;
      case 'cures-done': {
        const begun = told((fact) => fact.type === 'cure-opened').at(-1);
        const answered = told((fact) => fact.type === 'checked' && fact.milestone === 'fire-watch' && fact.result === 'hard').at(-1);
        return begun === undefined || (answered !== undefined && answered.happenedAt >= begun.happenedAt);
      }
      default:
        return true;
    }
  };
  return needs.filter((need) => !isMet(need)).map(({ need }) => need);
}

describe('a file with a mistake in the order', () => {
  const folder = mkdtempSync(join(tmpdir(), 'cureclerk-procedures-'));
  afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

  interface Written { readonly step: string; readonly do: string; readonly after?: readonly string[]; readonly within?: Readonly<Record<string, number>> }
  const problems = (steps: readonly Written[]): readonly { readonly file: string; readonly line: number | null; readonly field: string | null; readonly problem: string }[] => {
    for (const name of readdirSync(folder)) rmSync(join(folder, name));
    writeFileSync(join(folder, 'shop.yaml'), stringify({ procedure: 'random', title: 'random order', version: 'one', steps }));
    const read = readProcedures(folder);
    return read.ok ? [] : read.problems;
  };
  const lineWith = (words: string): number => readFileSync(join(folder, 'shop.yaml'), 'utf8').split('\n').findIndex((line) => line.includes(words)) + 1;

  /** Each step waits for some of those before it. */
  const orders = fc.array(fc.array(fc.nat({ max: 20 }), { maxLength: 3 }), { minLength: 2, maxLength: 8 }).map((shapes) =>
    shapes.map((waits, index): Written => ({ step: `step-${index}`, do: `Work number ${index}`, ...(index === 0 ? {} : { after: [...new Set(waits.map((wait) => `step-${wait % index}`))] }) })),
  );
  const place = fc.nat({ max: 100 });

  it('is read as it stands where there is none', () => {
    fc.assert(fc.property(orders, (steps) => { expect(problems(steps)).toEqual([]); }), { numRuns: 300 });
  }, PATIENCE);

  it.each<[string, (steps: readonly Written[], index: number) => { readonly steps: readonly Written[]; readonly step: number; readonly field: RegExp; readonly words: RegExp; readonly stands: string }]>([
    ['a step that waits for itself, round others or at once', (steps, index) => {
      const first = index % steps.length;
      const chain = steps.map((one, at): Written => (at === 0 ? { ...one, after: [`step-${first}`] } : { ...one, after: [`step-${at - 1}`] }));
      return { steps: chain, step: 0, field: /^steps no\. 1/, words: /goes in a circle/, stands: 'step: step-0' };
    }],
    ['a step that nobody knows', (steps, index) => {
      const at = index % steps.length;
      return { steps: steps.map((one, other) => (other === at ? { ...one, within: { nowhere: 30 } } : one)), step: at, field: /within/, words: /nowhere/, stands: 'nowhere' };
    }],
    ['two steps of one name', (steps, index) => {
      const at = 1 + (index % (steps.length - 1));
      return { steps: steps.map((one, other) => (other === at ? { ...one, step: 'step-0', do: 'The second of that name', after: [] } : { ...one, after: [] })), step: at, field: /step/, words: /step-0/, stands: 'The second of that name' };
    }],
  ])('%s: refused, with file, line and field', (_, spoil) => {
    fc.assert(
      fc.property(orders, place, (order, index) => {
        const spoilt = spoil(order, index);
        const [first] = problems(spoilt.steps);
        expect(first?.file).toMatch(/shop\.yaml$/);
        expect(first?.problem).toMatch(spoilt.words);
        expect(first?.field).toMatch(spoilt.field);
        expect(Math.abs((first?.line ?? -100) - lineWith(spoilt.stands))).toBeLessThanOrEqual(1);
      }),
      { numRuns: 300 },
    );
  }, PATIENCE);
});
