import { expect, it } from 'vitest';
import { celsius, instant, type Instant } from '../../src/cure/units.js';
import type { MaterialCard, MilestoneKind } from '../../src/cure/card.js';
import { airReadings, outlooksOf } from '../../src/repair/book.js';
import { courseOf } from '../../src/repair/course.js';
import type { CureRef } from '../../src/repair/cure-ref.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { entryNo, jobNo, personId, type JointNo } from '../../src/repair/ids.js';
import { foldJob } from '../../src/repair/job.js';
import type { Entering, Procedure, ProcedureStep } from '../../src/repair/procedure.js';
import { isThrough, stepsAt, type StepAt } from '../../src/repair/step-state.js';
import { CARDS } from '../support/card-shelf.js';
import { exampleShop } from '../support/example-shop.js';
import { on } from '../support/joint.js';
import { PROCEDURES } from '../support/procedure-shelf.js';

const JOB = jobNo('501');
const SHOP = exampleShop();
const LONGEST_PAUSE = 6 * 3_600_000;
/** More than any of these repairs takes on air alone. */
const MOST_TURNS = 150;
const TYPED = { value: 20, unit: null };
const FIGURES: Readonly<Record<Entering, string>> = { batch: 'B-1', expiry: '2027-12', opened: '2026-03-01', air: '20 rh 50', metal: '20', photo: 'label' };

/** A repair in the book, on air alone, at 20 °C and 50 %. */
class Repair {
  readonly #facts: FactRecord[] = [];
  readonly #procedure: Procedure;
  #now: Instant = on('08:00');

  constructor(procedure: Procedure) {
    this.#procedure = procedure;
    this.#enter({ type: 'procedure-begun', procedure });
  }

  /** Does whatever is open until nothing is left; returns the steps that never came to be done. */
  left(): string[] {
    for (let turn = 0; turn < MOST_TURNS; turn += 1) {
      const steps = this.#steps();
      if (steps.every(isThrough)) return [];
      const next = steps.find((one) => one.state.is === 'open' && this.#do(one));
      if (next === undefined) this.#wait();
      else this.#now = instant(this.#now + 60_000);
    }
    return this.#steps().filter((one) => !isThrough(one)).map(({ step, state }) => `${step.id} ${JSON.stringify(state)}`);
  }

  #steps(): StepAt[] {
    const course = courseOf(this.#job(), this.#outlooks(), SHOP, this.#air());
    if (course === null) throw new Error('no course');
    return stepsAt(course, this.#now);
  }

  /** False: nobody can do anything about it yet. */
  #do({ step, state }: StepAt): boolean {
    if (state.is !== 'open') return false;
    if (step.done.by === 'check' && !this.#isDue(step)) return false;
    for (const what of state.missing.enter) this.#enter({ type: 'step-entered', step: step.id, what, text: FIGURES[what] });
    for (const tap of state.missing.taps) this.#enter({ type: 'step-tapped', step: step.id, tap });
    if (state.work === null) this.#work(step);
    const [role] = step.sign ?? [];
    if (role !== undefined) this.#enter({ type: 'step-signed', step: step.id, role });
    return true;
  }

  #work({ id, joint, done }: ProcedureStep): void {
    if (done.by === 'word') this.#enter({ type: 'step-done', step: id });
    else if (joint === null) throw new Error(`${id} is about no joint`);
    else if (done.by === 'check') this.#check(joint, done.milestone);
    else if (done.entry === 'lamp-set') this.#enter({ type: 'lamp-set', joint, setting: celsius(20), typed: TYPED, lamp: null, heater: 'lamp' });
    else this.#glue(joint, done.entry);
  }

  #glue(joint: JointNo, entry: 'pasted' | 'closed'): void {
    const card = this.#cardFor(joint);
    const cure: CureRef = { joint, card: card.name, run: 1 };
    const open = this.#facts.some(({ fact }) => fact.type === 'cure-opened' && fact.cure.joint === joint);
    if (!open) this.#enter({ type: 'cure-opened', cure, card, owner: personId('tomek') }, { type: 'depth', cure, millimetres: 3 });
    this.#enter(entry === 'pasted' ? { type: 'pasted', cure, earliest: this.#now } : { type: 'closed', cure });
  }

  /** The example card that states everything that is checked on this joint. */
  #cardFor(joint: JointNo): MaterialCard {
    const kinds = this.#procedure.steps.flatMap((step) => (step.joint === joint && step.done.by === 'check' ? [step.done.milestone] : []));
    const found = CARDS.find((card) => card.basis !== 'lamp-set' && kinds.every((kind) => card.milestones.some((rule) => rule.kind === kind)));
    if (found === undefined) throw new Error(`no example card for ${kinds.join(', ')}`);
    return found;
  }

  #check(joint: JointNo, milestone: MilestoneKind): void {
    const outlook = this.#outlooks().findLast(({ cure }) => cure.ref.joint === joint);
    if (outlook !== undefined) this.#enter({ type: 'checked', cure: outlook.cure.ref, milestone, result: 'hard', role: 'foreman' });
  }

  #isDue({ joint, done }: ProcedureStep): boolean {
    return this.#waits().some((wait) => wait.joint === joint && done.by === 'check' && wait.kind === done.milestone && wait.dueAt !== null && wait.dueAt <= this.#now);
  }

  #waits() {
    return this.#outlooks().flatMap(({ cure, milestones }) => milestones.filter(({ check }) => check.phase !== 'confirmed').map(({ kind, check }) => ({ joint: cure.ref.joint, kind, dueAt: check.dueAt })));
  }

  /** Time goes by, six hours at most; the climate is read, what is in the oven is warm, and what is due beside the steps is checked. */
  #wait(): void {
    this.#now = this.#nextMoment();
    this.#enter({ type: 'air', value: celsius(20), typed: TYPED, humidity: 50 });
    for (const { joint, kind, dueAt } of this.#waits()) {
      if (kind === 'dwell' && dueAt === null) this.#enter({ type: 'reading', joint, value: celsius(65), typed: TYPED, method: 'contact' });
      if (dueAt !== null && dueAt <= this.#now) this.#check(joint, kind);
    }
  }

  /** The next moment at which something may open or is due. */
  #nextMoment(): Instant {
    const opening = this.#steps().flatMap(({ state }) => (state.is === 'blocked' ? state.blocks.map(({ opensAt }) => opensAt) : []));
    const times = [...opening, ...this.#waits().map(({ dueAt }) => dueAt)].filter((at): at is Instant => at !== null && at > this.#now);
    return instant(Math.min(this.#now + LONGEST_PAUSE, ...times));
  }

  #enter(...facts: readonly Fact[]): void {
    const entry = entryNo(this.#facts.length + 1);
    this.#facts.push(...facts.map((fact) => ({ entry, job: fact.type === 'air' ? null : JOB, happenedAt: this.#now, enteredAt: this.#now, by: personId('ines'), fact })));
  }

  #job() {
    return foldJob(JOB, this.#facts.filter(({ job }) => job === JOB));
  }

  #air() {
    return airReadings(this.#facts.filter(({ job }) => job === null));
  }

  #outlooks() {
    return outlooksOf(this.#job(), SHOP, this.#air());
  }
}

it.each(PROCEDURES.map((procedure) => [procedure.name, procedure] as const))('%s goes through the book to its end, with the example cards', (_, procedure) => {
  expect(new Repair(procedure).left()).toEqual([]);
});
