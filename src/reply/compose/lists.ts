import { minutesBetween } from '../../cure/units.js';
import type { BellTime } from '../../repair/shop-hours.js';
import type { MaterialCard } from '../../cure/card.js';
import { depthMissing, holdOf, undecidedDew } from '../../repair/outlook.js';
import { undecidedSmoke } from '../../repair/smoke.js';
import type { Waiting } from '../../repair/waiting.js';
import { nameOf } from '../../repair/people.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { heatWords, HOLD_WORDS, markedExample, NO_DEPTH, title } from './state.js';
import { answer, clock, MILESTONE_WORDS, percent, type Setting } from './words.js';

const MOST_CARS = 12;
/** A bundle later than this says so. */
const IN_TIME = 1.5;

/** Every car that waits on a cure, worst first: what for, due when, who, lamp or air. */
export function composeWaiting(list: readonly Waiting[], setting: Setting): Answer {
  if (list.length === 0) return answer('plain', ['**No car waits on a cure.**']);
  const more = list.length > MOST_CARS ? `and ${list.length - MOST_CARS} more` : null;
  return markedExample(answer('plain', [...list.slice(0, MOST_CARS).map((one) => waitingLine(one, setting)), more]), cardsOf(list));
}

/** `7203 check now, handling strength due 12:43, Tomek, lamp A 30 °C`. */
export function waitingLine(one: Waiting, setting: Setting): string {
  const who = nameOf(setting.shop, one.outlook.cure.owner);
  const heat = isFireWatch(one.outlook.cure.card) ? '' : `, ${heatWords(one.outlook, setting)}`;
  return `**${title(one.outlook)}** ${waitingWords(one, setting)}, ${who}${heat}`;
}

export function waitingWords(one: Waiting, setting: Setting): string {
  const what = one.waitsFor === 'open-limit' ? 'close the panel' : one.waitsFor === 'decision' ? 'decision' : MILESTONE_WORDS[one.waitsFor];
  const due = one.dueAt === null ? null : clock(one.dueAt, setting);
  if (one.waitsFor === 'fire-watch' && due === null) return 'hot work goes on, fire watch to follow';
  if (one.waitsFor === 'open-limit') return `${one.dueAt !== null && one.dueAt <= setting.now ? `open limit passed ${due ?? ''}` : `${what} by ${due ?? '?'}`}${dampHold(one)}`;
  switch (one.state) {
    case 'held':
      return `HELD, ${holdWords(one)}, foreman decides${due === null ? '' : ` (since ${due})`}`;
    case 'due':
      return `check now, ${what} due ${due ?? ''}`;
    case 'running':
      return due === null ? `${what}, no time yet, ${percent(one.share)}` : `${what} ${due}`;
    case 'asleep':
      return depthMissing(one.outlook) && one.milestone?.forecast.progress.law === 'depth-root' ? `${what}, ${NO_DEPTH}` : `asleep, ${what}, ${percent(one.share)}`;
    case 'confirmed':
      return 'confirmed';
  }
}

/** A panel that is still open can be closed in time and be held all the same. */
const dampHold = ({ outlook }: Waiting): string => (undecidedDew(outlook) === null ? '' : `, HELD, ${HOLD_WORDS.dew}`);

const holdWords = ({ outlook, milestone }: Waiting): string => HOLD_WORDS[undecidedSmoke(outlook.cure) !== null ? 'smoke' : (milestone === null ? null : holdOf(outlook, milestone)) ?? 'over-maximum'];

/** A bundle and the waits it names: only these count as said. */
export interface Bundle {
  readonly answer: Answer;
  readonly named: readonly Waiting[];
}

/** The bundle at opening or closing time: what is due, what sleeps, what will be due outside working hours. */
export function composeBundle({ bell, at }: BellTime, list: readonly Waiting[], nextOpening: number | null, setting: Setting): Bundle | null {
  const first = list.filter((one) => one.state === 'due' || one.state === 'held');
  const asleep = list.filter((one) => one.state === 'asleep');
  const running = list.filter((one) => one.state === 'running');
  const outside = running.filter((one) => one.dueAt !== null && nextOpening !== null && one.dueAt < nextOpening);
  const others = running.filter((one) => !outside.includes(one));
  if (list.length === 0) return null;
  const counted = `${checksDue(first)}, ${asleep.length} asleep`;
  const head = bell === 'opening' ? `**Opening.** ${counted}, ${running.length} running.` : `**Closing.** ${counted}, ${outside.length} due before opening.`;
  const shown = bell === 'opening' ? [...first, ...asleep, ...running] : [...first, ...outside, ...asleep, ...others];
  const hint = bell === 'opening' ? 'Read the shop air first: until then the night setting counts.' : 'No lamp runs alone: switched off?';
  const late = minutesBetween(at, setting.now) > IN_TIME ? `Meant for ${clock(at, setting)}: **I was down** then.` : null;
  const more = shown.length > MOST_CARS ? `and ${shown.length - MOST_CARS} more: type who waits` : null;
  const named = shown.slice(0, MOST_CARS);
  return { named, answer: markedExample(answer('plain', [head, late, ...named.map((one) => waitingLine(one, setting)), more, hint]), cardsOf(list)) };
}

/** A hold is for the foreman, and a passed open limit is one: neither is a check that is due. */
function checksDue(first: readonly Waiting[]): string {
  const held = first.filter((one) => one.state === 'held' || one.waitsFor === 'open-limit').length;
  return `${count(first.length - held, 'check')} due${held === 0 ? '' : `, ${held} held`}`;
}

const cardsOf = (list: readonly Waiting[]): MaterialCard[] => list.map((one) => one.outlook.cure.card);

const count = (many: number, what: string): string => `${many} ${what}${many === 1 ? '' : 's'}`;
