import type { QuestionCommand } from './commands.js';
import { walkFor } from './course-for.js';
import type { Course } from './course.js';
import type { Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { jobHoldOf, type JobHold } from './job-hold.js';
import type { Job } from './job.js';
import type { ProcedureStep } from './procedure.js';
import type { Refusal } from './refusal.js';
import { stepsAt, type StepAt, type StepState } from './step-state.js';
import type { Instant } from '../cure/units.js';

export interface OpenStep {
  readonly step: ProcedureStep;
  readonly state: Extract<StepState, { readonly is: 'open' }>;
}

export interface BlockedStep {
  readonly step: ProcedureStep;
  readonly state: Extract<StepState, { readonly is: 'blocked' }>;
}

/** What comes next on a job. */
export interface NextSteps {
  readonly job: JobNo;
  readonly record: Job;
  readonly course: Course;
  readonly hold: JobHold | null;
  readonly open: readonly OpenStep[];
  /** The first that waits for a known time or for something to be done about it; where nothing is open, the first that waits at all. */
  readonly blocked: BlockedStep | null;
}

type Next = { readonly ok: true; readonly next: NextSteps } | { readonly ok: false; readonly refusal: Refusal };

export function nextSteps(command: Extract<QuestionCommand, { readonly kind: 'next' }>, situation: Situation): Next {
  const found = walkFor(command, situation);
  return found.ok ? { ok: true, next: nextOn(found.job, found.course, situation.now) } : found;
}

export function nextOn(job: Job, course: Course, now: Instant): NextSteps {
  const steps = stepsAt(course, now);
  const open = steps.flatMap(openOf);
  const blocked = steps.flatMap(blockedOf);
  const first = blocked.find(isWorthSaying) ?? (open.length === 0 ? blocked[0] : undefined);
  return { job: job.no, record: job, course, hold: jobHoldOf(job), open, blocked: first ?? null };
}

/** The step that an answer names as next: the one just spoken of while it is open, else the first that is. Null: none, or the job is held. */
export function nextShown(job: Job, course: Course, now: Instant, about: string | null): OpenStep | null {
  const { hold, open } = nextOn(job, course, now);
  return hold !== null ? null : (open.find(({ step }) => step.id === about) ?? open[0] ?? null);
}

/** What only waits for the steps that are open now says nothing new. */
const isWorthSaying = ({ state: { blocks } }: BlockedStep): boolean =>
  blocks.every(({ why }) => why !== 'step') && blocks.some(({ why, opensAt }) => opensAt !== null || (why !== 'confirmed' && why !== 'cures'));

export const openOf = ({ step, state }: StepAt): OpenStep[] => (state.is === 'open' ? [{ step, state }] : []);
export const blockedOf = ({ step, state }: StepAt): BlockedStep[] => (state.is === 'blocked' ? [{ step, state }] : []);
