import type { Decision, Situation } from '../../src/repair/decision.js';
import { outlooksOf } from '../../src/repair/book.js';
import { courseOf, type Course } from '../../src/repair/course.js';
import { jobNo, jointNo, personId, stepId, type JobNo } from '../../src/repair/ids.js';
import { isOver } from '../../src/repair/outlook.js';
import type { Need, Procedure, ProcedureStep } from '../../src/repair/procedure.js';
import type { Person, Role, Shop } from '../../src/repair/shop.js';
import type { Block } from '../../src/repair/step-needs.js';
import { isWalked, stepsAt, type StepState } from '../../src/repair/step-state.js';
import type { Instant } from '../../src/cure/units.js';
import { exampleShop } from './example-shop.js';
import { on, said } from './joint.js';
import { Shift } from './shift.js';

/** A step with nothing but its name, changed as a test needs it. */
export function aStep(id: string, change: Partial<Omit<ProcedureStep, 'id' | 'joint'>> & { readonly joint?: string } = {}): ProcedureStep {
  const { joint, ...rest } = change;
  return { id: stepId(id), act: `Work at ${id}`, role: 'technician', needs: [], done: { by: 'word' }, enter: [], openedDays: null, taps: [], cautions: [], sign: null, starts: [], ...rest, joint: joint === undefined ? null : jointNo(joint) };
}

export const after = (...steps: string[]): Need[] => steps.map((step) => ({ need: 'step', step: stepId(step) }));

export const aProcedure = (steps: readonly ProcedureStep[], change: Partial<Procedure> = {}): Procedure => ({ name: 'panel', title: 'outer panel', version: '1', example: false, steps, ...change });

const person = (name: string, role: Role): Person => ({ id: personId(name), name: name.charAt(0).toUpperCase() + name.slice(1), role, chatId: null, language: 'en', unit: null });

/** A shift in a shop that has these procedures, and one more person: Quinn looks at quality. */
export class Walk extends Shift {
  readonly #procedures: readonly Procedure[];
  #silent = false;

  constructor(procedures: readonly Procedure[], change: Partial<Shop> = {}) {
    super({ people: [...exampleShop().people, person('quinn', 'quality')], ...change });
    this.#procedures = procedures;
  }

  /** A job that has begun the only procedure at 08:00. */
  static through(...steps: readonly ProcedureStep[]): Walk {
    const walk = new Walk([aProcedure(steps)]);
    walk.enters('tomek', '08:00', { kind: 'begin', job: '501', procedure: 'panel' });
    return walk;
  }

  /** The same, where nothing is reminded of. */
  static silently(...steps: readonly ProcedureStep[]): Walk {
    const walk = Walk.through(...steps);
    walk.#silent = true;
    return walk;
  }

  override until(when: string): void {
    if (!this.#silent) super.until(when);
  }

  override situation(who: string, now: Instant, thread: string | null = null): Situation {
    const plain = super.situation(who, now, thread);
    const open = (): JobNo[] => this.jobs().filter((no) => this.outlooks(no).some((outlook) => !isOver(outlook)) || isWalked(this.job(no), this.outlooks(no), this.shop, this.air()));
    return { ...plain, procedures: this.#procedures, book: { ...plain.book, openJobs: open } };
  }

  course(no = '501'): Course {
    const job = this.job(no);
    const course = courseOf(job, outlooksOf(job, this.shop, this.air()), this.shop, this.air());
    if (course === null) throw new Error(`${jobNo(no)} has no procedure.`);
    return course;
  }

  state(step: string, when: string, no = '501'): StepState {
    const found = stepsAt(this.course(no), on(when)).find(({ step: { id } }) => id === step);
    if (found === undefined) throw new Error(`no step ${step}`);
    return found.state;
  }

  /** `done 08:20 tomek`, `open`, `again`, `blocked step dry-fit`. */
  stands(step: string, when: string, no = '501'): string {
    return stateWords(this.state(step, when, no));
  }
}

function stateWords(state: StepState): string {
  switch (state.is) {
    case 'blocked':
      return `blocked ${state.blocks.map(blockWord).join(', ')}`;
    case 'open': {
      const { taps, enter, sign } = state.missing;
      const left = [...taps.map((tap) => `tap ${tap}`), ...enter, ...(sign ? ['sign'] : [])].join(' ');
      return [state.again ? 'again' : 'open', ...(state.work === null ? [] : [`done ${said(state.work.at)}`]), ...(left === '' ? [] : [left])].join(', ');
    }
    case 'signed':
      return `signed ${said(state.at)} ${state.by}`;
    case 'overridden':
      return `overridden ${said(state.at)} ${state.by}`;
    case 'done':
      return `done ${said(state.at)} ${state.by}`;
  }
}

function blockWord(block: Block): string {
  const opens = block.opensAt === null ? '' : ` ${said(block.opensAt)}`;
  return `${block.why}${'step' in block ? ` ${block.step}` : ''}${block.why === 'out-of-turn' ? ` (${blockWord(block.first)})` : ''}${opens}`;
}

export const code = (decision: Decision): string => (decision.ok ? 'ok' : decision.refusal.code);
