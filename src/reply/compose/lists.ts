import { minutesBetween, type Instant } from '../../cure/units.js';
import { isOpen, nextClosing, type BellTime } from '../../repair/shop-hours.js';
import type { MaterialCard } from '../../cure/card.js';
import { standsStill } from '../../repair/job-hold.js';
import type { Job } from '../../repair/job.js';
import { depthMissing, heldBead, holdOf, type Hold } from '../../repair/outlook.js';
import { undecidedSmoke } from '../../repair/smoke.js';
import type { Waiting } from '../../repair/waiting.js';
import type { PersonId } from '../../repair/ids.js';
import { nameOf } from '../../repair/people.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { sayLists } from '../catalogue/lists.js';
import { heatAndStays, holdWords, lampsAlone, markedExample, noDepth, staysWords, title } from './state.js';
import { heldShort, overriddenShort } from './standing.js';
import { answer, clock, lasting, milestoneWord, percent, type Setting } from './words.js';

const MOST_CARS = 12;
/** A bundle later than this says so. */
const IN_TIME = 1.5;

/** Every car that waits on a cure, worst first: what for, due when, who, lamp or air. */
export function composeWaiting(list: readonly Waiting[], setting: Setting, strangers: readonly PersonId[] = [], jobs: readonly Job[] = []): Answer {
  const asking = strangersLine(strangers, setting);
  const still = heldWithoutCure(jobs, list, setting);
  if (list.length === 0) return answer('plain', [...still, still.length > 0 ? null : sayLists(setting, 'no-car-waits'), asking]);
  const more = list.length > MOST_CARS ? sayLists(setting, 'more', { more: `${list.length - MOST_CARS}` }) : null;
  return markedExample(answer('plain', [...still, ...list.slice(0, MOST_CARS).map((one) => waitingLine(one, setting, jobs)), more, endsToday(list, setting), asking]), cardsOf(list), setting);
}

/** The evening is free: all that runs ends before the doors close. */
function endsToday(list: readonly Waiting[], setting: Setting): string | null {
  const closes = isOpen(setting.shop, setting.now) ? nextClosing(setting.shop, setting.now) : null;
  const ends = closes !== null && list.every(({ state, dueAt }) => state === 'running' && dueAt !== null && dueAt <= closes);
  return ends ? sayLists(setting, 'nothing-after', { closes: clock(closes, setting) }) : null;
}

/** Jobs that stand still and wait on no cure. */
const heldWithoutCure = (jobs: readonly Job[], list: readonly Waiting[], setting: Setting): string[] =>
  jobs.filter(({ no }) => !list.some(({ outlook }) => outlook.cure.job === no)).flatMap((job) => {
    const held = heldShort(job, setting);
    const overridden = overriddenShort(job, setting);
    return held === null ? [] : [`**${job.no}** ${held}${overridden === null ? '' : `; ${overridden}`}`];
  });

const MOST_STRANGERS = 3;

/** Who wanted to enter something and waits for the foreman's word; null: nobody. */
function strangersLine(strangers: readonly PersonId[], setting: Setting): string | null {
  if (strangers.length === 0) return null;
  const people = strangers.slice(0, MOST_STRANGERS).map((person) => sayLists(setting, 'stranger', { name: nameOf(setting.shop, person), id: person })).join(', ');
  return strangers.length > MOST_STRANGERS ? sayLists(setting, 'strangers-more', { people, more: `${strangers.length - MOST_STRANGERS}` }) : sayLists(setting, 'strangers', { people });
}

/** `7203 check now, handling strength due 12:43, Tomek, lamp A 30 °C`. */
export function waitingLine(one: Waiting, setting: Setting, jobs: readonly Job[] = []): string {
  const who = nameOf(setting.shop, one.outlook.cure.owner);
  const heat = isFireWatch(one.outlook.cure.card) ? staysWords(one.outlook, setting) : `, ${heatAndStays(one.outlook, setting)}`;
  const job = jobs.find(({ no }) => no === one.outlook.cure.job);
  const [held, overridden] = job === undefined ? [null, null] : [heldShort(job, setting), overriddenShort(job, setting, one.outlook.cure.ref)];
  return `**${title(one.outlook)}** ${held === null ? '' : `${held}; `}${waitingWords(one, setting, held !== null)}, ${who}${heat}${overridden === null ? '' : `; ${overridden}`}`;
}

/** `saidHeld`: that the whole job is held was said already. */
export function waitingWords(one: Waiting, setting: Setting, saidHeld = false): string {
  if (one.waitsFor === 'open-limit') return openWords(one, setting);
  if (one.waitsFor === 'fire-watch' && one.dueAt === null) return sayLists(setting, 'hot-work-goes-on');
  const what = one.waitsFor === 'decision' ? sayLists(setting, 'decision') : milestoneWord(one.waitsFor, setting);
  const due = one.dueAt === null ? null : clock(one.dueAt, setting);
  switch (one.state) {
    case 'held':
      return heldWords(one, due === null ? what : `${what} ${due}`, setting, saidHeld);
    case 'due':
      return checkWords(what, one.dueAt, setting);
    case 'running':
      return due === null ? sayLists(setting, 'no-time-yet', { what, share: percent(one.share, setting) }) : `${what} ${due}`;
    case 'asleep':
      return depthMissing(one.outlook) && one.milestone?.forecast.progress.law === 'depth-root' ? `${what}, ${noDepth(setting)}` : sayLists(setting, 'asleep', { what, share: percent(one.share, setting) });
    case 'confirmed':
      return sayLists(setting, 'confirmed');
  }
}

/** How long a check has waited shows which car to go to first. */
function checkWords(what: string, dueAt: Instant | null, setting: Setting): string {
  const at = dueAt === null ? '' : clock(dueAt, setting);
  return dueAt === null || minutesBetween(dueAt, setting.now) < 1 ? sayLists(setting, 'check-now', { what, at }) : sayLists(setting, 'check-overdue', { what, at, age: lasting(dueAt, setting.now, setting) });
}

/** A panel that is still open can be closed in time and be held all the same. */
function openWords({ dueAt, outlook }: Waiting, setting: Setting): string {
  const at = dueAt === null ? '?' : clock(dueAt, setting);
  const words = sayLists(setting, dueAt !== null && dueAt <= setting.now ? 'limit-passed' : 'close-by', { at });
  const bead = heldBead(outlook);
  return bead === null ? words : sayLists(setting, 'and-held', { words, reason: holdWords(bead, setting) });
}

function heldWords(one: Waiting, what: string, setting: Setting, saidHeld: boolean): string {
  const hold = ownHold(one);
  if (hold === null && standsStill(one.outlook.cure.jobHolds)) return saidHeld ? what : sayLists(setting, 'held-with-job', { what });
  const reason = holdWords(hold ?? 'open-limit', setting);
  return one.dueAt === null ? sayLists(setting, 'held', { reason }) : sayLists(setting, 'held-since', { reason, at: clock(one.dueAt, setting) });
}

/** Why this cure is held, whatever becomes of its job; null: it is not. */
function ownHold({ outlook, milestone }: Waiting): Hold | null {
  if (undecidedSmoke(outlook.cure) !== null) return 'smoke';
  if (outlook.overMaximum !== null) return 'over-maximum';
  return milestone === null ? null : holdOf(outlook, milestone);
}

/** A bundle and the waits it names: only these count as said. */
export interface Bundle {
  readonly answer: Answer;
  readonly named: readonly Waiting[];
}

/** The bundle at opening or closing time: what is due, what sleeps, what will be due outside working hours. */
export function composeBundle({ bell, at }: BellTime, list: readonly Waiting[], nextOpening: number | null, setting: Setting, strangers: readonly PersonId[] = [], jobs: readonly Job[] = []): Bundle | null {
  const first = list.filter((one) => one.state === 'due' || one.state === 'held');
  const asleep = list.filter((one) => one.state === 'asleep');
  const running = list.filter((one) => one.state === 'running');
  const outside = running.filter((one) => one.dueAt !== null && nextOpening !== null && one.dueAt < nextOpening);
  const others = running.filter((one) => !outside.includes(one));
  const asking = bell === 'opening' ? strangersLine(strangers, setting) : null;
  const still = heldWithoutCure(jobs, list, setting);
  if (list.length === 0 && asking === null && still.length === 0) return null;
  const held = first.filter(isHeld).length;
  const head = sayLists(setting, held === 0 ? bell : `${bell}-held`, { checks: first.length - held, held, asleep: asleep.length, running: running.length, outside: outside.length });
  const shown = bell === 'opening' ? [...first, ...asleep, ...running] : [...first, ...outside, ...asleep, ...others];
  const hint = bell === 'opening' ? sayLists(setting, 'read-the-air') : lampsAlone(list.map(({ outlook }) => outlook), setting, sayLists(setting, 'no-lamp-alone'));
  const late = minutesBetween(at, setting.now) > IN_TIME ? sayLists(setting, 'was-down', { at: clock(at, setting) }) : null;
  const more = shown.length > MOST_CARS ? sayLists(setting, 'more-type', { more: `${shown.length - MOST_CARS}` }) : null;
  const named = shown.slice(0, MOST_CARS);
  return { named, answer: markedExample(answer('plain', [head, late, ...still, ...named.map((one) => waitingLine(one, setting, jobs)), more, asking, list.length === 0 ? null : hint]), cardsOf(list), setting) };
}

/** A hold is for the foreman, and a passed open limit is one: neither is a check that is due. */
const isHeld = (one: Waiting): boolean => one.state === 'held' || one.waitsFor === 'open-limit';

const cardsOf = (list: readonly Waiting[]): MaterialCard[] => list.map((one) => one.outlook.cure.card);
