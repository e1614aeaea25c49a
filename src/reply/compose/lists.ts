import { minutesBetween } from '../../cure/units.js';
import type { BellTime } from '../../repair/shop-hours.js';
import type { MaterialCard } from '../../cure/card.js';
import { standsStill } from '../../repair/job-hold.js';
import type { Job } from '../../repair/job.js';
import { depthMissing, holdOf, undecidedDew, type Hold } from '../../repair/outlook.js';
import { undecidedSmoke } from '../../repair/smoke.js';
import type { Waiting } from '../../repair/waiting.js';
import type { PersonId } from '../../repair/ids.js';
import { nameOf } from '../../repair/people.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { heatWords, holdWords, markedExample, noDepth, title } from './state.js';
import { heldShort, overriddenShort } from './standing.js';
import { answer, clock, MILESTONE_WORDS, percent, type Setting } from './words.js';

const MOST_CARS = 12;
/** A bundle later than this says so. */
const IN_TIME = 1.5;

/** Every car that waits on a cure, worst first: what for, due when, who, lamp or air. */
export function composeWaiting(list: readonly Waiting[], setting: Setting, strangers: readonly PersonId[] = [], jobs: readonly Job[] = []): Answer {
  const asking = strangersLine(strangers, setting);
  const still = heldWithoutCure(jobs, list, setting);
  if (list.length === 0) return answer('plain', [...still, still.length > 0 ? null : '**No car waits on a cure.**', asking]);
  const more = list.length > MOST_CARS ? `and ${list.length - MOST_CARS} more` : null;
  return markedExample(answer('plain', [...still, ...list.slice(0, MOST_CARS).map((one) => waitingLine(one, setting, jobs)), more, asking]), cardsOf(list), setting);
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
function strangersLine(strangers: readonly PersonId[], { shop }: Setting): string | null {
  if (strangers.length === 0) return null;
  const named = strangers.slice(0, MOST_STRANGERS).map((person) => `**${nameOf(shop, person)}** (\`adopt ${person}\` or \`refuse ${person}\`)`);
  const more = strangers.length > MOST_STRANGERS ? ` and ${strangers.length - MOST_STRANGERS} more` : '';
  return `Wants to enter things, for the foreman: ${named.join(', ')}${more}.`;
}

/** `7203 check now, handling strength due 12:43, Tomek, lamp A 30 °C`. */
export function waitingLine(one: Waiting, setting: Setting, jobs: readonly Job[] = []): string {
  const who = nameOf(setting.shop, one.outlook.cure.owner);
  const heat = isFireWatch(one.outlook.cure.card) ? '' : `, ${heatWords(one.outlook, setting)}`;
  const job = jobs.find(({ no }) => no === one.outlook.cure.job);
  const [held, overridden] = job === undefined ? [null, null] : [heldShort(job, setting), overriddenShort(job, setting)];
  return `**${title(one.outlook)}** ${held === null ? '' : `${held}; `}${waitingWords(one, setting, held !== null)}, ${who}${heat}${overridden === null ? '' : `; ${overridden}`}`;
}

/** `saidHeld`: that the whole job is held was said already. */
export function waitingWords(one: Waiting, setting: Setting, saidHeld = false): string {
  const what = one.waitsFor === 'open-limit' ? 'close the panel' : one.waitsFor === 'decision' ? 'decision' : MILESTONE_WORDS[one.waitsFor];
  const due = one.dueAt === null ? null : clock(one.dueAt, setting);
  if (one.waitsFor === 'fire-watch' && due === null) return 'hot work goes on, fire watch to follow';
  if (one.waitsFor === 'open-limit') return `${one.dueAt !== null && one.dueAt <= setting.now ? `open limit passed ${due ?? ''}` : `${what} by ${due ?? '?'}`}${dampHold(one, setting)}`;
  switch (one.state) {
    case 'held':
      if (ownHold(one) === null && standsStill(one.outlook.cure.jobHolds)) return `${saidHeld ? '' : 'HELD with the whole job, '}${what}${due === null ? '' : ` ${due}`}`;
      return `HELD, ${whyHeld(one, setting)}, foreman decides${due === null ? '' : ` (since ${due})`}`;
    case 'due':
      return `check now, ${what} due ${due ?? ''}`;
    case 'running':
      return due === null ? `${what}, no time yet, ${percent(one.share)}` : `${what} ${due}`;
    case 'asleep':
      return depthMissing(one.outlook) && one.milestone?.forecast.progress.law === 'depth-root' ? `${what}, ${noDepth(setting)}` : `asleep, ${what}, ${percent(one.share)}`;
    case 'confirmed':
      return 'confirmed';
  }
}

/** A panel that is still open can be closed in time and be held all the same. */
const dampHold = ({ outlook }: Waiting, setting: Setting): string => (undecidedDew(outlook) === null ? '' : `, HELD, ${holdWords('dew', setting)}`);

/** Why this cure is held, whatever becomes of its job; null: it is not. */
function ownHold({ outlook, milestone }: Waiting): Hold | null {
  if (undecidedSmoke(outlook.cure) !== null) return 'smoke';
  if (outlook.overMaximum !== null) return 'over-maximum';
  return milestone === null ? null : holdOf(outlook, milestone);
}

const whyHeld = (one: Waiting, setting: Setting): string => holdWords(ownHold(one) ?? 'open-limit', setting);

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
  const counted = `${checksDue(first)}, ${asleep.length} asleep`;
  const head = bell === 'opening' ? `**Opening.** ${counted}, ${running.length} running.` : `**Closing.** ${counted}, ${outside.length} due before opening.`;
  const shown = bell === 'opening' ? [...first, ...asleep, ...running] : [...first, ...outside, ...asleep, ...others];
  const hint = bell === 'opening' ? 'Read the shop air first: until then the night setting counts.' : 'No lamp runs alone: switched off?';
  const late = minutesBetween(at, setting.now) > IN_TIME ? `Meant for ${clock(at, setting)}: **I was down** then.` : null;
  const more = shown.length > MOST_CARS ? `and ${shown.length - MOST_CARS} more: type who waits` : null;
  const named = shown.slice(0, MOST_CARS);
  return { named, answer: markedExample(answer('plain', [head, late, ...still, ...named.map((one) => waitingLine(one, setting, jobs)), more, asking, list.length === 0 ? null : hint]), cardsOf(list), setting) };
}

/** A hold is for the foreman, and a passed open limit is one: neither is a check that is due. */
function checksDue(first: readonly Waiting[]): string {
  const held = first.filter((one) => one.state === 'held' || one.waitsFor === 'open-limit').length;
  return `${count(first.length - held, 'check')} due${held === 0 ? '' : `, ${held} held`}`;
}

const cardsOf = (list: readonly Waiting[]): MaterialCard[] => list.map((one) => one.outlook.cure.card);

const count = (many: number, what: string): string => `${many} ${what}${many === 1 ? '' : 's'}`;
