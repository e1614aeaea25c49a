import type { MilestoneKind } from '../cure/card.js';
import type { EntryCommand } from './commands.js';
import { heldRefusal, walkOf } from './course-for.js';
import { refuse, type Decision, type NewFact, type Note, type Situation } from './decision.js';
import type { JobFact } from './facts.js';
import { decideSmoke, releaseSmoke } from './decide-smoke.js';
import type { JobNo } from './ids.js';
import { lampWanted } from './lamp-wanted.js';
import { jobHoldOf } from './job-hold.js';
import { foremanOf, isForeman, roleOf } from './people.js';
import { currentMilestone, heldBead, holdOf, shareOf, undecidedCartridge, undecidedLimit, type MilestoneOutlook, type Outlook } from './outlook.js';
import { isBegunBy } from './opened-days.js';
import type { Refusal } from './refusal.js';
import type { ReminderKind } from './reminder.js';
import { scrappedCure } from './scrapped-cure.js';
import type { Block } from './step-needs.js';
import { stepsAt } from './step-state.js';
import { cureFor } from './subject.js';
import { untimely } from './timely.js';
import { isFireWatch } from './watch-card.js';

type Of<K extends EntryCommand['kind']> = Extract<EntryCommand, { readonly kind: K }>;

const about = (outlook: Outlook): { job: Outlook['cure']['job']; cure: Outlook['cure']['ref'] } => ({ job: outlook.cure.job, cure: outlook.cure.ref });

/** A named person's answer to a check that is due (rules R10, R11, R15). */
export function decideCheck(command: Of<'check'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { outlook } = found;
  const job = outlook.cure.job;
  const smoke = decideSmoke(command, outlook, situation);
  if (smoke !== null) return smoke;
  const stopped = jobHoldAbout(command, outlook, situation);
  if (stopped !== null) return refuse(stopped);
  if (outlook.overMaximum !== null) return refuse({ code: 'held', job, reason: 'over-maximum' });
  const one = checkedMilestone(command, outlook, situation);
  if (one === null) return refuse({ code: isFireWatch(outlook.cure.card) ? 'still-hot' : 'nothing-to-check', job });
  const hold = holdOf(outlook, one);
  if (hold === 'open-limit' || hold === 'dew' || hold === 'cartridge' || hold === 'earlier') return refuse({ code: 'held', job, reason: hold });
  const foreman = isForeman(situation.shop, situation.by);
  const apprentice = roleOf(situation.shop, situation.by) === 'apprentice';
  if (apprentice && command.result === 'hard' && !isFirstChecked(one.kind)) return refuse({ code: 'wrong-role', role: 'apprentice', may: ['technician', 'foreman'] });
  const { check } = one;
  const said = check.answer;
  const again = said?.result === command.result && (command.result === 'hard' || (check.dueAt !== null && command.when.latest < check.dueAt));
  if (said !== null && again && !(foreman && !said.foreman && check.phase !== 'confirmed')) {
    return { ok: true, facts: [], about: about(outlook), notes: [{ note: 'already-confirmed', milestone: one.kind, by: said.by, at: said.at }] };
  }
  const notDue = refuse({ code: 'not-due', job, milestone: one.kind, dueAt: check.dueAt, share: shareOf(one, situation.now), card: outlook.cure.card });
  if (one.forecast.dueAt === null || command.when.latest < one.forecast.dueAt) return notDue;
  // One's own soft stands until the recheck, and an apprentice's hard is not weighed against anybody's; another person's hard before it is a second answer, and held as soft.
  const recheckWaits = command.result === 'hard' && !foreman && said?.result === 'soft' && check.dueAt !== null && command.when.latest < check.dueAt;
  if (recheckWaits && (apprentice || said.by === situation.by)) return notDue;
  if (check.phase === 'held' && !foreman && command.result === 'hard') return refuse({ code: 'held', job, reason: 'soft-twice' });
  if (apprentice && command.result === 'hard' && check.conflict && said?.by !== situation.by) return refuse({ code: 'held', job, reason: 'two-answers' });
  if (apprentice && command.result === 'hard' && check.first !== null && said?.result !== 'hard') return { ok: true, facts: [], about: about(outlook), notes: [{ note: 'already-confirmed', milestone: one.kind, by: check.first.by, at: check.first.at }] };
  const fact: NewFact = { job, happenedAt: command.when.latest, fact: { type: 'checked', cure: outlook.cure.ref, milestone: one.kind, result: command.result, role: foreman ? 'foreman' : apprentice ? 'apprentice' : 'other' } };
  return { ok: true, facts: [fact], about: about(outlook), notes: [noteOf(command, one, situation), ...(command.lampWanted === true ? [lampWanted(outlook, one.kind, situation)] : [])] };
}

/** A job that stands still gets no strength confirmed; soft only holds it longer, and is heard. */
function jobHoldAbout({ result }: Of<'check'>, { cure }: Outlook, situation: Situation): Refusal | null {
  const job = result === 'hard' ? situation.book.job(cure.job) : null;
  return job === null ? null : heldRefusal(job, situation);
}

/** What an apprentice may check first; what lets a car onto the road or under load is never theirs (but soft is: it only holds). */
const isFirstChecked = (kind: MilestoneKind): boolean => kind !== 'full' && kind !== 'drive-away';

/** The milestone asked about: the one named, the one that is due, or the one confirmed last (for a second answer). */
function checkedMilestone(command: Of<'check'>, outlook: Outlook, { now }: Situation): MilestoneOutlook | null {
  if (command.milestone !== null) return outlook.milestones.find((one) => one.kind === command.milestone) ?? null;
  const current = currentMilestone(outlook, now);
  const confirmed = outlook.milestones.filter((one) => one.check.phase === 'confirmed').at(-1) ?? null;
  const currentIsDue = current?.check.dueAt != null && now >= current.check.dueAt;
  if (currentIsDue || confirmed === null) return current;
  if (current !== null && (current.check.round > 1 || current.check.phase === 'held')) return current;
  return confirmed;
}

function noteOf(command: Of<'check'>, one: MilestoneOutlook, { by, shop }: Situation): Note {
  const said = one.check.answer;
  const milestone = one.kind;
  const before = one.check.dueAt !== null && command.when.latest < one.check.dueAt;
  const disputes = said !== null && said.result !== command.result && (one.check.phase === 'confirmed' || before || (one.check.conflict && said.by !== by));
  if (disputes && !isForeman(shop, by)) return { note: 'two-answers', milestone, other: said.by };
  const first = one.check.first;
  if (command.result === 'soft' && first !== null && first.by !== by && !isForeman(shop, by)) return { note: 'two-answers', milestone, other: first.by };
  if (command.result === 'hard' && roleOf(shop, by) === 'apprentice') return { note: 'first-check', milestone };
  return { note: command.result === 'hard' ? 'confirmed' : 'soft', milestone };
}

/** Not now: asked again in ten minutes. */
export function decideLater(command: Of<'later'>, situation: Situation): Decision {
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { outlook } = found;
  const last = outlook.cure.raised.findLast((one) => comesBack(one.kind));
  const kind = last?.kind ?? dueKind(outlook, situation);
  if (kind === null) return refuse({ code: 'nothing-to-check', job: outlook.cure.job });
  const already = outlook.cure.putOff.some((one) => one.kind === kind && last !== undefined && one.at >= last.at);
  if (already) return { ok: true, facts: [], about: about(outlook), notes: [{ note: 'already-so' }] };
  return { ok: true, facts: [{ job: outlook.cure.job, happenedAt: situation.now, fact: { type: 'put-off', cure: outlook.cure.ref, kind } }], about: about(outlook), notes: [] };
}

/** What is repeated on a ladder can be put off; a limit, a hold and too much heat cannot, and the lamp is asked about hourly. */
const comesBack = (kind: ReminderKind): boolean => kind !== 'open-limit' && kind !== 'safety' && kind !== 'decision' && kind !== 'still-on' && kind !== 'handover';

function dueKind(outlook: Outlook, { now }: Situation): ReminderKind | null {
  const current = currentMilestone(outlook, now);
  return current?.check.dueAt != null && now >= current.check.dueAt ? current.kind : null;
}

/** The foreman decides that a held job or cure goes on; the reason stays in the book. */
export function decideRelease(command: Of<'release'>, situation: Situation): Decision {
  if (!isForeman(situation.shop, situation.by)) return refuse({ code: 'foreman-only', foreman: foremanOf(situation.shop) });
  const held = heldJob(command, situation);
  if (held !== null) return { ok: true, facts: [{ job: held, happenedAt: situation.now, fact: { type: 'job-released', reason: command.reason } }], about: null, notes: [] };
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { outlook } = found;
  const smoke = releaseSmoke(command, outlook, situation);
  if (smoke !== null) return smoke;
  const limit = undecidedLimit(outlook);
  const current = currentMilestone(outlook, situation.now);
  const disputed = current !== null && (current.check.phase === 'held' || current.check.conflict) ? current : null;
  const nothing = outlook.overMaximum === null && disputed === null && heldBead(outlook) === null && (limit === null || limit > situation.now);
  if (nothing) return refuse({ code: 'nothing-held', job: outlook.cure.job });
  const { job, ref } = outlook.cure;
  const fact = (one: JobFact): NewFact => ({ job, happenedAt: situation.now, fact: one });
  const released = fact({ type: 'released', cure: ref, reason: command.reason });
  // A disputed check that the foreman lets go on is the foreman's own answer to it.
  const answer = disputed === null || outlook.overMaximum !== null ? [] : [fact({ type: 'checked', cure: ref, milestone: disputed.kind, result: 'hard', role: 'foreman' })];
  return { ok: true, facts: [released, ...answer, ...labelLifted(command.reason, outlook, situation).map(fact)], about: about(outlook), notes: [] };
}

/** One decision about one cartridge: the step that its label stands against goes on with the bead that was laid from it. */
function labelLifted(reason: string, outlook: Outlook, situation: Situation): JobFact[] {
  const walk = undecidedCartridge(outlook) === null ? null : walkOf(outlook.cure.job, situation);
  const steps = walk === null ? [] : stepsAt(walk.course, situation.now).filter(({ step }) => isBegunBy(step, outlook.cure.ref.joint));
  return steps.flatMap(({ step, state }): JobFact[] => (state.is === 'blocked' && state.blocks.some((block) => isLabel(block.why === 'out-of-turn' ? block.first.why : block.why)) ? [{ type: 'step-overridden', step: step.id, reason, pastLabel: true }] : []));
}

const isLabel = (why: Block['why']): boolean => why === 'expired' || why === 'opened';

/** A whole job that is held comes first, unless one of its joints is named. */
function heldJob({ job, joint }: Of<'release'>, { book, thread }: Situation): JobNo | null {
  const no = joint === null ? (job ?? thread) : null;
  const known = no === null ? null : book.job(no);
  return known === null || jobHoldOf(known) === null ? null : known.no;
}

/** The cure is void; it stays in the record. */
export function decideScrap(command: Of<'scrap'>, situation: Situation): Decision {
  const found = scrappedCure(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { outlook } = found;
  return { ok: true, facts: [{ job: outlook.cure.job, happenedAt: situation.now, fact: { type: 'scrapped', cure: outlook.cure.ref, reason: command.reason } }], about: about(outlook), notes: [] };
}
