import type { Instant } from '../../cure/units.js';
import type { Celsius } from '../../cure/units.js';
import type { EntryNo } from '../../repair/ids.js';
import { sameCure } from '../../repair/cure-ref.js';
import type { Fact, FactRecord } from '../../repair/facts.js';
import { stateOf, undecidedDew, type Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { leastMetalIn, tooClose } from './dew.js';
import { openSentence } from './open.js';
import { markedExample, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, degrees, tidy, type Setting } from './words.js';

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
  return markedExample(answer('plain', [`Air **${degrees(entered.value, setting)}**${humidity} noted ${clock(entered.at, setting)}.`, leastMetalIn(entered, setting), ...rest], [button('Undo', `undo ${entered.entry}`)]), moved.length === 0 ? [] : entered.changed.map(({ after }) => after.cure.card), setting);
}

function movedLine(before: Outlook, after: Outlook, setting: Setting): string[] {
  if (undecidedDew(before) === null && undecidedDew(after) !== null) return [`${title(after)} **HOLD**: ${tooClose(after, setting)}. The foreman decides.`];
  if (after.cure.closed === null) return openMoved(before, after, setting);
  const one = after.milestones.find((other) => other.check.phase !== 'confirmed');
  const was = before.milestones.find((other) => other.kind === one?.kind);
  if (one === undefined) return [];
  const same = was !== undefined && one.check.dueAt === was.check.dueAt && stateOf(after, one, setting.now) === stateOf(before, was, setting.now);
  const from = was?.check.dueAt == null ? '' : ` (was ${clock(was.check.dueAt, setting)})`;
  return same ? [] : [`${title(after)} ${milestoneSentence(after, one, setting)}${from}.`];
}

function openMoved(before: Outlook, after: Outlook, setting: Setting): string[] {
  if (before.open.kind !== 'limit' || (after.open.kind === 'limit' && after.open.at === before.open.at)) return [];
  return [`${title(after)} ${openSentence(after, setting)} It was ${clock(before.open.at, setting)}.`];
}

/** An entry taken back: what it was, and what it moved. */
export function composeUndone(what: FactRecord | null, changed: AirEntered['changed'], setting: Setting): Answer {
  const job = what?.job == null ? '' : `${what.job} `;
  const words = what === null ? 'entry' : `${FACT_WORDS[what.fact.type]}${figureOf(what.fact, setting)} of ${clock(what.happenedAt, setting)}`;
  const moved = changed.flatMap(({ before, after }) => movedLine(before, after, setting)).map(capital);
  return markedExample(answer('plain', [`**${job}taken back:** ${words}. Both stay in the record.`, moveWithoutClosing(what, changed, setting), ...moved.slice(0, MOST_JOBS)]), moved.length === 0 ? [] : changed.map(({ after }) => after.cure.card), setting);
}

/** A panel that is open again was not moved either: what was entered about that stands in the record and counts for nothing. */
function moveWithoutClosing(what: FactRecord | null, changed: AirEntered['changed'], setting: Setting): string | null {
  if (what?.fact.type !== 'closed') return null;
  const { cure: closed } = what.fact;
  const lost = changed.flatMap(({ before: { cure: before }, after: { cure: after } }) => (before.job === what.job && sameCure(before.ref, closed) && after.closed === null ? before.moved : []));
  return lost.length === 0 ? null : `The move of ${lost.map((at) => clock(at, setting)).join(', ')} **counts for nothing** now: the panel stands as open. Closed before it after all? Enter when, and the move counts again.`;
}

function figureOf(fact: Fact, setting: Setting): string {
  if (fact.type === 'reading' || fact.type === 'air') return ` ${degrees(fact.value, setting)}`;
  if (fact.type === 'card-corrected') return ` to ${fact.card.name}`;
  if (fact.type === 'depth') return ` ${tidy(fact.millimetres)} mm`;
  return fact.type === 'lamp-set' ? ` ${degrees(fact.setting, setting)}` : '';
}

const FACT_WORDS: Readonly<Record<Fact['type'], string>> = {
  'cure-opened': 'start',
  pasted: 'paste',
  closed: 'closed',
  moved: 'moved',
  depth: 'bead depth',
  'build-up': 'build-up',
  'card-corrected': 'change of card',
  'procedure-begun': 'begin of the procedure',
  'step-done': 'step done',
  'step-entered': 'figures of a step',
  'step-tapped': 'tap',
  'step-signed': 'signature',
  'step-overridden': 'override',
  'job-held': 'hold',
  'job-released': 'release',
  'weld-begun': 'welding',
  cautioned: 'caution',
  handed: 'handing over',
  'moved-away': 'move to another job',
  'moved-here': 'move from another job',
  'handover-offered': 'handover',
  'handover-accepted': 'acceptance',
  busy: 'busy',
  adopted: 'new person',
  'adoption-asked': 'question about a stranger',
  'adoption-refused': 'refusal of a stranger',
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
