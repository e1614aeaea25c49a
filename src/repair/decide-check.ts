import type { EntryCommand } from './commands.js';
import { refuse, type Decision, type NewFact, type Note, type Situation } from './decision.js';
import type { JobFact } from './facts.js';
import { foremanOf, isForeman } from './people.js';
import { currentMilestone, holdOf, shareOf, undecidedDew, undecidedLimit, type MilestoneOutlook, type Outlook } from './outlook.js';
import type { ReminderKind } from './reminder.js';
import { scrappedCure } from './scrapped-cure.js';
import { cureFor } from './subject.js';
import { untimely } from './timely.js';

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
  if (outlook.overMaximum !== null) return refuse({ code: 'held', job, reason: 'over-maximum' });
  const one = checkedMilestone(command, outlook, situation);
  if (one === null) return refuse({ code: 'nothing-to-check', job });
  const hold = holdOf(outlook, one);
  if (hold === 'open-limit' || hold === 'dew' || hold === 'earlier') return refuse({ code: 'held', job, reason: hold });
  const foreman = isForeman(situation.shop, situation.by);
  const { check } = one;
  const said = check.answer;
  const again = said?.result === command.result && (command.result === 'hard' || (check.dueAt !== null && command.when.latest < check.dueAt));
  if (said !== null && again && !(foreman && !said.foreman && check.phase !== 'confirmed')) {
    return { ok: true, facts: [], about: about(outlook), notes: [{ note: 'already-confirmed', milestone: one.kind, by: said.by, at: said.at }] };
  }
  if (one.forecast.dueAt === null || command.when.latest < one.forecast.dueAt) return refuse({ code: 'not-due', job, milestone: one.kind, dueAt: check.dueAt, share: shareOf(one, situation.now), card: outlook.cure.card });
  // One's own soft stands until the recheck; another person's hard before it is a second answer, and held as soft.
  if (command.result === 'hard' && !foreman && said?.result === 'soft' && said.by === situation.by && check.dueAt !== null && command.when.latest < check.dueAt) return refuse({ code: 'not-due', job, milestone: one.kind, dueAt: check.dueAt, share: shareOf(one, situation.now), card: outlook.cure.card });
  if (check.phase === 'held' && !foreman && command.result === 'hard') return refuse({ code: 'held', job, reason: 'soft-twice' });
  const fact: NewFact = { job, happenedAt: command.when.latest, fact: { type: 'checked', cure: outlook.cure.ref, milestone: one.kind, result: command.result, role: foreman ? 'foreman' : 'other' } };
  return { ok: true, facts: [fact], about: about(outlook), notes: [noteOf(command, one, situation)] };
}

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
const comesBack = (kind: ReminderKind): boolean => kind !== 'open-limit' && kind !== 'safety' && kind !== 'decision' && kind !== 'still-on';

function dueKind(outlook: Outlook, { now }: Situation): ReminderKind | null {
  const current = currentMilestone(outlook, now);
  return current?.check.dueAt != null && now >= current.check.dueAt ? current.kind : null;
}

/** The foreman decides that a held cure goes on; the reason stays in the book. */
export function decideRelease(command: Of<'release'>, situation: Situation): Decision {
  if (!isForeman(situation.shop, situation.by)) return refuse({ code: 'foreman-only', foreman: foremanOf(situation.shop) });
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { outlook } = found;
  const limit = undecidedLimit(outlook);
  const current = currentMilestone(outlook, situation.now);
  const disputed = current !== null && (current.check.phase === 'held' || current.check.conflict) ? current : null;
  const nothing = outlook.overMaximum === null && disputed === null && undecidedDew(outlook) === null && (limit === null || limit > situation.now);
  if (nothing) return refuse({ code: 'nothing-held', job: outlook.cure.job });
  const { job, ref } = outlook.cure;
  const fact = (one: JobFact): NewFact => ({ job, happenedAt: situation.now, fact: one });
  const released = fact({ type: 'released', cure: ref, reason: command.reason });
  // A disputed check that the foreman lets go on is the foreman's own answer to it.
  const answer = disputed === null || outlook.overMaximum !== null ? [] : [fact({ type: 'checked', cure: ref, milestone: disputed.kind, result: 'hard', role: 'foreman' })];
  return { ok: true, facts: [released, ...answer], about: about(outlook), notes: [] };
}

/** The cure is void; it stays in the record. */
export function decideScrap(command: Of<'scrap'>, situation: Situation): Decision {
  const found = scrappedCure(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { outlook } = found;
  return { ok: true, facts: [{ job: outlook.cure.job, happenedAt: situation.now, fact: { type: 'scrapped', cure: outlook.cure.ref, reason: command.reason } }], about: about(outlook), notes: [] };
}
