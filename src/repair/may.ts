import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import { instant, type Instant } from '../cure/units.js';
import { outlooksOf } from './book.js';
import { carBans } from './car-bans.js';
import type { QuestionCommand } from './commands.js';
import type { Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { jobHoldOf, type JobHold } from './job-hold.js';
import type { Job, Check } from './job.js';
import { holdOf, stateOf, type Hold, type MilestoneOutlook, type Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import { whichJob } from './subject.js';
import { confirmedAt } from './unfinished.js';
import { isFireWatch } from './watch-card.js';

type Asked = Extract<QuestionCommand, { readonly kind: 'may' }>;
export type Deed = Asked['deed'];

/** What the book has to say about a deed; it never gives leave. */
export type MayNow =
  | { readonly is: 'refused'; readonly refusal: Refusal }
  /** Nothing is entered about this car: no clock runs. */
  | { readonly is: 'nothing-known'; readonly job: JobNo; readonly deed: Deed }
  /** Wax or the like: no heat on this car. */
  | { readonly is: 'banned'; readonly job: JobNo; readonly deed: Deed; readonly material: string; readonly since: Instant }
  | { readonly is: 'job-held'; readonly job: JobNo; readonly deed: Deed; readonly hold: JobHold }
  /** Hot work, or its watch, goes on: no heat that hides what smoulders. `dueAt` null: the watch has not begun. */
  | { readonly is: 'watched'; readonly job: JobNo; readonly deed: Deed; readonly dueAt: Instant | null }
  /** No card there has a row that the deed waits for. */
  | { readonly is: 'no-row'; readonly job: JobNo; readonly deed: Deed; readonly cards: readonly MaterialCard[] }
  | { readonly is: 'not-closed'; readonly deed: Deed; readonly outlook: Outlook }
  | { readonly is: 'not-yet'; readonly deed: Deed; readonly outlook: Outlook; readonly milestone: MilestoneOutlook; readonly hold: Hold | null; readonly state: 'running' | 'due' | 'held' | 'asleep'; /** How many more waits there are on this car. */ readonly others: number }
  | { readonly is: 'confirmed'; readonly deed: Deed; readonly outlook: Outlook; readonly kind: MilestoneKind; readonly said: Check };

/** The first of these that a card has is what the deed waits for there; a card without any has no say. */
const WAITS_FOR: Readonly<Record<Exclude<Deed, 'bake'>, readonly MilestoneKind[]>> = {
  sand: ['sand', 'full'],
  weld: ['full'],
  move: ['drive-away', 'handling', 'full'],
  fill: ['full'],
  unclamp: ['handling', 'full'],
};
/** Time in the oven is what these wait for, and a watch hardens nothing. */
const NOT_BEFORE_BAKE: readonly MilestoneKind[] = ['dwell', 'fire-watch'];
/** What the whole car has to bear, whatever joint was named. */
const WHOLE_CAR: readonly Deed[] = ['weld', 'move', 'bake'];

export function mayNow(command: Asked, situation: Situation): MayNow {
  const no = jobOf(command, situation);
  if (no === null) return { is: 'refused', refusal: whichJob(command, situation) };
  const { deed } = command;
  const job = situation.book.job(no);
  const cures = job === null ? [] : curesThere(job, command, situation);
  if (job === null) return { is: 'nothing-known', job: no, deed };
  const bans = carBans(job, outlooksOf(job, situation.shop, situation.book.air)).filter((one) => one.deed === deed);
  const ban = bans.find(({ grade }) => grade === 'stop');
  if (ban?.grade === 'stop') return { is: 'banned', job: no, deed, material: ban.material, since: ban.since };
  const hold = jobHoldOf(job);
  if (hold !== null) return { is: 'job-held', job: no, deed, hold };
  const watches = bans.flatMap((one) => (one.grade === 'hold' && one.waits.milestone === 'fire-watch' ? [one.waits.dueAt] : []));
  if (watches.length > 0) return { is: 'watched', job: no, deed, dueAt: watches.includes(null) ? null : instant(Math.max(...watches.map((dueAt) => dueAt ?? 0))) };
  if (cures.length === 0) return { is: 'nothing-known', job: no, deed };
  return aboutCures(cures, no, deed, situation.now);
}

/** The job named, the thread's, or the only one that waits. */
function jobOf(command: Asked, { thread, book }: Situation): JobNo | null {
  const [only, ...others] = book.openJobs();
  return command.job ?? thread ?? (others.length === 0 ? only ?? null : null);
}

const curesThere = (job: Job, { joint, deed }: Asked, { shop, book }: Situation): Outlook[] =>
  outlooksOf(job, shop, book.air).filter(({ cure }) => !cure.scrapped && !isFireWatch(cure.card) && (joint === null || WHOLE_CAR.includes(deed) || cure.ref.joint === joint));

function aboutCures(cures: readonly Outlook[], job: JobNo, deed: Deed, now: Instant): MayNow {
  const asked = cures.flatMap((outlook) => {
    const kind = waitedFor(deed, outlook.cure.card);
    return kind === null ? [] : [{ outlook, kind }];
  });
  if (asked.length === 0) return { is: 'no-row', job, deed, cards: cures.map(({ cure }) => cure.card) };
  const open = asked.find(({ outlook }) => outlook.cure.closed === null);
  if (open !== undefined) return { is: 'not-closed', deed, outlook: open.outlook };
  const waiting = asked.flatMap(({ outlook, kind }) => (confirmedAt(outlook, kind) === null ? outlook.milestones.filter((one) => one.kind === kind).map((milestone) => ({ outlook, milestone })) : []));
  const [worst, ...others] = waiting.toSorted((one, other) => rank(one.outlook, one.milestone, now) - rank(other.outlook, other.milestone, now) || dueOf(other.milestone) - dueOf(one.milestone));
  if (worst !== undefined) {
    const state = stateOf(worst.outlook, worst.milestone, now);
    return { is: 'not-yet', deed, ...worst, hold: holdOf(worst.outlook, worst.milestone), state: state === 'confirmed' ? 'due' : state, others: others.length };
  }
  return lastConfirmed(asked, deed) ?? { is: 'no-row', job, deed, cards: cures.map(({ cure }) => cure.card) };
}

function waitedFor(deed: Deed, card: MaterialCard): MilestoneKind | null {
  const kinds = card.milestones.map((rule) => rule.kind);
  if (deed === 'bake') return kinds.findLast((kind) => !NOT_BEFORE_BAKE.includes(kind)) ?? null;
  return WAITS_FOR[deed].find((kind) => kinds.includes(kind)) ?? null;
}

/** What holds the car longest is said: a hold, what has no time, then the latest. */
function rank(outlook: Outlook, milestone: MilestoneOutlook, now: Instant): number {
  if (stateOf(outlook, milestone, now) === 'held') return 0;
  return milestone.check.dueAt === null ? 1 : 2;
}

const dueOf = ({ check }: MilestoneOutlook): number => check.dueAt ?? 0;

/** The answer that came last, of those that the deed rests on. */
function lastConfirmed(asked: readonly { readonly outlook: Outlook; readonly kind: MilestoneKind }[], deed: Deed): MayNow | null {
  const said = asked.flatMap(({ outlook, kind }) => {
    const at = confirmedAt(outlook, kind);
    const by = outlook.milestones.map(({ check }) => check.answer).find((answer) => answer !== null && answer.at === at && answer.result === 'hard') ?? null;
    return by === null ? [] : [{ is: 'confirmed' as const, deed, outlook, kind, said: by }];
  });
  return said.toSorted((one, other) => other.said.at - one.said.at).at(0) ?? null;
}
