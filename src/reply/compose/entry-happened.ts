import { celsius, type Celsius, type Instant } from '../../cure/units.js';
import type { BuildUp } from '../../cure/warm-up.js';
import type { CureCommand } from '../../repair/commands.js';
import type { Note } from '../../repair/decision.js';
import type { Outlook } from '../../repair/outlook.js';
import type { PersonId } from '../../repair/ids.js';
import { nameOf } from '../../repair/people.js';
import type { Entered } from './entry.js';
import { heaterWord, heatWords } from './state.js';
import { clock, degrees, MILESTONE_WORDS, tidy, type Setting } from './words.js';

/** What was entered, in one sentence after the job. */
export function whatHappened({ command, by, after, notes }: Entered, setting: Setting): string {
  const note = notes[0];
  if (note?.note === 'already-confirmed') return `${MILESTONE_WORDS[note.milestone]} already answered by **${nameOf(setting.shop, note.by)}** ${clock(note.at, setting)}. Nothing changed.`;
  if (note?.note === 'already-so') return `${standsAlready(command, after, setting)} already. Nothing changed.`;
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
      return `${heaterWord(after.cure, setting)} ${degrees(setAt(command.when.latest, after), setting)} since ${at}.`;
    case 'off':
      return command.since === 'unknown' ? `${after.cure.heater} found off ${at}: heat counts only to ${clock(after.heat.lastSign ?? setting.now, setting)}.` : `${after.cure.heater} off ${at}: air counts since.`;
    case 'on':
      return `on ${at}, thanks.`;
    case 'read':
      return readingSentence(command, note, after, setting);
    case 'check':
      return checkSentence(note, by, after, setting);
    case 'later':
      return `asked again in ${setting.shop.rhythm.putOff} min.`;
    case 'stay':
      return `${nameOf(setting.shop, by)} stays with the ${after.cure.heater} past closing.`;
    case 'release':
      return `goes on, decided by ${nameOf(setting.shop, by)}.`;
    case 'scrap':
      return `${after.cure.card.name} scrapped ${at}. It stays in the record.`;
    case 'depth':
      return `bead ${tidy(command.millimetres)} mm deep.`;
    case 'build-up':
      return `metal noted: ${BUILD_UPS_SAID[command.buildUp]}.`;
    case 'wrong-card':
      return `is **${after.cure.card.name}**, not ${note?.note === 'card-changed' ? note.before.cure.card.name : 'what stood here'} (changed ${at}).`;
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

function readingSentence(command: Extract<CureCommand, { kind: 'read' }>, note: Note | undefined, after: Outlook, setting: Setting): string {
  const read = [...after.cure.readBefore, ...after.cure.readings].findLast((one) => command.corrects === true || one.at === command.when.latest);
  const value = read === undefined ? '' : degrees(read.value, setting);
  const from = command.value.unit === 'F' && setting.shop.unit === 'C' && setting.unit === undefined ? ` (${command.value.value} °F)` : '';
  if (note?.note === 'bare-metal') return `reading ${value} on bare metal noted, **not counted**.`;
  if (note?.note === 'stored-heat') return `reading ${value} noted; ${after.cure.heater} is off, so it does not count.`;
  const before = after.cure.readBefore.some((one) => one === read) ? ' before the paste' : '';
  return `reading ${value}${from}${before}.`;
}

function checkSentence(note: Note | undefined, by: PersonId, after: Outlook, setting: Setting): string {
  if (note?.note === 'two-answers') return `${MILESTONE_WORDS[note.milestone]}: two answers, ${nameOf(setting.shop, note.other)} said otherwise. **Held as soft.**`;
  if (note?.note === 'first-check') return `${MILESTONE_WORDS[note.milestone]}: **first check** by ${nameOf(setting.shop, by)}.`;
  if (note?.note === 'confirmed') {
    const said = after.milestones.find((one) => one.kind === note.milestone)?.check.answer;
    return `${MILESTONE_WORDS[note.milestone]} **confirmed** ${said == null ? '' : `${clock(said.at, setting)} by ${nameOf(setting.shop, said.by)}`}.`;
  }
  return 'soft noted.';
}

/** What the same thing said again finds in the book. */
function standsAlready(command: CureCommand, after: Outlook, setting: Setting): string {
  if (command.kind === 'depth') return `bead ${tidy(command.millimetres)} mm deep`;
  if (command.kind === 'build-up') return `${BUILD_UPS_SAID[command.buildUp]} noted`;
  return heatWords(after, setting);
}

const BUILD_UPS_SAID: Readonly<Record<BuildUp, string>> = { 'thin-skin': 'thin skin', 'two-sheets-with-flange': 'two sheets with a flange' };
