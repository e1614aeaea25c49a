import type { Instant } from '../../cure/units.js';
import type { Celsius } from '../../cure/units.js';
import type { EntryNo } from '../../repair/ids.js';
import type { TypedTemperature } from '../../repair/commands.js';
import { sameCure } from '../../repair/cure-ref.js';
import type { Fact, FactRecord } from '../../repair/facts.js';
import type { TooCold } from '../../repair/too-cold.js';
import { stateOf, undecidedDew, type Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayFactWords } from '../catalogue/fact-words.js';
import { sayShop } from '../catalogue/shop.js';
import { leastMetalIn, tooClose } from './dew.js';
import { openSentence } from './open.js';
import { markedExample, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, degrees, tidy, type Setting } from './words.js';

export interface AirEntered {
  readonly value: Celsius;
  readonly typed: TypedTemperature;
  readonly humidity: number | null;
  readonly at: Instant;
  /** Null when the same was noted already. */
  readonly entry: EntryNo;
  /** Running cures before and after, same order. */
  readonly changed: readonly { readonly before: Outlook; readonly after: Outlook }[];
  /** Cards that would count nothing in this air. */
  readonly tooCold: readonly TooCold[];
}

const MOST_JOBS = 2;

/** The air, and which waits it moved. */
export function composeAir(entered: AirEntered, setting: Setting): Answer {
  const noted = { value: airAsTyped(entered, setting), at: clock(entered.at, setting) };
  const air = entered.humidity === null ? sayShop(setting, 'air-noted', noted) : sayShop(setting, 'air-noted-humidity', { ...noted, humidity: entered.humidity });
  const moved = entered.changed.flatMap(({ before, after }) => movedLine(before, after, setting));
  const more = moved.length > MOST_JOBS ? [sayShop(setting, 'more', { count: `${moved.length - MOST_JOBS}` })] : [];
  const rest = moved.length === 0 ? [coldSentence(entered, setting) ?? sayShop(setting, 'nothing-moves')] : [...moved.slice(0, MOST_JOBS), ...more];
  return markedExample(answer('plain', [air, leastMetalIn(entered, setting), ...rest], [button(sayButtons(setting, 'undo'), `undo ${entered.entry}`)]), moved.length === 0 ? [] : entered.changed.map(({ after }) => after.cure.card), setting);
}

/** Before anything is laid: what would count nothing today. */
function coldSentence({ value, tooCold }: AirEntered, setting: Setting): string | null {
  if (tooCold.length === 0) return null;
  const cards = tooCold.map(({ card, needs }) => sayShop(setting, 'card-needs', { card, needs: degrees(needs, setting) })).join(', ');
  return sayShop(setting, 'nothing-would-count', { cards, value: degrees(value, setting) });
}

/** What was typed in the other unit is shown in both. */
function airAsTyped({ value, typed }: AirEntered, setting: Setting): string {
  const said = degrees(value, setting);
  const foreign = typed.unit !== null && typed.unit !== setting.shop.unit && setting.unit === undefined;
  return foreign ? sayShop(setting, 'typed-is', { typed: typed.value, unit: typed.unit, value: said }) : said;
}

function movedLine(before: Outlook, after: Outlook, setting: Setting): string[] {
  if (undecidedDew(before) === null && undecidedDew(after) !== null) return [sayShop(setting, 'damp-held', { title: title(after), why: tooClose(after, setting) })];
  if (after.cure.closed === null) return openMoved(before, after, setting);
  const one = after.milestones.find((other) => other.check.phase !== 'confirmed');
  const was = before.milestones.find((other) => other.kind === one?.kind);
  if (one === undefined) return [];
  const same = was !== undefined && one.check.dueAt === was.check.dueAt && stateOf(after, one, setting.now) === stateOf(before, was, setting.now);
  if (same) return [];
  const forecast = milestoneSentence(after, one, setting);
  return [was?.check.dueAt == null ? `${title(after)} ${forecast}.` : sayShop(setting, 'forecast-was', { title: title(after), forecast, was: clock(was.check.dueAt, setting) })];
}

function openMoved(before: Outlook, after: Outlook, setting: Setting): string[] {
  if (before.open.kind !== 'limit' || (after.open.kind === 'limit' && after.open.at === before.open.at)) return [];
  return [sayShop(setting, 'open-was', { title: title(after), open: openSentence(after, setting), at: clock(before.open.at, setting) })];
}

/** An entry taken back: what it was, and what it moved. */
export function composeUndone(what: FactRecord | null, changed: AirEntered['changed'], setting: Setting): Answer {
  const said = what === null ? sayShop(setting, 'entry') : sayShop(setting, 'fact-of', { fact: factWords(what.fact, setting), at: clock(what.happenedAt, setting) });
  const taken = what?.job == null ? sayShop(setting, 'taken-back', { what: said }) : sayShop(setting, 'taken-back-from', { job: what.job, what: said });
  const moved = changed.flatMap(({ before, after }) => movedLine(before, after, setting)).map(capital);
  return markedExample(answer('plain', [taken, moveWithoutClosing(what, changed, setting), ...moved.slice(0, MOST_JOBS)]), moved.length === 0 ? [] : changed.map(({ after }) => after.cure.card), setting);
}

/** A panel that is open again was not moved either: what was entered about that stands in the record and counts for nothing. */
function moveWithoutClosing(what: FactRecord | null, changed: AirEntered['changed'], setting: Setting): string | null {
  if (what?.fact.type !== 'closed') return null;
  const { cure: closed } = what.fact;
  const lost = changed.flatMap(({ before: { cure: before }, after: { cure: after } }) => (before.job === what.job && sameCure(before.ref, closed) && after.closed === null ? before.moved : []));
  return lost.length === 0 ? null : sayShop(setting, 'moves-count-nothing', { times: lost.map((at) => clock(at, setting)).join(', ') });
}

/** What it was, and its figure. */
function factWords(fact: Fact, setting: Setting): string {
  const words = sayFactWords(setting, fact.type);
  if (fact.type === 'reading' || fact.type === 'air') return `${words} ${degrees(fact.value, setting)}`;
  if (fact.type === 'card-corrected') return sayShop(setting, 'fact-to-card', { fact: words, card: fact.card.name });
  if (fact.type === 'depth') return `${words} ${tidy(fact.millimetres, setting)} mm`;
  return fact.type === 'lamp-set' ? `${words} ${degrees(fact.setting, setting)}` : words;
}
