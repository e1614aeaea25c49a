import { sameCure, type CureRef } from './cure-ref.js';
import type { FactRecord } from './facts.js';
import type { JointNo } from './ids.js';
import type { Job } from './job.js';
import type { Outlook } from './outlook.js';
import type { DoneBy, ProcedureStep } from './procedure.js';
import type { Mark } from './step-doings.js';
import { confirmedAt, confirmedOn } from './unfinished.js';

/** Everything in the book that shows the work of a step, in the order of entry. `records`: what was said about this procedure. */
export function marksOf(step: ProcedureStep, job: Job, records: readonly FactRecord[], outlooks: readonly Outlook[]): Mark[] {
  switch (step.done.by) {
    case 'word':
      return bySaying(step, records);
    case 'entry':
      return [...bySaying(step, records), ...entered(step.done, step.joint, job)];
    case 'check':
      return [...bySaying(step, records), ...checked(step.done, step.joint, job, outlooks)];
  }
}

/** Where the foreman let it go on, somebody's word will do. */
const bySaying = (step: ProcedureStep, records: readonly FactRecord[]): Mark[] =>
  records.flatMap((record) => (record.fact.type === 'step-done' && record.fact.step === step.id ? [markOf(record)] : []));

const markOf = ({ entry, happenedAt: at, by }: FactRecord, stands = true, earliest = at): Mark => ({ entry, at, earliest, by, stands });

function entered({ entry }: Extract<DoneBy, { by: 'entry' }>, joint: JointNo | null, { live }: Job): Mark[] {
  const gone = (cure: CureRef): boolean => live.some(({ fact }) => (fact.type === 'scrapped' || fact.type === 'moved-away') && sameCure(fact.cure, cure));
  const pasted = live.flatMap(({ fact }) => (fact.type === 'pasted' ? [fact.cure] : []));
  return live.flatMap((record): Mark[] => {
    const { fact } = record;
    if (fact.type === 'lamp-set') return entry === 'lamp-set' && isThere(fact.joint, joint) ? [markOf(record)] : [];
    if (fact.type === 'pasted') return entry === 'pasted' && isThere(fact.cure.joint, joint) ? [markOf(record, !gone(fact.cure), fact.earliest)] : [];
    if (fact.type !== 'closed' || entry === 'lamp-set' || !isThere(fact.cure.joint, joint)) return [];
    // A panel that was closed has paste on it, whether somebody entered that or not.
    const shows = entry === 'closed' || !pasted.some((cure) => sameCure(cure, fact.cure));
    return shows ? [markOf(record, !gone(fact.cure))] : [];
  });
}

/** The check with which the last of the cures there was confirmed. */
function checked({ milestone }: Extract<DoneBy, { by: 'check' }>, joint: JointNo | null, { live }: Job, outlooks: readonly Outlook[]): Mark[] {
  const there = outlooks.filter(({ cure }) => !cure.scrapped && isThere(cure.ref.joint, joint));
  const at = confirmedOn(there, milestone);
  if (at === null) return [];
  const last = there.filter((outlook) => confirmedAt(outlook, milestone) === at);
  const records = live.filter(({ fact, happenedAt }) => happenedAt === at && fact.type === 'checked' && fact.result === 'hard' && last.some(({ cure }) => sameCure(cure.ref, fact.cure)));
  return records.slice(-1).map((record) => markOf(record));
}

const isThere = (where: JointNo, joint: JointNo | null): boolean => joint === null || where === joint;
