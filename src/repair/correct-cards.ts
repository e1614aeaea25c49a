import { sameCure, type CureRef } from './cure-ref.js';
import type { FactRecord, JobFact } from './facts.js';

type Correction = Extract<JobFact, { readonly type: 'card-corrected' }>;

/**
 * A cure that was entered with the wrong material is told again with the right one: its start carries the right card,
 * and everything that was entered about it goes with it. What was entered under a name that was taken back meanwhile is
 * about the same cure. `live`: what counts, in order of happening; `all`: everything, also what was taken back.
 * The facts themselves stay in the book as they were entered.
 */
export function withCorrectCards(live: readonly FactRecord[], all: readonly FactRecord[]): readonly FactRecord[] {
  const named = correctionsIn(all);
  if (named.length === 0) return live;
  const standing = correctionsIn(live);
  return live.flatMap((record) => {
    if (!('cure' in record.fact)) return [record];
    const begun = begunAs(record.fact.cure, named);
    const last = standing.findLast((one) => sameCure(begunAs(one.cure, named), begun));
    const now = last?.as ?? begun;
    return wasAboutAnother(record.fact, now) ? [] : [{ ...record, fact: toldAbout(record.fact, now, last) }];
  });
}

function toldAbout(fact: Extract<JobFact, { readonly cure: CureRef }>, cure: CureRef, correction: Correction | undefined): JobFact {
  return fact.type === 'cure-opened' && correction !== undefined ? { ...fact, cure, card: correction.card } : { ...fact, cure };
}

/** Whoever let one material go on has not decided about another; the foreman is asked anew. */
const wasAboutAnother = (fact: Extract<JobFact, { readonly cure: CureRef }>, now: CureRef): boolean =>
  (fact.type === 'released' || (fact.type === 'reminder-raised' && fact.kind === 'decision')) && fact.cure.card !== now.card;

const correctionsIn = (records: readonly FactRecord[]): Correction[] => records.flatMap(({ fact }) => (fact.type === 'card-corrected' ? [fact] : []));

/** The name under which a cure was begun, whatever it was called later. */
function begunAs(cure: CureRef, corrections: readonly Correction[]): CureRef {
  const named = corrections.find((one) => sameCure(one.as, cure));
  return named === undefined ? cure : begunAs(named.cure, corrections);
}

/** The same, out of everything that stands in the book about a job. */
export const begunIn = (cure: CureRef, all: readonly FactRecord[]): CureRef => begunAs(cure, correctionsIn(all));

/** How often this card was put onto this joint, runs that were taken back included: nothing entered about them may reach another. */
export function runsOf(cure: Pick<CureRef, 'joint' | 'card'>, all: readonly FactRecord[]): number {
  return all.flatMap(({ fact }) => (fact.type === 'cure-opened' ? [fact.cure] : fact.type === 'card-corrected' ? [fact.as] : [])).filter((one) => one.joint === cure.joint && one.card === cure.card).length;
}
