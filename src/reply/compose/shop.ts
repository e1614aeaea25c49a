import type { Instant } from '../../cure/units.js';
import type { Celsius } from '../../cure/units.js';
import type { EntryNo } from '../../repair/ids.js';
import type { Fact, FactRecord } from '../../repair/facts.js';
import { stateOf, type Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { markedExample, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, degrees, type Setting } from './words.js';

export interface AirEntered {
  readonly value: Celsius;
  readonly humidity: number | null;
  readonly at: Instant;
  /** Null when the same was noted already. */
  readonly entry: EntryNo;
  /** Running cures before and after, same order. */
  readonly changed: readonly { readonly before: Outlook; readonly after: Outlook }[];
}

const MOST_JOBS = 2;

/** The air, and which waits it moved. */
export function composeAir(entered: AirEntered, setting: Setting): Answer {
  const humidity = entered.humidity === null ? '' : `, ${entered.humidity} % humidity`;
  const moved = entered.changed.flatMap(({ before, after }) => movedLine(before, after, setting));
  const more = moved.length > MOST_JOBS ? [`and ${moved.length - MOST_JOBS} more: type who waits.`] : [];
  const rest = moved.length === 0 ? ['No running wait changes.'] : [...moved.slice(0, MOST_JOBS), ...more];
  return markedExample(answer('plain', [`Air **${degrees(entered.value, setting)}**${humidity} noted ${clock(entered.at, setting)}.`, ...rest], [button('Undo', `undo ${entered.entry}`)]), moved.length === 0 ? [] : entered.changed.map(({ after }) => after.cure.card));
}

function movedLine(before: Outlook, after: Outlook, setting: Setting): string[] {
  const index = after.milestones.findIndex((one) => one.check.phase !== 'confirmed');
  const one = after.milestones[index];
  const was = before.milestones[index];
  if (one === undefined || was === undefined) return [];
  const same = one.check.dueAt === was.check.dueAt && stateOf(after, one, setting.now) === stateOf(before, was, setting.now);
  const from = was.check.dueAt === null ? '' : ` (was ${clock(was.check.dueAt, setting)})`;
  return same ? [] : [`${title(after)} ${milestoneSentence(after, one, setting)}${from}.`];
}

/** An entry taken back: what it was, and what it moved. */
export function composeUndone(what: FactRecord | null, changed: AirEntered['changed'], setting: Setting): Answer {
  const job = what?.job == null ? '' : `${what.job} `;
  const words = what === null ? 'entry' : `${FACT_WORDS[what.fact.type]}${figureOf(what.fact, setting)} of ${clock(what.happenedAt, setting)}`;
  const moved = changed.flatMap(({ before, after }) => movedLine(before, after, setting)).map(capital);
  return markedExample(answer('plain', [`**${job}taken back:** ${words}. Both stay in the record.`, ...moved.slice(0, MOST_JOBS)]), moved.length === 0 ? [] : changed.map(({ after }) => after.cure.card));
}

function figureOf(fact: Fact, setting: Setting): string {
  if (fact.type === 'reading' || fact.type === 'air') return ` ${degrees(fact.value, setting)}`;
  return fact.type === 'lamp-set' ? ` ${degrees(fact.setting, setting)}` : '';
}

const FACT_WORDS: Readonly<Record<Fact['type'], string>> = {
  'cure-opened': 'start',
  pasted: 'paste',
  closed: 'closed',
  moved: 'moved',
  'lamp-set': 'lamp setting',
  'lamp-off': 'lamp off',
  'lamp-found-off': 'lamp found off',
  'lamp-on': 'lamp on',
  attended: 'somebody stays',
  reading: 'reading',
  checked: 'answer to the check',
  'put-off': 'later',
  released: 'decision',
  scrapped: 'scrapped',
  'reminder-raised': 'post',
  air: 'air reading',
  bell: 'bundle',
  undone: 'taking back',
};
