import { outlooksOf } from './book.js';
import { courseOf, type Course, type CourseStep } from './course.js';
import type { Decision, NewFact, Situation } from './decision.js';
import type { FactRecord } from './facts.js';
import { entryNo, type EntryNo, type JobNo, type PersonId } from './ids.js';
import { foldJob, type Job } from './job.js';
import { nextShown } from './next-steps.js';
import type { ProcedureStep } from './procedure.js';

/**
 * A decision together with the cautions that its answer shows: of the steps that begin or go on with it, and of the one
 * that it names as next. Each is kept once for a doing and a person.
 */
export function withCautions(decision: Decision, situation: Situation): Decision {
  if (!decision.ok) return decision;
  const jobs = [...new Set(decision.facts.flatMap(({ job }) => job ?? []))];
  const shown = jobs.length === 1 ? jobs.flatMap((job) => shownOn(job, decision.facts, situation)) : [];
  return shown.length === 0 ? decision : { ...decision, facts: [...decision.facts, ...shown] };
}

function shownOn(no: JobNo, facts: readonly NewFact[], situation: Situation): NewFact[] {
  const { book, shop, now, by } = situation;
  const known = book.job(no);
  if (known === null && !facts.some(({ fact }) => fact.type === 'procedure-begun')) return [];
  const { job, entry } = after(known, no, facts, situation);
  const course = courseOf(job, outlooksOf(job, shop, book.air), shop, book.air);
  if (course === null) return [];
  const begun = course.steps.filter((one) => isTouched(one, facts, entry)).map(({ step }) => step);
  const next = facts.some(({ fact }) => SAYS_NEXT.has(fact.type)) ? nextShown(job, course, now, begun.at(0)?.id ?? null) : null;
  const steps = [...new Set(next === null ? begun : [...begun, next.step])];
  return steps.flatMap((step) => unseen(step, course, job, entry, by).map((caution): NewFact => ({ job: no, happenedAt: now, fact: { type: 'cautioned', step: step.id, caution } })));
}

/** What is answered with the step that comes next. */
const SAYS_NEXT: ReadonlySet<string> = new Set(['procedure-begun', 'step-done', 'step-signed', 'step-tapped', 'step-entered', 'step-overridden']);

/** The job as it will be. */
function after(known: Job | null, no: JobNo, facts: readonly NewFact[], { now, by }: Situation): { readonly job: Job; readonly entry: EntryNo } {
  const all = known?.all ?? [];
  const entry = entryNo(all.reduce((last, record) => Math.max(last, record.entry), 0) + 1);
  const records = facts.map(({ happenedAt, by: first, fact }): FactRecord => ({ entry, job: no, happenedAt, enteredAt: now, by: first ?? by, fact }));
  return { job: foldJob(no, [...all, ...records]), entry };
}

/** Said or shown by this very entry. */
const isTouched = ({ step, doings }: CourseStep, facts: readonly NewFact[], entry: EntryNo): boolean =>
  doings.some(({ mark }) => mark?.entry === entry) || facts.some(({ fact }) => (fact.type === 'step-tapped' || fact.type === 'step-entered') && fact.step === step.id);

/** Those that this person was not shown since the step was done last. */
function unseen(step: ProcedureStep, { steps }: Course, { live }: Job, entry: EntryNo, by: PersonId): ProcedureStep['cautions'] {
  const doings = steps.find((one) => one.step.id === step.id)?.doings ?? [];
  const since = doings.reduce((last, { mark }) => (mark !== null && mark.entry < entry ? Math.max(last, mark.entry) : last), 0);
  const seen = live.flatMap((record) => (record.fact.type === 'cautioned' && record.fact.step === step.id && record.by === by && record.entry > since ? [record.fact.caution] : []));
  return step.cautions.filter((caution) => !seen.includes(caution));
}
