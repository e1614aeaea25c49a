import { outlooksOf } from './book.js';
import type { EntryCommand, Subject } from './commands.js';
import type { Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { lineOf } from './line-of.js';
import type { Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import { cureFor } from './subject.js';

type Found = ReturnType<typeof cureFor>;

/**
 * The cure that a later word is about: as for every command, and where several run or have run, the one that the word
 * can be about (a bead's depth is no word about an adhesive). Where none can, the one meant otherwise, for the caller to refuse.
 */
export function cureWhere(fits: (outlook: Outlook) => boolean, command: Extract<EntryCommand, Subject>, situation: Situation): Found {
  const found = cureFor(command, situation);
  if (found.ok && fits(found.outlook)) return found;
  const job = found.ok ? found.outlook.cure.job : jobIn(found.refusal);
  const known = job === null ? null : situation.book.job(job);
  if (known === null) return found;
  const all = outlooksOf(known, situation.shop, situation.book.air);
  const fitting = all.filter((outlook) => !outlook.cure.scrapped && fits(outlook) && (command.joint === null || outlook.cure.ref.joint === command.joint));
  const joints = [...new Set(fitting.map((outlook) => outlook.cure.ref.joint))];
  const last = fitting.at(-1);
  if (last === undefined) return found;
  if (joints.length === 1) return { ok: true, outlook: last };
  return { ok: false, refusal: { code: 'which-joint', job: known.no, choices: joints.map((joint) => ({ joint, line: lineOf({ ...command, job: known.no, joint }) })) } };
}

/** A job that is known and on which more or less than one thing runs. */
const jobIn = (refusal: Refusal): JobNo | null => (refusal.code === 'nothing-runs' || refusal.code === 'which-joint' ? refusal.job : null);
