import { celsius, type Celsius, type Instant } from '../../cure/units.js';
import type { EntryCommand } from '../../repair/commands.js';
import type { Note } from '../../repair/decision.js';
import type { EntryNo, PersonId } from '../../repair/ids.js';
import { likelyDue } from '../../repair/expected.js';
import { currentMilestone, needsReading, waitingMilestones, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import type { Answer, Button } from '../answer.js';
import { CLOSE_WORDS, closeWord, openSentence } from './open.js';
import { aimed, exampleNote, heatWords, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, degrees, MILESTONE_WORDS, type Setting } from './words.js';

/** One entry that was stored (or was there already), and the cure before and after it. */
export interface Entered {
  readonly command: EntryCommand;
  readonly by: PersonId;
  readonly before: Outlook | null;
  readonly after: Outlook;
  readonly notes: readonly Note[];
  /** Null when nothing new was stored. */
  readonly entry: EntryNo | null;
}

/** Job first, state, one time, one thing to do: at most four short lines. */
export function composeEntry(entered: Entered, setting: Setting): Answer {
  const { after, notes } = entered;
  const over = notes.find((one) => one.note === 'over-maximum');
  if (over !== undefined) return tooHot(entered, over, setting);
  const first = `${title(after)} ${whatHappened(entered, setting)}`;
  const sentences = [first, forecastSentence(entered, setting), toDo(entered, setting), exampleNote(after.cure.card)];
  return answer('plain', sentences, buttonsFor(entered, setting));
}

function whatHappened({ command, by, after, notes }: Entered, setting: Setting): string {
  const note = notes[0];
  if (note?.note === 'already-confirmed') return `${MILESTONE_WORDS[note.milestone]} already answered by **${nameOf(setting.shop, note.by)}** ${clock(note.at, setting)}. Nothing changed.`;
  if (note?.note === 'already-so') return `${heatWords(after, setting)} already. Nothing changed.`;
  const at = 'when' in command ? clock(command.when.latest, setting) : clock(setting.now, setting);
  switch (command.kind) {
    case 'paste':
      return after.open.kind === 'too hot' ? `**do not start**, too hot for ${after.cure.card.name} (paste noted ${at}).` : `${after.cure.card.name} paste on ${clock(after.cure.pasted ?? command.when.latest, setting)}.`;
    case 'closed':
      return `closed ${at}.`;
    case 'cure':
      return `${after.cure.card.name} closed ${at}, ${heatWords(after, setting)}.`;
    case 'moved':
      return `moved ${at}: strength clock starts again.`;
    case 'lamp':
      return `lamp ${degrees(setAt(command.when.latest, after), setting)} since ${at}.`;
    case 'off':
      return command.since === 'unknown' ? `lamp found off ${at}: heat counts only to ${clock(after.heat.lastSign ?? setting.now, setting)}.` : `lamp off ${at}: air counts since.`;
    case 'on':
      return `on ${at}, thanks.`;
    case 'read':
      return readingSentence(command, note, after, setting);
    case 'check':
      return checkSentence(note, after, setting);
    case 'later':
      return `asked again in ${setting.shop.rhythm.putOff} min.`;
    case 'stay':
      return `${nameOf(setting.shop, by)} stays with the lamp past closing.`;
    case 'release':
      return `goes on, decided by ${nameOf(setting.shop, by)}.`;
    case 'scrap':
      return `${after.cure.card.name} scrapped ${at}. It stays in the record.`;
    case 'air':
    case 'undo':
      return 'noted.';
  }
}

/** The setting this entry noted, also where a later one stands already. */
function setAt(at: Instant, { cure, heat }: Outlook): Celsius {
  const set = cure.heat.findLast((event) => event.kind === 'lamp-set' && event.at === at);
  return set?.kind === 'lamp-set' ? set.setting : (heat.setting ?? celsius(0));
}

function readingSentence(command: Extract<EntryCommand, { kind: 'read' }>, note: Note | undefined, after: Outlook, setting: Setting): string {
  const read = after.cure.readings.findLast((one) => one.at === command.when.latest);
  const value = read === undefined ? '' : degrees(read.value, setting);
  const from = command.value.unit === 'F' && setting.shop.unit === 'C' ? ` (${command.value.value} °F)` : '';
  if (note?.note === 'bare-metal') return `reading ${value} on bare metal noted, **not counted**.`;
  if (note?.note === 'stored-heat') return `reading ${value} noted; lamp is off, so it does not count.`;
  return `reading ${value}${from}.`;
}

function checkSentence(note: Note | undefined, after: Outlook, setting: Setting): string {
  if (note?.note === 'two-answers') return `${MILESTONE_WORDS[note.milestone]}: two answers, ${nameOf(setting.shop, note.other)} said otherwise. **Held as soft.**`;
  if (note?.note === 'confirmed') {
    const said = after.milestones.find((one) => one.kind === note.milestone)?.check.answer;
    return `${MILESTONE_WORDS[note.milestone]} **confirmed** ${said == null ? '' : `${clock(said.at, setting)} by ${nameOf(setting.shop, said.by)}`}.`;
  }
  return 'soft noted.';
}

/** The next milestone, and what it was before if this entry moved it. */
function forecastSentence({ before, after, notes }: Entered, setting: Setting): string | null {
  if (after.cure.scrapped || notes[0]?.note === 'already-confirmed') return null;
  if (after.cure.closed === null) return openSentence(after, setting);
  const current = currentMilestone(after, setting.now);
  if (current === null) return 'Nothing more to wait for on this card.';
  const was = before?.milestones.find((one) => one.kind === current.kind)?.check.dueAt ?? null;
  const moved = was !== null && was !== current.check.dueAt ? ` (was ${clock(was, setting)})` : '';
  return `${capital(milestoneSentence(after, current, setting))}${moved}.`;
}

/** One thing to do. */
function toDo({ command, after, notes }: Entered, setting: Setting): string | null {
  const note = notes[0];
  if (after.openPassed !== null && after.cure.releasedAt === null && (command.kind === 'moved' || command.kind === 'closed' || command.kind === 'cure')) {
    return `**Open limit ${clock(after.openPassed, setting)} passed**: the foreman decides.`;
  }
  const unchecked = notes.find((one) => one.note === 'unchecked');
  if (unchecked !== undefined) return `${capital(MILESTONE_WORDS[unchecked.milestone])} is **not checked**: full heat on a soft joint bows the panel.`;
  if (note?.note === 'below-stage') return `The recipe asks for lamp ${degrees(note.asked, setting)}: below it nothing counts.`;
  if (note?.note === 'bare-metal') return 'Use matt tape or a contact probe.';
  if (command.kind === 'off' && note === undefined) return 'Lamp back? Tap On, then take a reading.';
  if (note?.note === 'stored-heat') return 'Lamp on again? Tap On, then read once more.';
  if (note?.note === 'two-answers') return 'The foreman settles it.';
  if (note?.note === 'confirmed') return afterConfirmed(after, setting);
  if (after.cure.closed !== null && after.heat.lamp === 'on' && after.heat.counted === null && needsReading(after.cure)) return lockIn(after, setting);
  if (command.kind === 'lamp' && needsReading(after.cure) && after.heat.counted !== null) return `Read again once it is warm: until then ${degrees(after.heat.counted, setting)} counts.`;
  if ((command.kind === 'lamp' || command.kind === 'cure') && endsAtClosing(after, setting)) return '**The shop closes before that**: heat counts to closing only. Who stays?';
  if ((command.kind === 'lamp' || command.kind === 'cure') && after.heat.lamp === 'on') return 'Never leave a lamp alone. Nothing wet with solvent near it.';
  return after.cure.closed === null ? `Gloves, eyes. ${CLOSE_WORDS[closeWord(after.cure.card)].tap}` : null;
}

/** What a reading would be worth: the likely time beside the safe one, never instead of it. */
function lockIn(after: Outlook, setting: Setting): string {
  const current = currentMilestone(after, setting.now);
  const likely = current === null ? null : likelyDue(after, current);
  return likely === null ? 'Take one reading: until then only the air counts.' : `Take one reading to lock in about ${clock(likely, setting)}: until then only the air counts.`;
}

/** A lamp that nobody watches after closing does not count: the wait would not end today. */
const endsAtClosing = (after: Outlook, { now }: Setting): boolean =>
  after.heat.lamp === 'on' && (currentMilestone(after, now)?.check.dueAt ?? null) === null && after.history?.heat.some((event) => event.kind === 'closing') === true;

function afterConfirmed(after: Outlook, setting: Setting): string | null {
  const next = after.stages.find((run) => run.began === null);
  if (next !== undefined && waitingMilestones(after).length > 0) return `Next: lamp **${degrees(next.stage.lamp, setting)}** for ${next.stage.minutes} min, if the repair method agrees.`;
  if (waitingMilestones(after).length === 0) return 'Lamp off. Data sheet and repair method decide what comes next.';
  return 'Clamps off one at a time, if the repair method agrees.';
}

function buttonsFor({ command, after, entry, notes }: Entered, setting: Setting): Button[] {
  const aim = aimed(after);
  const undo = entry === null ? [] : [button('Undo', `undo ${entry}`)];
  if (after.cure.scrapped) return undo;
  if (command.kind === 'paste') return [button('Closed', `closed ${aim}`), ...undo];
  if (command.kind === 'off' || notes[0]?.note === 'stored-heat') return [button('On', `on ${aim}`), ...undo];
  const next = after.stages.find((run) => run.began === null);
  if (notes[0]?.note === 'confirmed' && next !== undefined && waitingMilestones(after).length > 0) return [button('Turned up', `up ${aim}`), ...undo];
  if (endsAtClosing(after, setting) && (command.kind === 'lamp' || command.kind === 'cure')) return [button('I stay', `stay ${aim}`), ...undo];
  const current = currentMilestone(after, setting.now);
  const due = current?.check.dueAt;
  if (command.kind !== 'check' && current !== null && due != null && due <= setting.now) return [button('Hard', `check ${aim} ${current.kind} hard`), button('Soft', `check ${aim} ${current.kind} soft`), ...undo];
  return undo;
}

function tooHot({ after, entry }: Entered, note: Extract<Note, { note: 'over-maximum' }>, setting: Setting): Answer {
  const buttons = [button('Lamp off', `off ${aimed(after)}`), ...(entry === null ? [] : [button('Typing error', `undo ${entry}`)])];
  return answer('alarm', [`**${title(after)} TOO HOT ${degrees(note.value, setting)}**, limit ${degrees(note.maximum, setting)}.`, 'Lamp off or back now. The foreman is told; the cure is held.', exampleNote(after.cure.card)], buttons);
}
