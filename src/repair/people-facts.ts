import type { Instant } from '../cure/units.js';
import type { FactRecord } from './facts.js';
import type { EntryNo, JobNo, PersonId } from './ids.js';
import type { Role } from './shop.js';

/** Somebody is in the booth: what can wait waits. */
export interface Busy {
  readonly person: PersonId;
  readonly from: Instant;
  readonly until: Instant;
}

/** Somebody's jobs, offered to somebody else. It counts from the other's acceptance (rule R22). */
export interface Offer {
  readonly entry: EntryNo;
  readonly from: PersonId;
  readonly to: PersonId;
  readonly at: Instant;
  readonly jobs: readonly JobNo[];
  readonly accepted: { readonly by: PersonId; readonly at: Instant } | null;
}

export interface Adopted {
  readonly person: PersonId;
  readonly name: string;
  readonly role: Role;
}

/** What the book knows about the people themselves, oldest first. */
export interface PeopleFacts {
  readonly busy: readonly Busy[];
  readonly offers: readonly Offer[];
  readonly adopted: readonly Adopted[];
  /** Strangers about whom the foreman was asked already. */
  readonly askedAbout: readonly PersonId[];
  /** Those of them whom the foreman has neither taken on nor refused yet. */
  readonly strangers: readonly PersonId[];
}

export const NOTHING_SAID: PeopleFacts = { busy: [], offers: [], adopted: [], askedAbout: [], strangers: [] };

/** Out of the shop's facts, and of everything that was ever said about who belongs to it. */
export function peopleFacts(records: readonly FactRecord[], adoptions: readonly FactRecord[]): PeopleFacts {
  const undone = new Set(records.flatMap(({ fact }) => (fact.type === 'undone' ? [fact.entry] : [])));
  const live = records.filter((record) => !undone.has(record.entry));
  return {
    busy: live.flatMap(({ by, happenedAt, fact }) => (fact.type === 'busy' ? [{ person: by, from: happenedAt, until: fact.until }] : [])),
    offers: live.flatMap((record) => offerOf(record, live)),
    adopted: adoptions.flatMap(({ fact }) => (fact.type === 'adopted' ? [{ person: fact.person, name: fact.name, role: fact.role }] : [])),
    askedAbout: adoptions.flatMap(({ fact }) => (fact.type === 'adoption-asked' ? [fact.person] : [])),
    strangers: undecided(adoptions),
  };
}

function undecided(adoptions: readonly FactRecord[]): PersonId[] {
  const decided = new Set(adoptions.flatMap(({ fact }) => (fact.type === 'adopted' || fact.type === 'adoption-refused' ? [fact.person] : [])));
  return adoptions.flatMap(({ fact }) => (fact.type === 'adoption-asked' && !decided.has(fact.person) ? [fact.person] : []));
}

function offerOf({ entry, by, happenedAt, fact }: FactRecord, live: readonly FactRecord[]): Offer[] {
  if (fact.type !== 'handover-offered') return [];
  const accepted = live.find((other) => other.fact.type === 'handover-accepted' && other.fact.offer === entry);
  return [{ entry, from: by, to: fact.to, at: happenedAt, jobs: fact.jobs, accepted: accepted === undefined ? null : { by: accepted.by, at: accepted.happenedAt } }];
}

/** Until when this person is busy at this moment, by what they said last; null: they are not. */
export function busyUntil({ busy }: PeopleFacts, person: PersonId | 'channel', at: Instant): Instant | null {
  const last = busy.findLast((one) => one.person === person && one.from <= at);
  return last !== undefined && at < last.until ? last.until : null;
}

/** The newest offer of a job by its owner that nobody has accepted by then; null: none. */
export function openOffer({ offers }: PeopleFacts, job: JobNo, owner: PersonId, at: Instant): Offer | null {
  const last = offers.findLast((one) => one.from === owner && one.at <= at && one.jobs.includes(job));
  return last !== undefined && last.accepted === null ? last : null;
}
