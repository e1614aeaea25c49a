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
