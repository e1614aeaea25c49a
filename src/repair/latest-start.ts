import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import { later, minus, minutes, plus, roundDownToMinute, roundUpToMinute, type Celsius, type Instant } from '../cure/units.js';
import { outlooksOf } from './book.js';
import { lookupCard } from './cards.js';
import type { QuestionCommand } from './commands.js';
import type { Situation } from './decision.js';
import { recipeOf, settingsFor, spread, type Heat } from './heat-choices.js';
import { FIRST_JOINT, type JobNo } from './ids.js';
import type { Cure } from './job.js';
import { isOver } from './outlook.js';
import type { Planned } from './planned-cure.js';
import { questionLine } from './question-line.js';
import { dueIf, latestIf, type Aim, type Way } from './readiness.js';
import type { Refusal } from './refusal.js';
import { isOpen, nextOpening } from './shop-hours.js';
import { whichJob } from './subject.js';

type LatestStartCommand = Extract<QuestionCommand, { readonly kind: 'latest-start' }>;

/** One way to heat the joint, and until when it can be closed for that. */
export interface StartChoice {
  readonly heat: Heat;
  /** The last minute within opening hours; null: none in the three weeks before. */
  readonly latest: Instant | null;
  /** It holds if the air reads this at every opening until then; null: nothing is taken for granted. */
  readonly eachMorning: Celsius | null;
  /** When it would be due if the panel were closed at `closed`, now or at the next opening. Null while there is time. */
  readonly late: { readonly closed: Instant; readonly due: Instant | null } | null;
}

/** When a joint has to be closed at the latest; a plan, of which nothing is in the book. */
export interface LatestStart {
  readonly planned: Planned;
  readonly milestone: MilestoneKind;
  readonly readyBy: Instant;
  /** Air first, then heat, coldest first. Heat that gains nothing is left out. */
  readonly choices: readonly StartChoice[];
}

export type LatestStartResult =
  | { readonly ok: true; readonly plan: LatestStart }
  | { readonly ok: false; readonly refusal: Refusal }
  | { readonly ok: false; readonly refusal: { readonly code: 'no-such-milestone'; readonly card: MaterialCard; readonly milestone: MilestoneKind } };

const MOST_SETTINGS = 3;
/** No plan looks further than this, in either direction. */
const HORIZON = minutes(21 * 24 * 60);

/** Backwards from the moment at which it has to be ready. Pure; nothing is stored. */
export function latestStart(command: LatestStartCommand, situation: Situation): LatestStartResult {
  const job = command.job ?? situation.thread;
  if (job === null) return { ok: false, refusal: whichJob(command, situation) };
  const before = lastCure(job, situation);
  const card = lookupCard(situation.cards, command.card) ?? (command.card === null ? (before?.card ?? null) : null);
  if (card === null) return { ok: false, refusal: { code: 'which-card', job, choices: situation.cards.map((one) => ({ card: one.name, line: questionLine({ ...command, job, card: one.name }) })) } };
  const milestone = command.milestone ?? card.milestones.at(-1)?.kind;
  if (milestone === undefined || !card.milestones.some((rule) => rule.kind === milestone)) return { ok: false, refusal: { code: 'no-such-milestone', card, milestone: milestone ?? 'full' } };
  const depthMillimetres = command.depth ?? (before?.card.name === card.name ? before.depthMillimetres : null);
  const planned: Planned = { job, joint: command.joint ?? FIRST_JOINT, card, by: situation.by, depthMillimetres };
  const readyBy = roundDownToMinute(command.readyBy);
  return { ok: true, plan: { planned, milestone, readyBy, choices: choicesFor(planned, milestone, readyBy, situation) } };
}

/** The cure of a job that runs, or that ran last. */
function lastCure(no: JobNo, { book, shop }: Situation): Cure | null {
  const job = book.job(no);
  const outlooks = job === null ? [] : outlooksOf(job, shop, book.air);
  return (outlooks.filter((outlook) => !isOver(outlook)).at(-1) ?? outlooks.at(-1))?.cure ?? null;
}

function choicesFor(planned: Planned, milestone: MilestoneKind, readyBy: Instant, situation: Situation): StartChoice[] {
  const { shop, book, now } = situation;
  const aim: Aim = { planned, milestone, shop, air: book.air, now };
  const airOnly = choice({ kind: 'air' }, readyBy, aim);
  const heated = heatsFor(planned.card, milestone, shop.air).map((heat) => choice(heat, readyBy, aim));
  return [airOnly, ...heated.filter((one) => gains(one, airOnly))];
}

function heatsFor(card: MaterialCard, milestone: MilestoneKind, air: Celsius | null): Heat[] {
  const stages = recipeOf(card, [milestone]);
  if (stages !== null) return [{ kind: 'recipe', stages }];
  return spread(settingsFor(card, [milestone], air), MOST_SETTINGS).map((setting): Heat => ({ kind: 'heater', heater: 'lamp', setting }));
}

/** Heat is worth naming where air alone must begin earlier, or never gets there. */
function gains(heated: StartChoice, air: StartChoice): boolean {
  if (heated.late !== null && heated.late.due === null) return false;
  return air.latest === null || air.eachMorning !== null || (heated.latest !== null && heated.latest > air.latest);
}

/** Air is taken as the book knows it; only where that never ends is it taken for granted that every morning reads the usual air. */
function choice(heat: Heat, readyBy: Instant, aim: Aim): StartChoice {
  const plain = chosen({ heat, eachMorning: null }, readyBy, aim);
  if (heat.kind !== 'air' || aim.shop.air === null || plain.late === null || plain.late.due !== null) return plain;
  const assuming = chosen({ heat, eachMorning: aim.shop.air }, readyBy, aim);
  return assuming.late !== null && assuming.late.due === null ? plain : assuming;
}

function chosen(way: Way, readyBy: Instant, aim: Aim): StartChoice {
  const latest = latestIf(way, aim, minus(readyBy, HORIZON), readyBy);
  const closed = firstMinute(aim);
  const late = latest !== null && latest >= aim.now ? null : { closed, due: dueIf(way, aim, closed, plus(closed, HORIZON)) };
  return { ...way, latest, late };
}

/** The first whole minute at which somebody can close a panel. */
function firstMinute({ shop, now }: Aim): Instant {
  const next = roundUpToMinute(now);
  return isOpen(shop, next) ? next : later(next, nextOpening(shop, next) ?? next);
}
