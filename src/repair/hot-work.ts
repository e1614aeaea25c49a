import type { Instant } from '../cure/units.js';
import { carBans } from './car-bans.js';
import { sameCure, type CureRef } from './cure-ref.js';
import type { FactRecord } from './facts.js';
import type { EntryNo, JointNo, PersonId } from './ids.js';
import type { Job } from './job.js';
import { FIRE_WATCH } from './watch-card.js';

/** Welding or other hot work that somebody said they begin. */
export interface HotWork {
  readonly at: Instant;
  /** Null: somewhere on the car. */
  readonly joint: JointNo | null;
  readonly by: PersonId;
  readonly entry: EntryNo;
  /** As the procedure plans it, or without one: beside paste that is still open. */
  readonly wet: boolean;
  /** Wax or the like that was in the car by then. */
  readonly ban: { readonly material: string; readonly since: Instant } | null;
  /** Its end was said, or whoever did it began the next. */
  readonly ended: boolean;
  /** The fire watch that it belongs to. */
  readonly watch: CureRef | null;
}

/** Every beginning of hot work on a job, in order of happening. */
export function hotWorkIn(job: Job): HotWork[] {
  return job.live.flatMap((record) => (record.fact.type === 'weld-begun' ? [readHotWork(job, record, record.fact.joint)] : []));
}

function readHotWork(job: Job, { happenedAt: at, by, entry }: FactRecord, joint: JointNo | null): HotWork {
  const watch = job.live.findLast(({ fact, happenedAt }) => fact.type === 'cure-opened' && fact.cure.card === FIRE_WATCH && happenedAt <= at);
  const follows = (other: FactRecord): boolean => other.happenedAt > at || (other.happenedAt === at && other.entry > entry);
  const ended = job.live.some((other) => follows(other) && (endsHotWork(job, other, at) || (other.fact.type === 'weld-begun' && other.by === by)));
  return { at, joint, by, entry, wet: isWet(job, joint, at), ban: banBy(job, at), ended, watch: watch?.fact.type === 'cure-opened' ? watch.fact.cure : null };
}

/** Whether hot work that began at `begun` was over by this entry. A watch that began without more being said ended all of it. */
function endsHotWork({ live }: Job, { fact, entry, happenedAt }: FactRecord, begun: Instant): boolean {
  if (fact.type === 'weld-ended') return fact.only === null || fact.only.includes(begun);
  if ((fact.type !== 'closed' && fact.type !== 'moved') || fact.cure.card !== FIRE_WATCH) return false;
  return !live.some((other) => other.entry === entry && other.happenedAt === happenedAt && SAYS_MORE.some((type) => type === other.fact.type));
}

/** In one entry with these, a watch that begins again tells nothing about the work. */
const SAYS_MORE = ['weld-begun', 'weld-ended', 'released', 'checked'] as const;

/** What goes on of the hot work that a fire watch follows, in order of beginning. */
export const goingOn = ({ ref, hotWork }: { readonly ref: CureRef; readonly hotWork: readonly HotWork[] }): HotWork[] =>
  hotWork.filter(({ ended, watch }) => !ended && watch !== null && sameCure(watch, ref));

/** The plan decides where there is one. A place that nobody named is wet only if nothing on the car was closed yet. */
function isWet({ live }: Job, joint: JointNo | null, at: Instant): boolean {
  const plan = live.findLast(({ fact }) => fact.type === 'procedure-begun');
  if (plan?.fact.type === 'procedure-begun') {
    const isDone = (step: string): boolean => live.some(({ fact, entry, happenedAt }) => fact.type === 'step-done' && fact.step === step && entry > plan.entry && happenedAt < at);
    return joint !== null && plan.fact.procedure.steps.some((step) => step.joint === joint && step.cautions.includes('weld-wet') && !isDone(step.id));
  }
  const begun = live.flatMap(({ fact, happenedAt }) => (fact.type === 'cure-opened' && fact.cure.card !== FIRE_WATCH && happenedAt <= at ? [fact.cure] : []));
  const there = begun.filter((cure) => (joint === null || cure.joint === joint) && !has(live, 'scrapped', cure, at));
  const isOpen = (cure: CureRef): boolean => has(live, 'pasted', cure, at) && !has(live, 'closed', cure, at);
  return joint === null ? there.length > 0 && there.every(isOpen) : there.some(isOpen);
}

const has = (live: readonly FactRecord[], type: 'pasted' | 'closed' | 'scrapped', cure: CureRef, by: Instant): boolean =>
  live.some(({ fact, happenedAt }) => fact.type === type && sameCure(fact.cure, cure) && happenedAt <= by);

/** What stood against any heat at that moment, as the book knows it now. */
function banBy(job: Job, at: Instant): HotWork['ban'] {
  const { live } = job;
  const gone = (cure: CureRef): boolean => live.some(({ fact }) => fact.type === 'scrapped' && sameCure(fact.cure, cure));
  const cards = live.flatMap(({ fact, happenedAt }) => (fact.type === 'cure-opened' && fact.card.noHeatAfter && !gone(fact.cure) ? [{ material: fact.card.name, since: happenedAt }] : []));
  const steps = carBans(job, []).flatMap((ban) => (ban.grade === 'stop' && ban.deed === 'weld' ? [{ material: ban.material, since: ban.since }] : []));
  return [...cards, ...steps].filter(({ since }) => since <= at).at(0) ?? null;
}
