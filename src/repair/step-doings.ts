import type { Instant } from '../cure/units.js';
import type { FactRecord, JobFact } from './facts.js';
import type { EntryNo, PersonId } from './ids.js';
import type { Entering, ProcedureStep } from './procedure.js';
import type { Role } from './shop.js';

/** The work of a step happened, by word or as the book shows it. */
export interface Mark {
  readonly entry: EntryNo;
  readonly at: Instant;
  /** The earliest it can have been: what must follow within a time counts from here. */
  readonly earliest: Instant;
  readonly by: PersonId;
  /** False: it went with a cure that was scrapped. */
  readonly stands: boolean;
}

export interface StepOverride {
  readonly entry: EntryNo;
  readonly at: Instant;
  readonly by: PersonId;
  readonly reason: string;
}

export interface Signature {
  readonly at: Instant;
  readonly by: PersonId;
  readonly role: Role;
}

export interface Figure {
  readonly text: string;
  readonly at: Instant;
  readonly by: PersonId;
}

/** Somebody said it, by name and time. */
export interface Tapped {
  readonly at: Instant;
  readonly by: PersonId;
}

/** One time that a step is done, from its first tap to its signature; `mark` null: the work has not happened yet. */
export interface Doing {
  readonly mark: Mark | null;
  readonly taps: ReadonlyMap<number, Tapped>;
  readonly figures: ReadonlyMap<Entering, Figure>;
  readonly overrides: readonly StepOverride[];
  readonly signature: Signature | null;
}

/** A doing that counts; the next step may begin from `freeAt` on. */
export interface Pass {
  readonly mark: Mark;
  readonly freeAt: Instant;
  readonly signature: Signature | null;
  /** The override that it rests on, or null. */
  readonly override: StepOverride | null;
}

interface Growing {
  readonly mark: Mark | null;
  readonly taps: Map<number, Tapped>;
  readonly figures: Map<Entering, Figure>;
  readonly overrides: StepOverride[];
  signature: Signature | null;
}

const begun = (mark: Mark | null = null): Growing => ({ mark, taps: new Map(), figures: new Map(), overrides: [], signature: null });

/**
 * Every doing of a step in the order of entry; the last has no mark and holds what was tapped and entered for the next.
 * What comes after a mark belongs to it as far as it was missing there: taps after the paste are about that paste,
 * the same taps once more about the next.
 */
export function doingsOf(step: ProcedureStep, marks: readonly Mark[], records: readonly FactRecord[]): readonly Doing[] {
  const told = records.filter(({ fact }) => 'step' in fact && fact.step === step.id && fact.type !== 'step-done' && fact.type !== 'reminder-raised');
  const done: Growing[] = [];
  let next = begun();
  for (const event of inOrder(marks, told)) {
    if ('stands' in event) {
      done.push({ ...next, mark: event });
      next = begun();
    } else tell(event, done.at(-1) ?? null, next, step);
  }
  return [...done, next];
}

/** A mark stands before what else came with the same message. */
const inOrder = (marks: readonly Mark[], told: readonly FactRecord[]): (Mark | FactRecord)[] => [...marks, ...told].sort((one, other) => one.entry - other.entry);

function tell({ fact, entry, happenedAt: at, by }: FactRecord, last: Growing | null, next: Growing, step: ProcedureStep): void {
  switch (fact.type) {
    case 'step-tapped':
      if (fact.tap >= 0 && fact.tap < step.taps.length) (last === null || last.taps.has(fact.tap) ? next : last).taps.set(fact.tap, { at, by });
      return;
    case 'step-entered':
      enter(fact, { text: fact.text, at, by }, last, next);
      return;
    case 'step-overridden':
      last?.overrides.push({ entry, at, by, reason: fact.reason });
      next.overrides.push({ entry, at, by, reason: fact.reason });
      return;
    case 'step-signed':
      if (last !== null && last.signature === null && step.sign?.includes(fact.role) === true) last.signature = { at, by, role: fact.role };
      return;
    default:
      return;
  }
}

/** A figure entered again corrects the one before, and holds for the next doing as well. */
function enter({ what }: Extract<JobFact, { type: 'step-entered' }>, figure: Figure, last: Growing | null, next: Growing): void {
  const corrects = last === null || last.figures.has(what);
  last?.figures.set(what, figure);
  if (corrects) next.figures.set(what, figure);
}
