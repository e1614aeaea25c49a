import { airSteps, type AirReading, type AirSide, type AirStep } from '../cure/air.js';
import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import { forecast, milestoneCounts, type MilestoneForecast } from '../cure/forecast.js';
import { afterHeatEvent, NO_HEAT, type HeatState } from '../cure/heat.js';
import type { Heater, HeatEvent, JointHistory } from '../cure/history.js';
import { lampStretches } from '../cure/lamp-stretches.js';
import { openLimit, type OpenLimit } from '../cure/open-limit.js';
import { runRecipe, type StageRun } from '../cure/recipe.js';
import { earlier, instant, later, type Celsius, type Instant } from '../cure/units.js';
import { cartridgeOf, type Cartridge } from './cartridge.js';
import { dewOf, type Dew } from './dew.js';
import { withoutEarlierHeat } from './earlier-heat.js';
import type { PersonId } from './ids.js';
import type { Cure, JointReading } from './job.js';
import { checkState, shareOfWait, type CheckState } from './rounds.js';
import type { Shop } from './shop.js';
import { undecidedSmoke } from './smoke.js';
import { hottestAllowed } from './hottest-allowed.js';
import { dayEnd, isOpen, lastClosing, nextClosing, nextLongClosing, openPeriods } from './shop-hours.js';

export interface MilestoneOutlook {
  readonly kind: MilestoneKind;
  readonly forecast: MilestoneForecast;
  readonly check: CheckState;
}

/** Everything that follows from the facts of one cure; time passing alone does not change it. */
export interface Outlook {
  readonly cure: Cure;
  /** Null until the panel is closed: no strength clock runs. */
  readonly history: JointHistory | null;
  readonly air: readonly AirStep[];
  readonly milestones: readonly MilestoneOutlook[];
  readonly open: OpenLimit;
  /** The open limit that was passed before the panel was closed or last moved, or null. */
  readonly openPassed: Instant | null;
  /** A reading over the card's maximum that nobody has corrected or decided on. */
  readonly overMaximum: JointReading | null;
  /** What is known about the metal and the dew point between paste and closing; null: nothing. */
  readonly dew: Dew | null;
  /** The cartridge the bead was laid from; null: nobody said anything about it. */
  readonly cartridge: Cartridge | null;
  /** What is believed about the heat, as entered (closing time not yet applied). */
  readonly heat: HeatState;
  readonly stages: readonly StageRun[];
}

export type OutlookState = 'running' | 'due' | 'confirmed' | 'held' | 'asleep';

export function lookAt(told: Cure, shop: Shop, readings: readonly AirReading[]): Outlook {
  const cure = withoutEarlierHeat(told, shop);
  const air = airAround(cure, shop, readings, 'cold');
  const history = historyOf(cure, shop, air);
  const forecasts = history === null ? [] : forecast(cure.card, history);
  const open = openLimitOf(cure, shop, readings);
  return {
    cure,
    history,
    air,
    milestones: forecasts.map((one) => ({ kind: one.kind, forecast: one, check: checkState(one, cure.checks) })),
    open,
    openPassed: passedLimit(cure, open),
    overMaximum: overMaximum(cure),
    dew: dewOf(cure, readings),
    cartridge: cartridgeOf(cure, shop.zone),
    heat: cure.heat.reduce(afterHeatEvent, NO_HEAT),
    stages: history === null ? [] : stageRuns(cure, history),
  };
}

const countedReadings = (cure: Cure, until: Instant | null): JointReading[] =>
  cure.readings.filter((reading) => reading.method !== 'bare' && (until === null || reading.at <= until));

function openLimitOf(cure: Cure, shop: Shop, readings: readonly AirReading[]): OpenLimit {
  if (cure.pasted === null) return { kind: 'none' };
  return openLimit(cure.card, { pasted: cure.pasted, until: cure.moved.at(-1) ?? cure.closed, air: airAround(cure, shop, readings, 'hot'), readings: countedReadings(cure, cure.closed) });
}

function airAround(cure: Cure, shop: Shop, readings: readonly AirReading[], side: AirSide): AirStep[] {
  const start = cure.pasted ?? cure.start ?? cure.openedAt;
  const last = readings.reduce((at, reading) => later(at, reading.at), later(start, cure.start ?? start));
  // What nobody has read yet stays as it is after the last period; for strength that must be the coldest that comes.
  const longClosing = side === 'cold' && shop.closedDays !== null ? nextLongClosing(shop, last) : null;
  const until = longClosing ?? nextClosing(shop, last) ?? last;
  // One day more at the front: a reading taken before the joint began still tells the day's air. And the closure it began in.
  const from = earlier(instant(start - 24 * 3_600_000), lastClosing(shop, start) ?? start);
  return airSteps({ start, periods: openPeriods(shop, from, until), readings, usual: shop.air, night: shop.night, closedDays: shop.closedDays }, side);
}

function historyOf(cure: Cure, shop: Shop, air: readonly AirStep[]): JointHistory | null {
  if (cure.start === null) return null;
  const last = cure.heat.reduce((at, event) => later(at, event.at), cure.start);
  const begin = cure.heat.reduce((at, event) => (event.at < at ? event.at : at), cure.start);
  const until = nextClosing(shop, last) ?? dayEnd(shop, last);
  const closings = openPeriods(shop, begin, until).map((period) => period.closes).filter((at) => at > begin && at <= until);
  const left = [...closings.filter((at) => !isAttended(cure, shop, at)), ...midnights(cure, shop, closings)];
  const heat = [...cure.heat, ...left.map((at): HeatEvent => ({ kind: 'closing', at }))];
  return { start: cure.start, heat: heat.sort((a, b) => a.at - b.at), air, depthMillimetres: cure.depthMillimetres };
}

/** Heat that somebody stays with, or saw after closing, counts until midnight; nobody is taken to stay all night. */
function midnights(cure: Cure, shop: Shop, closings: readonly Instant[]): Instant[] {
  const late = [...closings.filter((at) => isAttended(cure, shop, at)), ...cure.heat.map((event) => event.at).filter((at) => !isOpen(shop, at))];
  return [...new Set(late.map((at) => dayEnd(shop, at)))].filter((at) => !isOpen(shop, at));
}

/** Somebody said that they stay with the lamp on this day, past closing time. */
export const isAttended = (cure: Cure, shop: Shop, moment: Instant): boolean => attendantAt(cure, shop, moment) !== null;

/** Who said it last on that day; null: nobody. */
export const attendantAt = (cure: Cure, shop: Shop, moment: Instant): PersonId | null =>
  cure.attended.findLast(({ at }) => at <= moment && dayEnd(shop, at) === dayEnd(shop, moment))?.by ?? null;

function passedLimit(cure: Cure, open: OpenLimit): Instant | null {
  if (open.kind === 'none') return null;
  const lastTouch = cure.moved.at(-1) ?? cure.closed;
  return lastTouch !== null && lastTouch > open.at ? open.at : null;
}

/** The passed open limit that still waits for the foreman; before the panel is closed it is one from its time on. */
export function undecidedLimit({ cure, open, openPassed }: Outlook): Instant | null {
  const passed = openPassed ?? (cure.closed === null && open.kind !== 'none' ? open.at : null);
  if (passed === null || cure.releasedAt === null || cure.releasedAt < passed) return passed;
  const { releasedAt } = cure;
  return cure.moved.some((at) => at > releasedAt) ? passed : null;
}

/** Since when metal that is too close to the dew point waits for the foreman, or null. */
export const undecidedDew = ({ dew }: Outlook): Instant | null => dew?.heldSince ?? null;

/** Since when a cartridge that is out of date or was open too long waits for the foreman, or null. */
export const undecidedCartridge = ({ cartridge }: Outlook): Instant | null => cartridge?.heldSince ?? null;

/** What was wrong when the bead was laid, and waits for the foreman; null: nothing. */
export const heldBead = (outlook: Outlook): 'dew' | 'cartridge' | null => (undecidedDew(outlook) !== null ? 'dew' : undecidedCartridge(outlook) !== null ? 'cartridge' : null);

/** The highest setting: a lamp stands away from the panel, a pad lies on it. */
export const hottestSetting = (card: MaterialCard, heater: Heater): Celsius | null => (heater === 'lamp' ? card.maxLamp ?? card.maxPanel : hottestAllowed(card));

/** Hardens from the outside: how deep it is decides how long it takes. */
export const hardensByDepth = (card: MaterialCard): boolean => card.milestones.some((rule) => rule.laws.some((law) => law.law === 'depth-root'));

/** Nobody said how deep the bead is: no time until somebody does. */
export const depthMissing = ({ cure }: Outlook): boolean => cure.depthMillimetres === null && hardensByDepth(cure.card);

function overMaximum(cure: Cure): JointReading | null {
  const maximum = hottestAllowed(cure.card);
  if (maximum === null) return null;
  const over = countedReadings(cure, null).filter((reading) => reading.value > maximum).at(-1);
  return over === undefined || (cure.releasedAt !== null && cure.releasedAt >= over.at) ? null : over;
}

function stageRuns(cure: Cure, history: JointHistory): StageRun[] {
  const recipes = cure.card.milestones.flatMap((rule) => rule.laws.flatMap((law) => (law.law === 'recipe' ? [law.stages] : [])));
  const longest = recipes.reduce((one, other) => (other.length > one.length ? other : one), recipes[0] ?? []);
  return runRecipe(longest, lampStretches(history.heat), history.start);
}

/** What is believed about the heat at a moment, closing time applied. */
export const heatAt = (outlook: Outlook, now: Instant): HeatState =>
  outlook.history === null ? outlook.heat : outlook.history.heat.filter((event) => event.at <= now).reduce(afterHeatEvent, NO_HEAT);

/** A confirmed later strength includes the earlier ones: a bond with full strength has handling strength. */
export function isConfirmed(outlook: Outlook, kind: MilestoneKind): boolean {
  const index = outlook.milestones.findIndex((one) => one.kind === kind);
  return index >= 0 && outlook.milestones.slice(index).some((one) => one.check.phase === 'confirmed');
}

/** Why a milestone is stopped until a foreman decides. `earlier` means the milestone before it is not settled. */
export type Hold = 'smoke' | 'over-maximum' | 'open-limit' | 'dew' | 'cartridge' | 'two-answers' | 'soft-twice' | 'earlier';

/** Held by a person's answer, by two answers that differ, by too much heat, by an open limit that was passed, by damp metal, or by a bad cartridge. */
export function holdOf(outlook: Outlook, one: MilestoneOutlook): Hold | null {
  if (undecidedSmoke(outlook.cure) !== null) return 'smoke';
  if (isConfirmed(outlook, one.kind)) return null;
  if (outlook.overMaximum !== null) return 'over-maximum';
  if (outlook.cure.closed !== null && undecidedLimit(outlook) !== null) return 'open-limit';
  const bead = heldBead(outlook);
  if (bead !== null) return bead;
  if (one.check.phase === 'held') return 'soft-twice';
  if (one.check.conflict) return 'two-answers';
  return earlierUnsettled(outlook, one) ? 'earlier' : null;
}

/** A milestone that somebody called soft, and that nobody has confirmed since, stops what comes after it. */
function earlierUnsettled(outlook: Outlook, one: MilestoneOutlook): boolean {
  const waiting = waitingMilestones(outlook);
  const index = waiting.findIndex((other) => other.kind === one.kind);
  return waiting.slice(0, Math.max(0, index)).some(isUnsettled);
}

const isUnsettled = ({ check }: MilestoneOutlook): boolean => check.phase === 'held' || check.conflict || check.round > 1;

export function stateOf(outlook: Outlook, one: MilestoneOutlook, now: Instant): OutlookState {
  if (isConfirmed(outlook, one.kind)) return 'confirmed';
  if (holdOf(outlook, one) !== null) return 'held';
  if (one.check.dueAt !== null && now >= one.check.dueAt) return 'due';
  return one.check.round > 1 || milestoneCounts(one.forecast, now) ? 'running' : 'asleep';
}

export const shareOf = (one: MilestoneOutlook, now: Instant): number => shareOfWait(one.forecast, one.check, now);

/** Milestones that still wait, in the card's order. */
export const waitingMilestones = (outlook: Outlook): MilestoneOutlook[] => outlook.milestones.filter((one) => !isConfirmed(outlook, one.kind));

/** A cure is over when it was scrapped or everything on its card was confirmed. */
export function isOver(outlook: Outlook): boolean {
  return outlook.cure.scrapped || (outlook.history !== null && waitingMilestones(outlook).length === 0);
}

/** Milestones that may be asked about: up to the first that somebody called soft. */
export function askableMilestones(outlook: Outlook): MilestoneOutlook[] {
  const waiting = waitingMilestones(outlook);
  const unsettled = waiting.findIndex(isUnsettled);
  return unsettled === -1 ? waiting : waiting.slice(0, unsettled + 1);
}

/** The milestone that is asked about now: the last that is due, since it includes the earlier ones; else the next that has a time. */
export function currentMilestone(outlook: Outlook, now: Instant): MilestoneOutlook | null {
  const askable = askableMilestones(outlook);
  const unsettled = askable.find(isUnsettled);
  const due = askable.filter((one) => one.check.dueAt !== null && now >= one.check.dueAt).at(-1);
  return unsettled ?? due ?? askable.find((one) => one.check.dueAt !== null) ?? askable[0] ?? null;
}

/** Recipe cards time the lamp itself; on all others a lamp counts only once a reading shows what it does. */
export const needsReading = (cure: Cure): boolean =>
  cure.card.basis === 'panel-temperature' || cure.card.basis === 'dwell' || cure.card.basis === 'above-temperature';
