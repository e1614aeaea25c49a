import { celsius, minutesBetween } from '../../cure/units.js';
import type { CureCommand, JobCommand } from '../../repair/commands.js';
import { sameCure } from '../../repair/cure-ref.js';
import type { Note } from '../../repair/decision.js';
import { cautionFor } from '../../repair/cautions.js';
import { inCelsius } from '../../repair/decide-lamp.js';
import type { EntryNo, PersonId } from '../../repair/ids.js';
import { currentMilestone, depthMissing, undecidedDew, waitingMilestones, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer, Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayEntry } from '../catalogue/entry.js';
import { anotherCartridge, cartridgeHeld } from './cartridge.js';
import { cautionLine } from './cautions.js';
import { depthButtons, depthQuestion } from './depth.js';
import { leastMetal, marginWords } from './dew.js';
import { whatHappened } from './entry-happened.js';
import { endsAtClosing, toDo } from './entry-to-do.js';
import { composeWatchEntry } from './fire-watch.js';
import { openSentence } from './open.js';
import { aimed, exampleNote, milestoneSentence, offButton, title } from './state.js';
import { answer, button, capital, clock, degrees, type Setting } from './words.js';

/** One entry that was stored (or was there already), and the cure before and after it. */
export interface Entered {
  /** `enter`: what stands on the cartridge that this cure's bead was laid from. */
  readonly command: CureCommand | Extract<JobCommand, { readonly kind: 'enter' }>;
  readonly by: PersonId;
  readonly before: Outlook | null;
  readonly after: Outlook;
  readonly notes: readonly Note[];
  /** Null when nothing new was stored. */
  readonly entry: EntryNo | null;
}

/** Buttons for so many lamps; the rest are typed. */
const MOST_LAMPS = 3;

/** Job first, state, one time, one thing to do: at most four short lines, six with what has to be said besides. */
export function composeEntry(said: Entered, setting: Setting): Answer {
  const changed = said.notes.flatMap((one) => (one.note === 'card-changed' ? [one.before] : []))[0];
  const entered = changed === undefined ? said : { ...said, before: changed };
  const { after, notes } = entered;
  if (isFireWatch(after.cure.card)) return composeWatchEntry(entered, setting);
  const over = notes.find((one) => one.note === 'over-maximum');
  if (over !== undefined) return tooHot(entered, over, setting);
  const first = `${title(after)} ${whatHappened(entered, setting)}${usedOfLimit(entered, setting)}${airAlong(entered, setting)}`;
  const sentences = [cartridgeHeld(after, setting), first, anotherCartridge(after, setting), forecastSentence(entered, setting), ...doing(entered, setting), dewSentence(entered, setting), asksDepth(entered) ? depthQuestion(after, setting) : null, exampleNote(after.cure.card, setting)];
  return answer(tooMuchHeat(notes) ? 'alarm' : 'plain', sentences, buttonsFor(entered, setting));
}

/** How much of its open time a panel took that was closed in time. */
function usedOfLimit({ command, after: { cure, open, openPassed } }: Entered, setting: Setting): string {
  if (command.kind !== 'closed' || cure.pasted === null || cure.closed === null || open.kind !== 'limit' || openPassed !== null) return '';
  return ` ${sayEntry(setting, 'open-used', { used: `${Math.ceil(minutesBetween(cure.pasted, cure.closed))}`, limit: `${open.minutes}` })}`;
}

/** The air that was typed along with a start; where the first sentence names it already, not once more. */
function airAlong({ command }: Entered, setting: Setting): string {
  if (command.kind !== 'paste' && command.kind !== 'closed') return '';
  return command.air === undefined ? '' : ` ${sayEntry(setting, 'air-along', { air: degrees(inCelsius(command.air.value, setting), setting) })}`;
}

/** What to do, and the caution for it; the hands that lay the paste get both in one line. */
function doing(entered: Entered, setting: Setting): (string | null)[] {
  const act = toDo(entered, setting);
  const caution = cautionFor(entered, setting.shop);
  const said = caution === null ? null : cautionLine(caution, setting);
  return caution === 'paste' && said !== null && act !== null ? [`${said} ${act}`] : [act, said];
}

/** How warm the metal has to be before the paste goes on; how near the dew point it was read. */
function dewSentence({ command, after }: Entered, setting: Setting): string | null {
  if (after.dew === null || undecidedDew(after) !== null) return null;
  if (command.kind === 'paste') return leastMetal(after.dew, setting);
  const margin = marginWords(after, setting);
  return command.kind === 'read' && after.cure.closed === null && after.dew.metal?.at === command.when.latest && margin !== null ? sayEntry(setting, 'metal-margin', { margin }) : null;
}

const tooMuchHeat = (notes: readonly Note[]): boolean => notes.some((one) => one.note === 'lamp-over-maximum');

const asksDepth = ({ command: { kind } }: Entered): boolean => kind === 'paste' || kind === 'closed' || kind === 'cure' || kind === 'wrong-card';

/** The next milestone, and what it was before if this entry moved it. */
function forecastSentence(entered: Entered, setting: Setting): string | null {
  const { before, after, notes } = entered;
  if (after.cure.scrapped || notes[0]?.note === 'already-confirmed') return null;
  if (after.cure.closed === null) return `${openSentence(after, setting)}${openMoved(before, after, setting)}`;
  const current = saidFor(entered, setting);
  if (asksDepth(entered) && current !== null && hasNoDepth(after, current)) return null;
  if (current === null) return sayEntry(setting, 'nothing-waits');
  const was = before?.milestones.find((one) => one.kind === current.kind)?.check.dueAt ?? null;
  const forecast = capital(milestoneSentence(after, current, setting));
  return was !== null && was !== current.check.dueAt ? sayEntry(setting, 'forecast-was', { forecast, was: clock(was, setting) }) : `${forecast}.`;
}

/** The question for the depth says already that there is no time. */
const hasNoDepth = (after: Outlook, { forecast }: MilestoneOutlook): boolean => depthMissing(after) && forecast.progress.law === 'depth-root';

/** Another material has another open limit. */
function openMoved(before: Outlook | null, after: Outlook, setting: Setting): string {
  if (before === null || before.open.kind !== 'limit' || sameCure(before.cure.ref, after.cure.ref)) return '';
  return ` ${sayEntry(setting, 'open-was-on', { card: before.cure.card.name, at: clock(before.open.at, setting) })}`;
}

/** The milestone to speak of: for a depth the one that depends on it. */
function saidFor({ command, after }: Entered, { now }: Setting): MilestoneOutlook | null {
  const byDepth = command.kind === 'depth' ? after.milestones.find((one) => one.forecast.laws.some((law) => law.law === 'depth-root')) : undefined;
  return byDepth ?? currentMilestone(after, now);
}

function buttonsFor({ command, after, entry, notes }: Entered, setting: Setting): Button[] {
  const aim = aimed(after);
  const undo = entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)];
  if (after.cure.scrapped) return undo;
  const lamps = notes.flatMap((one) => (one.note === 'lamp-wanted' ? one.choices.map(({ lamp, line }) => button(`${lamp} ${degrees(one.setting ?? celsius(0), setting)}`, line)) : []));
  if (lamps.length > 0) return [...lamps.slice(0, MOST_LAMPS), ...undo];
  const depths = depthButtons(after, setting);
  if (command.kind === 'paste') return [button(sayButtons(setting, 'closed'), `closed ${aim}`), ...(depths.length > 0 ? depths.slice(0, 2) : undo)];
  if (command.kind === 'wrong-card' && tooMuchHeat(notes)) return [offButton(after, setting), ...undo];
  if (command.kind === 'wrong-card' && depths.length > 0) return [...depths.slice(0, 2), ...undo];
  if (depths.length > 0 && (command.kind === 'closed' || command.kind === 'cure')) return depths;
  if (command.kind === 'off' && command.part === true) return [button(sayButtons(setting, 'all-covered'), `on ${aim}`), ...undo];
  if (command.kind === 'off' || notes[0]?.note === 'stored-heat') return [button(sayButtons(setting, 'on'), `on ${aim}`), ...undo];
  const next = after.stages.find((run) => run.began === null);
  if (notes[0]?.note === 'confirmed' && next !== undefined && waitingMilestones(after).length > 0) return [button(sayButtons(setting, 'turned-up'), `up ${aim}`), ...undo];
  const other = notes.flatMap((one) => (one.note === 'other-recipe' ? [button(sayButtons(setting, 'is-card', { card: one.card }), one.line)] : []));
  if (endsAtClosing(after, setting) && !notes.some((one) => one.note === 'pad-no-recipe') && (command.kind === 'lamp' || command.kind === 'cure')) return [button(sayButtons(setting, 'i-stay'), `stay ${aim}`), ...other, ...undo];
  if (other.length > 0) return [...other, ...undo];
  const current = currentMilestone(after, setting.now);
  const due = current?.check.dueAt;
  if ((command.kind !== 'check' || notes[0]?.note === 'first-check') && current !== null && due != null && due <= setting.now) return [button(sayButtons(setting, 'hard'), `check ${aim} ${current.kind} hard`), button(sayButtons(setting, 'soft'), `check ${aim} ${current.kind} soft`), ...undo];
  return undo;
}

function tooHot({ command, before, after, entry }: Entered, note: Extract<Note, { note: 'over-maximum' }>, setting: Setting): Answer {
  const byCard = command.kind === 'wrong-card';
  const figures = { title: title(after), value: degrees(note.value, setting), limit: degrees(note.maximum, setting) };
  const hot = byCard ? sayEntry(setting, 'too-hot-card', { ...figures, card: after.cure.card.name, before: before?.cure.card.name ?? '?' }) : sayEntry(setting, 'too-hot', figures);
  const buttons = [offButton(after, setting), ...(entry === null ? [] : [button(sayButtons(setting, byCard ? 'undo' : 'typing-error'), `undo ${entry}`)])];
  return answer('alarm', [hot, sayEntry(setting, 'heat-away', { heater: after.cure.heater }), exampleNote(after.cure.card, setting)], buttons);
}
