import type { Celsius, Instant } from '../cure/units.js';
import type { FactRecord } from './facts.js';
import type { EntryNo, JointNo, PersonId } from './ids.js';

/** A mistyped reading and the right one that its writer put in its place; both stay in the book. */
export interface ReadingCorrection {
  readonly before: Celsius;
  readonly after: Celsius;
  readonly by: PersonId;
  readonly enteredAt: Instant;
}

interface Pair extends ReadingCorrection {
  readonly wrong: EntryNo;
  readonly right: EntryNo;
}

/** In the order of entry. One whose right figure was taken back as well says nothing any more. */
export function correctedReadings(all: readonly FactRecord[], joint: JointNo, since: Instant): ReadingCorrection[] {
  const undone = all.flatMap(({ entry, fact }) => (fact.type === 'undone' ? [{ by: entry, entry: fact.entry }] : []));
  const read = all.flatMap((record) => (record.fact.type === 'reading' && record.fact.joint === joint && record.happenedAt >= since ? [{ ...record, value: record.fact.value }] : []));
  const pairs = read.flatMap((right): Pair[] => {
    const wrong = undone.flatMap((one) => (one.by === right.entry ? read.filter(({ entry }) => entry === one.entry) : [])).at(0);
    return wrong === undefined ? [] : [{ before: wrong.value, after: right.value, by: right.by, enteredAt: right.enteredAt, wrong: wrong.entry, right: right.entry }];
  });
  const stands = ({ right }: Pair): boolean => !undone.some((one) => one.entry === right) || pairs.some((next) => next.wrong === right && stands(next));
  return pairs.filter(stands).map(({ before, after, by, enteredAt }) => ({ before, after, by, enteredAt }));
}
