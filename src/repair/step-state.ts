import type { AirReading } from '../cure/air.js';
import type { Instant } from '../cure/units.js';
import { approvalOf, courseOf, missingFigures, missingTaps, openBlocks, type Course, type CourseStep } from './course.js';
import type { PersonId, StepId } from './ids.js';
import { jobHoldOf } from './job-hold.js';
import type { Job } from './job.js';
import type { Outlook } from './outlook.js';
import type { Entering, Need, ProcedureStep } from './procedure.js';
import type { Role, Shop } from './shop.js';
import type { Doing, Mark, Pass, StepOverride } from './step-doings.js';
import { passAt, renewedSince, withinLimit, type Block } from './step-needs.js';

type Within = Extract<Need, { readonly need: 'within' }>;

/** What is still to be said before a step counts as done. */
export interface Missing {
  /** Counted from 0 in the step's list. */
  readonly taps: readonly number[];
  readonly enter: readonly Entering[];
  readonly sign: boolean;
}

/** Why a step has to be done once more: what must follow soon has not followed, or what it rests on was done again after it. */
export type Again = { readonly why: 'late' } | { readonly why: 'renewed'; readonly step: StepId };

export type StepState =
  | { readonly is: 'done'; readonly at: Instant; readonly by: PersonId }
  /** Done, and the hold point signed. */
  | { readonly is: 'signed'; readonly at: Instant; readonly by: PersonId; readonly role: Role; readonly done: Mark }
  /** Done, though something stood against it or nobody signed: the foreman let it go on. */
  | { readonly is: 'overridden'; readonly at: Instant; readonly by: PersonId; readonly reason: string; readonly done: Mark }
  /** May be done now. `work`: it was done already, and something of `missing` is left. */
  | { readonly is: 'open'; readonly work: Mark | null; readonly again: Again | null; readonly missing: Missing; readonly override: StepOverride | null }
  | { readonly is: 'blocked'; readonly blocks: readonly Block[] };

export interface StepAt {
  readonly step: ProcedureStep;
  readonly state: StepState;
}

/** Every step of a course at a moment, in the procedure's order. */
export const stepsAt = (course: Course, now: Instant): StepAt[] => course.steps.map((one) => ({ step: one.step, state: stateAt(one, course, now) }));

export const isThrough = ({ state }: StepAt): boolean => state.is === 'done' || state.is === 'signed' || state.is === 'overridden';

function stateAt(one: CourseStep, course: Course, now: Instant): StepState {
  const pass = passAt(one.step.id, now, course.ground);
  const again = pass === null ? null : againOf(one.step.id, pass, course, now);
  if (pass !== null && again === null) return passed(pass);
  const standing = one.doings.findLast((doing) => doing.mark?.stands === true);
  const waiting = standing !== undefined && standing.mark !== pass?.mark && standing.mark !== null && standing.mark.at <= now ? halfDone(one.step, standing, standing.mark, course) : null;
  return waiting ?? toDo(one, course, now, again);
}

function passed({ mark, signature, override }: Pass): StepState {
  if (override !== null) return { is: 'overridden', at: override.at, by: override.by, reason: override.reason, done: mark };
  if (signature !== null) return { is: 'signed', at: signature.at, by: signature.by, role: signature.role, done: mark };
  return { is: 'done', at: mark.at, by: mark.by };
}

/** The work has happened: something is missing, or it came out of turn. What was only said, and no longer holds, is to be done again: null. */
function halfDone(step: ProcedureStep, doing: Doing, mark: Mark, { ground }: Course): StepState | null {
  const [first] = openBlocks(step, doing, mark.at, ground);
  const letGo = approvalOf(doing);
  if (first !== undefined && letGo === null) return step.done.by === 'word' ? null : { is: 'blocked', blocks: [{ why: 'out-of-turn', at: mark.at, by: mark.by, first: first.block, opensAt: null }] };
  const missing = { taps: missingTaps(step, doing), enter: missingFigures(step, doing, mark.at, ground), sign: step.sign !== null && doing.signature === null && letGo === null };
  return { is: 'open', work: mark, again: null, missing, override: letGo };
}

function toDo({ step, doings }: CourseStep, { ground }: Course, now: Instant, again: Again | null): StepState {
  const doing = doings.at(-1);
  if (doing === undefined) return { is: 'blocked', blocks: [] };
  const blocks = openBlocks(step, doing, now, ground).map(({ block }) => block);
  if (blocks.length > 0) return { is: 'blocked', blocks };
  const missing = { taps: missingTaps(step, doing), enter: missingFigures(step, doing, now, ground), sign: step.sign !== null };
  return { is: 'open', work: null, again, missing, override: doing.overrides.at(-1) ?? null };
}

interface Follower {
  readonly one: CourseStep;
  readonly need: Within;
}

/** The steps that must follow this one soon. */
const followersOf = (step: StepId, { steps }: Course, seen: readonly StepId[]): Follower[] =>
  steps.filter(({ step: { id } }) => !seen.includes(id)).flatMap((one) => {
    const need = one.step.needs.find((other): other is Within => other.need === 'within' && other.step === step);
    return need === undefined ? [] : [{ one, need }];
  });

const hasHappened = ({ doings }: CourseStep, now: Instant): boolean => doings.some(({ mark }) => mark?.stands === true && mark.at <= now);

/** Those that have not followed yet: their work has not happened, or they have to be done once more themselves. */
const waitingFor = (step: StepId, course: Course, now: Instant, seen: readonly StepId[]): Follower[] =>
  followersOf(step, course, seen).filter(({ one }) => {
    const pass = passAt(one.step.id, now, course.ground);
    return !hasHappened(one, now) || (pass !== null && againOf(one.step.id, pass, course, now, [...seen, step]) !== null);
  });

/** Null: it need not be done again. With two reasons, the older work is said first. */
function againOf(step: StepId, pass: Pass, course: Course, now: Instant, seen: readonly StepId[] = []): Again | null {
  const waiting = waitingFor(step, course, now, seen);
  if (waiting.length === 0) return null;
  const renewed = renewedSince(step, pass, now, course.ground);
  if (renewed !== null) return { why: 'renewed', step: renewed };
  return waiting.some(({ need }) => now > withinLimit(pass, need)) ? { why: 'late' } : null;
}

/** What must follow it soon has not followed yet, at the end of the line: done once more, its time begins anew. */
export const isRepeatable = (step: StepId, course: Course, now: Instant, seen: readonly StepId[] = []): boolean =>
  followersOf(step, course, seen).some(({ one }) => !hasHappened(one, now) || isRepeatable(one.step.id, course, now, [...seen, step]));

/** The last step of the order has not been done yet. */
export function isUnderWay(course: Course): boolean {
  return course.steps.at(-1)?.passes.length === 0;
}

/** A job stays open while it is held, or while its procedure is under way, whether anything cures or not. */
export function isWalked(job: Job, outlooks: readonly Outlook[], shop: Shop, air: readonly AirReading[]): boolean {
  const course = courseOf(job, outlooks, shop, air);
  return jobHoldOf(job) !== null || (course !== null && isUnderWay(course));
}
