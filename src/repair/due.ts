import { instant, later, minus, minutes, plus, type Instant, type Minutes } from '../cure/units.js';
import type { JointReading, Raised } from './job.js';
import { askableMilestones, hottestAllowed, isAttended, isOver, needsReading, undecidedDew, undecidedLimit, waitingMilestones, type MilestoneOutlook, type Outlook } from './outlook.js';
import type { PersonId } from './ids.js';
import { foremanOf } from './people.js';
import type { Reminder, ReminderKind } from './reminder.js';
import type { Shop } from './shop.js';
import { dayEnd, isOpen, nextClosing, nextOpening } from './shop-hours.js';

/** One thing to ask for, before its repeats are worked out. */
interface Matter {
  readonly kind: ReminderKind;
  readonly round: number;
  readonly dueAt: Instant;
  /** First time to say it. */
  readonly from: Instant;
  /** Nothing more is said from here on: another question takes over. */
  readonly until: Instant | null;
}

/** What a decision is about: the open limit, the dew point, or a check (`settle`). */
export const LIMIT_ROUND = 0;
export const DEW_ROUND = 1;

/** Put off so often, the foreman is asked. */
const PUT_OFF_ENOUGH = 3;

/**
 * What must be said about one cure, when, to whom: derived from the facts alone (rules R12, R13, R15).
 * With `now`, what is overdue outside shop hours (the bot was down) waits for the opening as well.
 */
export function remindersFor(outlook: Outlook, shop: Shop, now: Instant | null = null): Reminder[] {
  return asked(outlook, shop, now).map((one) => inShopHours(one, outlook, shop, now));
}

function asked(outlook: Outlook, shop: Shop, now: Instant | null): Reminder[] {
  if (outlook.cure.scrapped) return [];
  if (outlook.overMaximum !== null) return tooHot(outlook, shop, outlook.overMaximum);
  const rest = isOver(outlook) ? [] : [...readingAsked(outlook, shop), ...stillOn(outlook, shop, now), ...checksDue(outlook, shop), ...stageDue(outlook, shop)];
  return [...openLimits(outlook, shop), ...decisionDue(outlook, shop), ...dewDecision(outlook, shop), ...rest];
}

/** Outside shop hours everything but safety, open limits and decisions waits for the opening (rule R12), unless somebody stays. */
function inShopHours(one: Reminder, { cure }: Outlook, shop: Shop, now: Instant | null): Reminder {
  const heard = now === null ? one.ringAt : later(one.ringAt, now);
  const urgent = one.kind === 'open-limit' || one.kind === 'safety' || one.kind === 'decision';
  const opening = urgent || isOpen(shop, heard) || isAttended(cure, shop, heard) ? null : nextOpening(shop, heard);
  return opening === null ? one : { ...one, ringAt: opening, route: 'bundle' };
}

/** Natural, and never used twice: `from` tells two matters of the same kind and due time apart. */
function reminder({ cure }: Outlook, matter: Pick<Matter, 'kind' | 'round' | 'dueAt' | 'from'>, step: number, ringAt: Instant, to: PersonId | 'channel'): Reminder {
  const { kind, round, dueAt, from } = matter;
  const { joint, card, run } = cure.ref;
  const key = `${cure.job}/${joint}/${card}#${run}/${kind}/r${round}/s${step}/${new Date(from).toISOString()}/${to}`;
  return { key, job: cure.job, cure: cure.ref, kind, round, step, dueAt, ringAt, route: 'alone', to };
}

/** Posts about this very matter; posts from before its due time belong to an older forecast. */
const raisedFor = (outlook: Outlook, matter: Matter): Raised[] =>
  outlook.cure.raised.filter((one) => one.kind === matter.kind && one.round === matter.round && one.at >= matter.from);

/** Due, +10, +30 to the owner, +50 once to the foreman (rule R12); put off: back ten minutes later, the third time to the foreman. */
function ladder(outlook: Outlook, shop: Shop, matter: Matter): Reminder[] {
  const raised = raisedFor(outlook, matter);
  const steps: readonly Minutes[] = [minutes(0), ...shop.rhythm.repeats, shop.rhythm.foreman];
  const toForeman = steps.length - 1;
  const last = raised.at(-1);
  const putOff = outlook.cure.putOff.filter((one) => one.kind === matter.kind && one.at >= matter.from);
  const pending = putOff.findLast((one) => last === undefined || one.at >= last.at);
  const next = raised.reduce((step, one) => Math.max(step, one.step + 1), 0);
  const step = putOff.length >= PUT_OFF_ENOUGH ? Math.max(next, toForeman) : next;
  if (step > toForeman && pending === undefined) return [];
  // Counted from the last post, so that a late first post (bot down, night) never bunches the repeats.
  const ladderTime = last === undefined ? matter.from : plus(last.at, minutes((steps[step] ?? 0) - (steps[last.step] ?? 0)));
  const ringAt = pending === undefined ? ladderTime : plus(pending.at, shop.rhythm.putOff);
  if (matter.until !== null && ringAt >= matter.until) return [];
  return [reminder(outlook, matter, step, ringAt, step >= toForeman ? foremanOf(shop) : outlook.cure.owner)];
}

function checksDue(outlook: Outlook, shop: Shop): Reminder[] {
  // Nothing is asked while the foreman has to decide on a passed open limit or on damp metal.
  if (outlook.cure.closed !== null && (undecidedLimit(outlook) !== null || undecidedDew(outlook) !== null)) return [];
  const askable = askableMilestones(outlook);
  return askable.flatMap((one, index) => {
    const { dueAt, round, phase } = one.check;
    if (phase === 'held') return settle(outlook, shop, one);
    if (dueAt === null) return [];
    const until = nextDueOf(askable.slice(index + 1));
    const asked = ladder(outlook, shop, { kind: one.kind, round, dueAt, from: dueAt, until });
    return one.check.conflict ? [...asked, ...settle(outlook, shop, one)] : asked;
  });
}

const heldSince = (one: MilestoneOutlook): Instant => one.check.answer?.at ?? one.check.dueAt ?? instant(0);

/** Two answers that differ, or soft again: the foreman is asked once (rules R11, R15). The tens of the round tell the milestones apart. */
function settle(outlook: Outlook, shop: Shop, one: MilestoneOutlook): Reminder[] {
  const place = outlook.milestones.findIndex((other) => other.kind === one.kind) + 1;
  const matter: Matter = { kind: 'decision', round: 10 * place + one.check.round, dueAt: heldSince(one), from: heldSince(one), until: null };
  return raisedFor(outlook, matter).length > 0 ? [] : [reminder(outlook, matter, 0, matter.from, foremanOf(shop))];
}

const nextDueOf = (later: readonly MilestoneOutlook[]): Instant | null => later.flatMap((one) => one.check.dueAt ?? []).at(0) ?? null;

/** Two messages and no more: coming, and passed (then the foreman decides). Hotter air makes a new, earlier limit; air taken back a later one. */
function openLimits(outlook: Outlook, shop: Shop): Reminder[] {
  const { cure, open } = outlook;
  if (cure.pasted === null || cure.closed !== null || open.kind === 'none') return [];
  const posts = cure.raised.filter((one) => one.kind === 'open-limit');
  const passedSaid = posts.some((one) => one.step === 1 && one.dueAt >= open.at);
  const matter = { kind: 'open-limit' as const, round: 1, dueAt: open.at, from: open.at };
  const passed = passedSaid ? [] : [reminder(outlook, matter, 1, open.at, cure.owner)];
  if (open.kind === 'too hot') return open.at > cure.pasted ? passed : [];
  const warned = posts.some((one) => one.step === 0 && one.dueAt <= open.at);
  const warnAt = minus(open.at, minutes(Math.min(shop.rhythm.openWarning, Math.floor(open.minutes / 3))));
  return warned || passedSaid ? passed : [reminder(outlook, matter, 0, later(warnAt, cure.pasted), cure.owner), ...passed];
}

/** The panel was not closed, or was moved, after the open limit: the foreman decides, asked once. */
function decisionDue(outlook: Outlook, shop: Shop): Reminder[] {
  const { cure } = outlook;
  const passed = undecidedLimit(outlook);
  if (passed === null) return [];
  const asked = cure.raised.some((one) => one.kind === 'decision' && one.round === LIMIT_ROUND && one.dueAt >= passed && (cure.releasedAt === null || one.at >= cure.releasedAt));
  const from = later(passed, cure.moved.at(-1) ?? cure.closed ?? passed);
  return asked ? [] : [reminder(outlook, { kind: 'decision', round: LIMIT_ROUND, dueAt: passed, from }, 0, from, foremanOf(shop))];
}

/** Metal too close to the dew point: the foreman decides, asked once. */
function dewDecision(outlook: Outlook, shop: Shop): Reminder[] {
  const { raised, releasedAt } = outlook.cure;
  const held = undecidedDew(outlook);
  if (held === null) return [];
  const asked = raised.some((one) => one.kind === 'decision' && one.round === DEW_ROUND && one.dueAt >= held && (releasedAt === null || one.at >= releasedAt));
  return asked ? [] : [reminder(outlook, { kind: 'decision', round: DEW_ROUND, dueAt: held, from: held }, 0, held, foremanOf(shop))];
}

/** Until when a question about the lamp makes sense: closing time, midnight where somebody stays. */
const untilLeft = (outlook: Outlook, shop: Shop, at: Instant): Instant | null => (isAttended(outlook.cure, shop, at) ? dayEnd(shop, at) : nextClosing(shop, at));

/** Lamp on, and nothing counts because nobody read the joint. */
function readingAsked(outlook: Outlook, shop: Shop): Reminder[] {
  const { heat, cure } = outlook;
  if (!needsReading(cure) || heat.lamp !== 'on' || heat.counted !== null || heat.lastSign === null) return [];
  const from = plus(heat.lastSign, shop.rhythm.readingDue);
  return ladder(outlook, shop, { kind: 'reading', round: cure.heat.length, dueAt: from, from, until: untilLeft(outlook, shop, heat.lastSign) });
}

/** Metal this much warmer than the air has heat on it, whether anybody named a lamp or not; less is the metal's own. */
const WARMER_THAN_AIR = 5;

function isWarmUnnamed({ heat, air }: Outlook): boolean {
  const { lamp, counted, lastSign } = heat;
  if (lamp !== 'never' || counted === null || lastSign === null) return false;
  const around = air.findLast((step) => step.from <= lastSign)?.temperature ?? null;
  return around === null || counted >= around + WARMER_THAN_AIR;
}

/** An hour after the last sign of life, and at most once an hour; a check that comes due asks for the lamp as well. */
function stillOn(outlook: Outlook, shop: Shop, now: Instant | null): Reminder[] {
  const { heat, cure } = outlook;
  const heated = (heat.lamp === 'on' && (heat.counted !== null || !needsReading(cure))) || isWarmUnnamed(outlook);
  if (!heated || heat.lastSign === null) return [];
  const { lastSign } = heat;
  const left = untilLeft(outlook, shop, lastSign);
  const round = cure.heat.length;
  const asked = cure.raised.filter((one) => one.kind === 'still-on' && one.round === round && one.at >= lastSign);
  const last = asked.at(-1);
  if (asked.length >= 3) return [];
  // Whoever checks a joint stands beside its lamp: not asked again at once.
  const seen = cure.checks.reduce((at, check) => later(at, check.at), lastSign);
  const from = plus(seen, shop.rhythm.stillOn);
  const ringAt = last === undefined ? from : later(from, plus(last.at, shop.rhythm.stillOn));
  const due = waitingMilestones(outlook).flatMap((one) => one.check.dueAt ?? []).at(0);
  // Once a check is due its own message asks about the lamp, also when the bot was down in between.
  const heard = now === null ? ringAt : later(ringAt, now);
  if ((due !== undefined && heard >= due) || (left !== null && heard >= left)) return [];
  const to = asked.length === 2 ? foremanOf(shop) : cure.owner;
  return [reminder(outlook, { kind: 'still-on', round, dueAt: from, from }, asked.length, ringAt, to)];
}

/** The stage is over and the next one not begun: after the check that ends it, or at its end where no check stands. */
function stageDue(outlook: Outlook, shop: Shop): Reminder[] {
  const index = outlook.stages.findIndex((run) => run.ended !== null && outlook.stages[outlook.stages.indexOf(run) + 1]?.began === null);
  const ended = outlook.stages[index];
  if (ended?.ended == null) return [];
  const check = outlook.milestones.find((one) => one.kind === ended.stage.reaches)?.check;
  if (check !== undefined && check.phase !== 'confirmed') return [];
  const from = check?.answer == null ? ended.ended : plus(check.answer.at, shop.rhythm.stageDue);
  return ladder(outlook, shop, { kind: 'stage', round: index + 1, dueAt: ended.ended, from, until: null });
}

/** Over the maximum: at once to owner and foreman, every 5 min for 30 min, then every 15, until answered; never muted. */
function tooHot(outlook: Outlook, shop: Shop, over: JointReading): Reminder[] {
  const { cure, heat } = outlook;
  const answered = heat.lamp === 'off' || heat.lamp === 'unclear' || (heat.counted !== null && heat.counted <= (hottestAllowed(cure.card) ?? Infinity));
  if (answered) return [];
  const matter = { kind: 'safety' as const, round: over.entry, dueAt: over.at, from: over.at };
  return [...new Set([cure.owner, foremanOf(shop)])].map((to) => {
    const mine = cure.raised.filter((one) => one.kind === 'safety' && one.round === over.entry && one.to === to);
    const last = mine.at(-1);
    const ringAt = last === undefined ? over.at : plus(last.at, minutes(mine.length <= 6 ? 5 : 15));
    return reminder(outlook, matter, mine.length, ringAt, to);
  });
}
