import { outlooksOf } from './book.js';
import type { Subject } from './commands.js';
import { courseOf, type Course } from './course.js';
import type { Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { jobHoldOf } from './job-hold.js';
import type { Job } from './job.js';
import { lineOf, type LineCommand } from './line-of.js';
import type { Outlook } from './outlook.js';
import { foremanOf } from './people.js';
import type { Refusal } from './refusal.js';
import { isUnderWay } from './step-state.js';
import { nearJobs } from './subject.js';

type Aimed = Extract<LineCommand, Subject>;

export interface Walk {
  readonly job: Job;
  readonly outlooks: readonly Outlook[];
  readonly course: Course;
}

type FoundWalk = ({ readonly ok: true } & Walk) | { readonly ok: false; readonly refusal: Refusal };

const MOST_CHOICES = 4;
const refused = (refusal: Refusal): { readonly ok: false; readonly refusal: Refusal } => ({ ok: false, refusal });

/** The job and its procedure that a command is about: the job named, the thread's, or the only one that is under way. */
export function walkFor(command: Aimed, situation: Situation): FoundWalk {
  const named = command.job ?? situation.thread;
  if (named === null) return onlyWalk(command, situation);
  const job = situation.book.job(named);
  if (job === null) return refused(unknownJob(command, named, situation));
  const walk = walkOf(named, situation);
  return walk === null ? refused({ code: 'no-procedure', job: named, choices: beginChoices(named, situation) }) : { ok: true, ...walk };
}

/** The same, where the job must not be held. */
export function freeWalkFor(command: Aimed, situation: Situation): FoundWalk {
  const found = walkFor(command, situation);
  const held = found.ok ? heldRefusal(found.job, situation) : null;
  return held === null ? found : refused(held);
}

/** Null: the job is not held. */
export function heldRefusal(job: Job, { shop }: Pick<Situation, 'shop'>): Refusal | null {
  const hold = jobHoldOf(job);
  return hold === null ? null : { code: 'job-held', job: job.no, hold, foreman: foremanOf(shop) };
}

export function walkOf(no: JobNo, { book, shop }: Situation): Walk | null {
  const job = book.job(no);
  if (job === null) return null;
  const outlooks = outlooksOf(job, shop, book.air);
  const course = courseOf(job, outlooks, shop, book.air);
  return course === null ? null : { job, outlooks, course };
}

function onlyWalk(command: Aimed, situation: Situation): FoundWalk {
  const walks = situation.book.openJobs().flatMap((no) => walkOf(no, situation) ?? []).filter(({ course }) => isUnderWay(course));
  const [only] = walks;
  if (only === undefined) return refused({ code: 'nothing-begun' });
  if (walks.length === 1) return { ok: true, ...only };
  return refused({ code: 'which-job', choices: walks.slice(0, MOST_CHOICES).map(({ job: { no } }) => ({ job: no, line: lineOf({ ...command, job: no }) })) });
}

export const unknownJob = (command: Aimed, job: JobNo, { book }: Situation): Refusal => ({
  code: 'unknown-job',
  job,
  choices: nearJobs(job, book.openJobs()).slice(0, MOST_CHOICES).map((near) => ({ job: near, line: lineOf({ ...command, job: near }) })),
});

export const beginChoices = (job: JobNo, { procedures }: Situation): { label: string; line: string }[] =>
  procedures.map(({ name }) => ({ label: name, line: lineOf({ kind: 'begin', job, joint: null, procedure: name }) }));
