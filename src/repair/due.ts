import { earlier, instant, later, minus, minutes, plus, type Instant, type Minutes } from '../cure/units.js';
import { alarm, reminder, type Matter as Subject } from './alarm.js';
import { coldTableTold } from './cold-table.js';
import { hotWorkTold, watchReminders } from './hot-work-due.js';
import { heldUntil, standsStill } from './job-hold.js';
import type { JointReading, Raised } from './job.js';
import { hottestAllowed } from './hottest-allowed.js';
import { askableMilestones, heldBead, isAttended, isOver, needsReading, undecidedCartridge, undecidedDew, undecidedLimit, waitingMilestones, type MilestoneOutlook, type Outlook } from './outlook.js';
import type { PersonId } from './ids.js';
import { foremanOf, knownRole } from './people.js';
import { NOTHING_SAID, type PeopleFacts } from './people-facts.js';
import type { Reminder } from './reminder.js';
import { escalation, forForeman, halfSaid, limitAudience, routed, type Meant, type Routing } from './route.js';
import type { Shop } from './shop.js';
import { dayEnd, nextClosing } from './shop-hours.js';
import { takeoverAsked } from './takeover.js';
import { isFireWatch } from './watch-card.js';

/** One thing to ask for, before its repeats are worked out. */
interface Matter extends Subject {
  /** Nothing more is said from here on: another question takes over. */
  readonly until: Instant | null;
  /** The foreman was told of it already and settles it: the owner is asked, and nobody else because they do not answer. */
  readonly foremanKnows?: true;
}

/** What a decision is about: the open limit, the dew point, the cartridge, or a check (`settle`). */
export const LIMIT_ROUND = 0;
export const DEW_ROUND = 1;
/** 2 is hot work (`HOT_WORK_ROUND`), 4 a table that is too cold (`COLD_ROUND`). */
export const CARTRIDGE_ROUND = 3;

/** Put off so often, the foreman is asked. */
export const PUT_OFF_ENOUGH = 3;

/**
 * What must be said about one cure, when, to whom: derived from the facts alone (rules R12, R13, R15, R22).
 * With `now`, what is overdue outside shop hours (the bot was down) waits for the opening as well.
 */
export function remindersFor(outlook: Outlook, shop: Shop, now: Instant | null = null, people: PeopleFacts = NOTHING_SAID): Reminder[] {
  const routing = { shop, people, now };
  if (outlook.cure.scrapped) return [];
  const takeover = takeoverAsked(outlook, routing);
  if (isFireWatch(outlook.cure.card)) return [...watchReminders(outlook, routing), ...takeover];
  const told = [...hotWorkTold(outlook, routing), ...takeover];
  if (outlook.overMaximum !== null) return [...tooHot(outlook, routing, outlook.overMaximum), ...told];
  // A job that stands still waits with everything that lets it go on; heat, limits and decisions never wait.
  const goingOn = standsStill(outlook.cure.jobHolds) ? [] : [...checksDue(outlook, routing), ...stageDue(outlook, routing)];
  const rest = isOver(outlook) ? stillOn(outlook, routing) : [...readingAsked(outlook, routing), ...stillOn(outlook, routing), ...goingOn];
  const beads = [...beadDecision(outlook, routing, DEW_ROUND, undecidedDew(outlook)), ...beadDecision(outlook, routing, CARTRIDGE_ROUND, undecidedCartridge(outlook))];
  return [...told, ...openLimits(outlook, routing), ...decisionDue(outlook, routing), ...beads, ...coldTableTold(outlook, routing), ...rest];
}

/** Posts about this very matter; posts from before its due time belong to an older forecast. */
const raisedFor = (outlook: Outlook, matter: Matter): Raised[] =>
  outlook.cure.raised.filter((one) => one.kind === matter.kind && one.round === matter.round && one.at >= matter.from);

/** Due, +10, +30 to the owner, +50 once to the foreman (rule R12); put off: back ten minutes later, the third time to the foreman. */
function ladder(outlook: Outlook, routing: Routing, matter: Matter): Reminder[] {
  const { shop } = routing;
  const { owner } = outlook.cure;
  const raised = raisedFor(outlook, matter);
  const steps: readonly Minutes[] = [minutes(0), ...shop.rhythm.repeats, shop.rhythm.foreman];
  const toForeman = steps.length - 1;
  const half = halfSaid(raised, matter.foremanKnows === true ? steps.length : toForeman, outlook, routing);
  if (half !== null) return repeat(outlook, routing, matter, { step: half.step, ringAt: half.at, raised });
  const last = raised.at(-1);
  const putOff = outlook.cure.putOff.filter((one) => one.kind === matter.kind && one.at >= matter.from);
  const pending = putOff.findLast((one) => last === undefined || one.at >= last.at);
  const next = raised.reduce((step, one) => Math.max(step, one.step + 1), 0);
  const step = putOff.length >= PUT_OFF_ENOUGH && matter.foremanKnows !== true ? Math.max(next, toForeman) : next;
  if (step > (matter.foremanKnows === true ? toForeman - 1 : toForeman) && pending === undefined) return [];
  // Counted from the last post, so that a late first post (bot down, night) never bunches the repeats.
  const ladderTime = last === undefined ? matter.from : plus(last.at, minutes((steps[step] ?? 0) - (steps[last.step] ?? 0)));
  const asked = pending === undefined ? ladderTime : plus(pending.at, shop.rhythm.putOff);
  const ringAt = later(asked, heldUntil(outlook.cure.jobHolds) ?? asked);
  if (matter.until !== null && ringAt >= matter.until) return [];
  const limit = pending === undefined && matter.foremanKnows !== true ? escalation(matter.from, raised[0]?.at ?? null, owner, routing) : null;
  if (limit === null) return repeat(outlook, routing, matter, { step, ringAt, raised });
  // The owner is busy: the foreman hears of it no later than if they were not.
  const capped = later(limit, last?.at ?? limit);
  const planned = repeat(outlook, routing, matter, { step, ringAt: step >= toForeman ? earlier(ringAt, capped) : ringAt, raised });
  const escalated = step >= toForeman ? [] : repeat(outlook, routing, matter, { step: toForeman, ringAt: capped, raised });
  return escalated.some((one) => one.route === 'alone' && planned.every((other) => other.ringAt >= one.ringAt)) ? escalated : planned;
}

interface Repeat {
  readonly step: number;
  readonly ringAt: Instant;
  readonly raised: readonly Raised[];
}

function repeat(outlook: Outlook, routing: Routing, matter: Matter, { step, ringAt, raised }: Repeat): Reminder[] {
  const { shop } = routing;
  const meant: Meant = (step > shop.rhythm.repeats.length && matter.foremanKnows !== true) || needsAnother(outlook, matter, shop) ? 'foreman' : 'owner';
  const to = meant === 'foreman' ? foremanOf(shop) : outlook.cure.owner;
  return routed(reminder(outlook, matter, step, ringAt, to), meant, outlook, routing).filter((one) => !raised.some((said) => said.step === step && said.to === one.to));
}

/** The first check stands and the owner is an apprentice: the second tap is somebody else's. */
const needsAnother = ({ milestones, cure }: Outlook, { kind }: Matter, shop: Shop): boolean =>
  knownRole(shop, cure.owner) === 'apprentice' && milestones.some((one) => one.kind === kind && one.check.first !== null);

function checksDue(outlook: Outlook, routing: Routing): Reminder[] {
  // Nothing is asked while the foreman has to decide on a passed open limit, on damp metal or on a cartridge.
  if (outlook.cure.closed !== null && (undecidedLimit(outlook) !== null || heldBead(outlook) !== null)) return [];
  const askable = askableMilestones(outlook);
  return askable.flatMap((one, index) => {
    const { dueAt, round, phase } = one.check;
    if (phase === 'held') return settle(outlook, routing, one);
    if (dueAt === null) return [];
    const until = nextDueOf(askable.slice(index + 1));
    const asked = ladder(outlook, routing, { kind: one.kind, round, dueAt, from: dueAt, until, ...(one.check.conflict && one.check.first === null ? { foremanKnows: true as const } : {}) });
    return one.check.conflict ? [...asked, ...settle(outlook, routing, one)] : asked;
  });
}

const heldSince = (one: MilestoneOutlook): Instant => one.check.answer?.at ?? one.check.dueAt ?? instant(0);

/** A decision's second step: not the foreman's question, but whoever said hard is told that it does not count. */
export const DISPUTED_STEP = 1;

/** Two answers that differ, or soft again: the foreman is asked once (rules R11, R15). The tens of the round tell the milestones apart. */
function settle(outlook: Outlook, routing: Routing, one: MilestoneOutlook): Reminder[] {
  const place = outlook.milestones.findIndex((other) => other.kind === one.kind) + 1;
  const matter: Matter = { kind: 'decision', round: 10 * place + one.check.round, dueAt: heldSince(one), from: heldSince(one), until: null };
  const told = raisedFor(outlook, matter);
  const asked = told.some(({ step }) => step === 0) ? [] : [forForeman(reminder(outlook, matter, 0, matter.from, foremanOf(routing.shop)), routing)];
  return [...asked, ...disputed(outlook, one).filter((to) => !told.some((said) => said.to === to)).map((to) => reminder(outlook, matter, DISPUTED_STEP, matter.from, to))];
}

/** Who said hard before somebody else said soft: clamps may come off at any minute now, so they hear of it at once. */
function disputed({ cure }: Outlook, { kind, check: { answer, conflict } }: MilestoneOutlook): PersonId[] {
  if (!conflict || answer === null) return [];
  const hard = cure.checks.filter((check) => check.milestone === kind && check.result === 'hard' && check.at <= answer.at && check.by !== answer.by && !check.foreman);
  return [...new Set(hard.map(({ by }) => by))];
}

const nextDueOf = (later: readonly MilestoneOutlook[]): Instant | null => later.flatMap((one) => one.check.dueAt ?? []).at(0) ?? null;

/** Two messages and no more: coming, and passed (then the foreman decides). Hotter air makes a new, earlier limit; air taken back a later one. */
function openLimits(outlook: Outlook, routing: Routing): Reminder[] {
  const { cure, open } = outlook;
  if (cure.pasted === null || cure.closed !== null || open.kind === 'none') return [];
  const posts = cure.raised.filter((one) => one.kind === 'open-limit');
  const matter = { kind: 'open-limit' as const, round: 1, dueAt: open.at, from: open.at };
  const at = (step: number, when: Instant): Reminder[] => {
    const audience = limitAudience(outlook, when, routing);
    const heard = (to: PersonId | 'channel', which: number): boolean =>
      posts.some((one) => one.step === which && (which === 0 ? one.dueAt <= open.at : one.dueAt >= open.at) && (audience.length === 1 || one.to === to));
    return audience.filter((to) => !heard(to, step) && !heard(to, 1)).map((to) => reminder(outlook, matter, step, when, to));
  };
  const passed = at(1, open.at);
  if (open.kind === 'too hot') return open.at > cure.pasted ? passed : [];
  const warnAt = minus(open.at, minutes(Math.min(routing.shop.rhythm.openWarning, Math.floor(open.minutes / 3))));
  return [...at(0, later(warnAt, cure.pasted)), ...passed];
}

/** The panel was not closed, or was moved, after the open limit: the foreman decides, asked once. */
function decisionDue(outlook: Outlook, routing: Routing): Reminder[] {
  const { cure } = outlook;
  const passed = undecidedLimit(outlook);
  if (passed === null) return [];
  const asked = cure.raised.some((one) => one.kind === 'decision' && one.round === LIMIT_ROUND && one.dueAt >= passed && (cure.releasedAt === null || one.at >= cure.releasedAt));
  const from = later(passed, cure.moved.at(-1) ?? cure.closed ?? passed);
  return asked ? [] : [forForeman(reminder(outlook, { kind: 'decision', round: LIMIT_ROUND, dueAt: passed, from }, 0, from, foremanOf(routing.shop)), routing)];
}

/** Metal too close to the dew point, or a cartridge that may not be used: the foreman decides, asked once. */
function beadDecision(outlook: Outlook, routing: Routing, round: number, held: Instant | null): Reminder[] {
  const { raised, releasedAt } = outlook.cure;
  if (held === null) return [];
  const asked = raised.some((one) => one.kind === 'decision' && one.round === round && one.dueAt >= held && (releasedAt === null || one.at >= releasedAt));
  return asked ? [] : [forForeman(reminder(outlook, { kind: 'decision', round, dueAt: held, from: held }, 0, held, foremanOf(routing.shop)), routing)];
}

/** Until when a question about the lamp makes sense: closing time, midnight where somebody stays. */
const untilLeft = (outlook: Outlook, shop: Shop, at: Instant): Instant | null => (isAttended(outlook.cure, shop, at) ? dayEnd(shop, at) : nextClosing(shop, at));

/** Lamp on, and nothing counts because nobody read the joint. */
function readingAsked(outlook: Outlook, routing: Routing): Reminder[] {
  const { heat, cure } = outlook;
  const { shop } = routing;
  if (!needsReading(cure) || heat.lamp !== 'on' || heat.counted !== null || heat.lastSign === null) return [];
  const from = plus(heat.lastSign, shop.rhythm.readingDue);
  return ladder(outlook, routing, { kind: 'reading', round: cure.heat.length, dueAt: from, from, until: untilLeft(outlook, shop, heat.lastSign) });
}

/** Asked twice without an answer, the third time the foreman is asked about the lamp. */
const STILL_ON_TO_FOREMAN = 2;

/** Metal this much warmer than the air has heat on it, whether anybody named a lamp or not; less is the metal's own. */
const WARMER_THAN_AIR = 5;

function isWarmUnnamed({ heat, air }: Outlook): boolean {
  const { lamp, counted, lastSign } = heat;
  if (lamp !== 'never' || counted === null || lastSign === null) return false;
  const around = air.findLast((step) => step.from <= lastSign)?.temperature ?? null;
  return around === null || counted >= around + WARMER_THAN_AIR;
}

/** What is over is asked about as long as nobody has said that its lamp went off. */
function isHeated(outlook: Outlook): boolean {
  const { heat, cure } = outlook;
  if (cure.partLit) return true;
  if (isOver(outlook)) return heat.lamp === 'on';
  return (heat.lamp === 'on' && (heat.counted !== null || !needsReading(cure))) || isWarmUnnamed(outlook);
}

/** An hour after the last sign of life, and at most once an hour; a check that comes due asks for the lamp as well. */
function stillOn(outlook: Outlook, routing: Routing): Reminder[] {
  const { heat, cure } = outlook;
  const { shop, now } = routing;
  if (!isHeated(outlook) || heat.lastSign === null) return [];
  const { lastSign } = heat;
  const left = untilLeft(outlook, shop, lastSign);
  const round = cure.heat.length;
  const asked = cure.raised.filter((one) => one.kind === 'still-on' && one.round === round && one.at >= lastSign);
  const last = asked.at(-1);
  const half = halfSaid(asked, STILL_ON_TO_FOREMAN, outlook, routing);
  const step = half?.step ?? (last === undefined ? 0 : last.step + 1);
  if (step > STILL_ON_TO_FOREMAN) return [];
  // Whoever checks a joint stands beside its lamp: not asked again at once.
  const seen = cure.checks.reduce((at, check) => later(at, check.at), lastSign);
  const from = plus(seen, shop.rhythm.stillOn);
  const ringAt = last === undefined ? from : half?.at ?? later(from, plus(last.at, shop.rhythm.stillOn));
  const due = standsStill(cure.jobHolds) ? undefined : waitingMilestones(outlook).flatMap((one) => one.check.dueAt ?? []).at(0);
  // Once a check is due its own message asks about the lamp, also when the bot was down in between.
  const heard = now === null ? ringAt : later(ringAt, now);
  if ((due !== undefined && heard >= due) || (left !== null && heard >= left)) return [];
  const meant: Meant = step === STILL_ON_TO_FOREMAN ? 'foreman' : 'owner';
  const one = reminder(outlook, { kind: 'still-on', round, dueAt: from, from }, step, ringAt, meant === 'foreman' ? foremanOf(shop) : cure.owner);
  return routed(one, meant, outlook, routing).filter((other) => !asked.some((said) => said.step === step && said.to === other.to));
}

/** The stage is over and the next one not begun: after the check that ends it, or at its end where no check stands. */
function stageDue(outlook: Outlook, routing: Routing): Reminder[] {
  const index = outlook.stages.findIndex((run) => run.ended !== null && outlook.stages[outlook.stages.indexOf(run) + 1]?.began === null);
  const ended = outlook.stages[index];
  if (ended?.ended == null) return [];
  const check = outlook.milestones.find((one) => one.kind === ended.stage.reaches)?.check;
  if (check !== undefined && check.phase !== 'confirmed') return [];
  const from = check?.answer == null ? ended.ended : plus(check.answer.at, routing.shop.rhythm.stageDue);
  return ladder(outlook, routing, { kind: 'stage', round: index + 1, dueAt: ended.ended, from, until: null });
}

/** Over the maximum. */
function tooHot(outlook: Outlook, routing: Routing, over: JointReading): Reminder[] {
  const { cure, heat } = outlook;
  const answered = heat.lamp === 'off' || heat.lamp === 'unclear' || (heat.counted !== null && heat.counted <= (hottestAllowed(cure.card) ?? Infinity));
  return answered ? [] : alarm(outlook, routing, { kind: 'safety', round: over.entry, dueAt: over.at, from: over.at });
}
