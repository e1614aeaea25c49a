import type { AirReading } from '../cure/air.js';
import { later, type Instant } from '../cure/units.js';
import type { FactRecord } from './facts.js';
import type { JobNo, PersonId, StepId } from './ids.js';
import type { Job } from './job.js';
import type { Outlook } from './outlook.js';
import type { Entering, Procedure, ProcedureStep } from './procedure.js';
import type { Shop } from './shop.js';
import { doingsOf, type Doing, type Pass, type StepOverride } from './step-doings.js';
import { marksOf } from './step-marks.js';
import { blocksAt, isReadAnyway, type Ground, type KeyedBlock } from './step-needs.js';

/** One step as the book knows it; what is open at a moment is read off with `stepsAt`. */
export interface CourseStep {
  readonly step: ProcedureStep;
  readonly doings: readonly Doing[];
  /** Doings that count, in the order of entry. */
  readonly passes: readonly Pass[];
}

/** The walk of one job through its procedure, out of the facts alone: an undo or a late entry needs no code of its own. */
export interface Course {
  readonly job: JobNo;
  readonly procedure: Procedure;
  readonly begun: { readonly at: Instant; readonly by: PersonId };
  readonly steps: readonly CourseStep[];
  readonly ground: Ground;
}

/** Null: the job has no procedure. The last one begun counts, and what was said before it was about another. */
export function courseOf(job: Job, outlooks: readonly Outlook[], shop: Shop, air: readonly AirReading[]): Course | null {
  return coursesOf(job, outlooks, shop, air).at(-1) ?? null;
}

/** Every procedure that the job ever began, in order. */
export function coursesOf(job: Job, outlooks: readonly Outlook[], shop: Shop, air: readonly AirReading[]): Course[] {
  const begun = job.live.filter(({ fact }) => fact.type === 'procedure-begun').sort((one, other) => one.entry - other.entry);
  return begun.flatMap((record, index) => {
    const until = begun[index + 1]?.entry ?? Infinity;
    const records = job.live.filter(({ entry }) => entry > record.entry && entry < until);
    // What stood in the book before a first procedure still shows its steps; before a second one it was the first's.
    const seen: Job = index === 0 ? job : { ...job, live: records };
    return record.fact.type === 'procedure-begun' ? [walked(record, record.fact.procedure, records, { job: seen, outlooks, shop, air })] : [];
  });
}

function walked({ happenedAt: at, by }: FactRecord, procedure: Procedure, records: readonly FactRecord[], seen: Omit<Ground, 'passes' | 'steps'>): Course {
  const passes = new Map<StepId, readonly Pass[]>();
  const doings = new Map<StepId, readonly Doing[]>();
  const ground: Ground = { ...seen, passes, steps: procedure.steps };
  const visit = (step: ProcedureStep): void => {
    if (passes.has(step.id)) return;
    // Steps that wait for each other in a circle never open.
    passes.set(step.id, []);
    for (const other of neededSteps(step, procedure)) visit(other);
    const found = doingsOf(step, marksOf(step, seen.job, records, seen.outlooks), records);
    doings.set(step.id, found);
    passes.set(step.id, found.flatMap((doing) => passOf(step, doing, ground)));
  };
  procedure.steps.forEach(visit);
  const steps = procedure.steps.map((step) => ({ step, doings: doings.get(step.id) ?? [], passes: passes.get(step.id) ?? [] }));
  return { job: seen.job.no, procedure, begun: { at, by }, steps, ground };
}

const neededSteps = (step: ProcedureStep, { steps }: Procedure): ProcedureStep[] =>
  step.needs.flatMap((need) => ('step' in need ? steps.filter(({ id }) => id === need.step) : []));

/** A doing counts once its taps and figures are there, a hold point is signed, and nothing stood against it at its moment, or the foreman let it go on. */
function passOf(step: ProcedureStep, doing: Doing, ground: Ground): Pass[] {
  const { mark } = doing;
  if (mark === null || !mark.stands || missingTaps(step, doing).length > 0 || missingFigures(step, doing, mark.at, ground).length > 0) return [];
  const isUnsigned = step.sign !== null && doing.signature === null;
  const stopped = isUnsigned || openBlocks(step, doing, mark.at, ground).length > 0;
  const letGo = stopped ? approvalOf(doing) : null;
  if (stopped && letGo === null) return [];
  const freeAt = later(later(mark.at, doing.signature?.at ?? mark.at), letGo?.at ?? mark.at);
  return [{ mark, freeAt, signature: doing.signature, override: letGo ?? liftedBy(step, doing, mark.at, ground) }];
}

/** The foreman's word after the work was done, or null. */
export const approvalOf = ({ mark, overrides }: Doing): StepOverride | null => (mark === null ? null : overrides.find((one) => one.entry > mark.entry) ?? null);

export const missingTaps = (step: ProcedureStep, doing: Doing): number[] => step.taps.map((_, tap) => tap).filter((tap) => !doing.taps.has(tap));

/** Air and metal that the book has read within the last hours need not be entered again. */
export const missingFigures = (step: ProcedureStep, doing: Doing, at: Instant, ground: Ground): Entering[] =>
  step.enter.filter((what) => !doing.figures.has(what) && !((what === 'air' || what === 'metal') && isReadAnyway(what, step, at, ground)));

/** What stands against a step at a moment. An override lifts what stood against it then, and nothing that came later. */
export function openBlocks(step: ProcedureStep, doing: Doing, at: Instant, ground: Ground): readonly KeyedBlock[] {
  const lifted = liftedKeys(step, doing, at, ground);
  return blocksAt(step, doing, at, ground).filter(({ key }) => !lifted.has(key));
}

const liftedKeys = (step: ProcedureStep, doing: Doing, at: Instant, ground: Ground): ReadonlySet<string> =>
  new Set(before(doing, at).flatMap((one) => blocksAt(step, doing, one.at, ground).map(({ key }) => key)));

/** The override on which a doing rests that was not blocked any more, or null. */
function liftedBy(step: ProcedureStep, doing: Doing, at: Instant, ground: Ground): StepOverride | null {
  if (blocksAt(step, doing, at, ground).length === 0) return null;
  return before(doing, at).at(-1) ?? null;
}

/** The foreman's word before the work was done. */
const before = ({ mark, overrides }: Doing, at: Instant): StepOverride[] => overrides.filter((one) => (mark === null ? one.at <= at : one.entry < mark.entry));
