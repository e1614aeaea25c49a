import type { Instant } from '../cure/units.js';
import type { PersonId } from './ids.js';
import type { Job } from './job.js';

/** A whole job that stands still until a foreman releases it. */
export interface JobHold {
  readonly at: Instant;
  readonly by: PersonId;
  readonly reason: string;
}

/** Null: it goes on. In the order of entry: a hold entered after a release stands. */
export function jobHoldOf(job: Job): JobHold | null {
  const told = job.live.filter(({ fact }) => fact.type === 'job-held' || fact.type === 'job-released').sort((one, other) => one.entry - other.entry);
  const last = told.at(-1);
  return last?.fact.type === 'job-held' ? { at: last.happenedAt, by: last.by, reason: last.fact.reason } : null;
}

/** A time in which a job stood still; `until` null: it does so now. */
export interface HeldSpan {
  readonly from: Instant;
  readonly until: Instant | null;
}

/** Every hold of a whole job, in the order of entry. */
export function holdSpans({ live }: Job): HeldSpan[] {
  const told = live.filter(({ fact }) => fact.type === 'job-held' || fact.type === 'job-released').sort((one, other) => one.entry - other.entry);
  return told.reduce<HeldSpan[]>((spans, { fact, happenedAt: at }) => {
    const last = spans.at(-1);
    const stands = last?.until === null;
    if (fact.type === 'job-held') return stands ? spans : [...spans, { from: at, until: null }];
    return last === undefined || !stands ? spans : [...spans.slice(0, -1), { from: last.from, until: at }];
  }, []);
}

/** While a whole job is held, nothing is asked that would let it go on. */
export const standsStill = (spans: readonly HeldSpan[]): boolean => spans.at(-1)?.until === null;

/** The end of the last hold: what came due meanwhile is said from then on. Null: there was none, or it goes on. */
export const heldUntil = (spans: readonly HeldSpan[]): Instant | null => spans.at(-1)?.until ?? null;

/** It came due while the whole job stood still. */
export const isDueWhileHeld = (spans: readonly HeldSpan[], dueAt: Instant): boolean => spans.some(({ from, until }) => from <= dueAt && (until === null || dueAt < until));
