import { celsius, minutesBetween, type Celsius, type Instant } from '../../cure/units.js';
import type { CartridgeLabel, CureCommand } from '../../repair/commands.js';
import type { Note } from '../../repair/decision.js';
import { PUT_OFF_ENOUGH } from '../../repair/due.js';
import type { Outlook } from '../../repair/outlook.js';
import type { PersonId } from '../../repair/ids.js';
import { nameOf } from '../../repair/people.js';
import { sayCartridge } from '../catalogue/cartridge.js';
import { sayHappened } from '../catalogue/happened.js';
import { labelWords } from './cartridge.js';
import type { Entered } from './entry.js';
import { heatAndStays, heaterWord, heatWords, whoStays } from './state.js';
import { clock, degrees, milestoneWord, tidy, type Setting } from './words.js';

/** A check that waited so many minutes says since when. */
const LONG_DUE = 60;
const NOTHING_SAID: CartridgeLabel = { batch: null, expiry: null, opened: null };

/** What was entered, in one sentence after the job. */
export function whatHappened({ command, by, before, after, notes }: Entered, setting: Setting): string {
  const note = notes[0];
  if (note?.note === 'already-confirmed') return sayHappened(setting, 'already-confirmed', { milestone: milestoneWord(note.milestone, setting), who: nameOf(setting.shop, note.by), at: clock(note.at, setting) });
  if (note?.note === 'already-so') return sayHappened(setting, 'already-so', { what: standsAlready(command, after, setting) });
  const at = 'when' in command ? clock(command.when.latest, setting) : clock(setting.now, setting);
  const { heater, card: { name: card } } = after.cure;
  switch (command.kind) {
    case 'paste':
      if (note?.note === 'second-cartridge') return sayHappened(setting, 'second-cartridge', { at, first: clock(after.cure.pasted ?? command.when.latest, setting) });
      return after.open.kind === 'too hot' ? sayHappened(setting, 'paste-too-hot', { card, at }) : sayHappened(setting, 'paste-on', { card, at: clock(after.cure.pasted ?? command.when.latest, setting) });
    case 'closed':
      return sayHappened(setting, 'closed', { at });
    case 'cure':
      return sayHappened(setting, 'cure-closed', { card, at, heat: staysUntil(command, after, setting) ?? heatAndStays(after, setting) });
    case 'moved':
      return sayHappened(setting, 'moved', { at });
    case 'lamp':
      return heaterSince(command, at, after, setting);
    case 'off':
      if (note?.note === 'part-covered') return sayHappened(setting, 'part-covered', { heater });
      return command.since === 'unknown' ? sayHappened(setting, 'found-off', { heater, at, to: clock(after.heat.lastSign ?? setting.now, setting) }) : sayHappened(setting, 'off', { heater, at });
    case 'on':
      return sayHappened(setting, 'on', { at });
    case 'read':
      return readingSentence(command, note, before, after, setting);
    case 'check':
      return checkSentence(note, by, after, setting);
    case 'later':
      return sayHappened(setting, isPutOffEnough(after) ? 'foreman-asked' : 'asked-again', { minutes: `${setting.shop.rhythm.putOff}` });
    case 'stay':
      if (note?.note === 'here-now') return sayHappened(setting, 'is-with', { who: nameOf(setting.shop, by), heater });
      return sayHappened(setting, 'stays', { who: nameOf(setting.shop, after.cure.attended.at(-1)?.by ?? by), heater });
    case 'release':
      return sayHappened(setting, 'released', { who: nameOf(setting.shop, by) });
    case 'scrap':
      return sayHappened(setting, 'scrapped', { card, at });
    case 'depth':
      return `${beadWords(command.millimetres, setting)}.`;
    case 'build-up':
      return sayHappened(setting, 'metal-noted', { metal: sayHappened(setting, command.buildUp) });
    case 'enter':
      return sayCartridge(setting, 'noted', { label: labelWords(after.cartridge?.label ?? NOTHING_SAID, setting) });
    case 'wrong-card':
      return note?.note === 'card-changed' ? sayHappened(setting, 'is-card', { card, before: note.before.cure.card.name, at }) : sayHappened(setting, 'is-card-anew', { card, at });
    case 'air':
    case 'undo':
      return sayHappened(setting, 'noted');
  }
}

/** So often that the foreman is asked next. */
function isPutOffEnough({ cure }: Outlook): boolean {
  const last = cure.putOff.at(-1);
  const due = cure.raised.findLast((one) => one.kind === last?.kind)?.dueAt ?? null;
  return due !== null && cure.putOff.filter((one) => one.kind === last?.kind && one.at >= due).length >= PUT_OFF_ENOUGH;
}

/** The setting this entry noted, also where a later one stands already. */
function setAt(at: Instant, { cure, heat }: Outlook): Celsius {
  const set = cure.heat.findLast((event) => event.kind === 'lamp-set' && event.at === at);
  return set?.kind === 'lamp-set' ? set.setting : (heat.setting ?? celsius(0));
}

function heaterSince(command: Extract<CureCommand, { kind: 'lamp' }>, at: string, after: Outlook, setting: Setting): string {
  const heat = { heater: heaterWord(after.cure, setting), setting: lampSetting(command, after, setting), at };
  const who = command.when.attended === true ? whoStays(after, setting) : null;
  return who === null ? sayHappened(setting, 'heater-since', heat) : sayHappened(setting, 'heater-since-stays', { ...heat, who });
}

/** Whoever said that they stay is told until when that counts. */
function staysUntil(command: Extract<CureCommand, { kind: 'cure' }>, after: Outlook, setting: Setting): string | null {
  const who = command.when.attended === true ? whoStays(after, setting) : null;
  return who === null ? null : sayHappened(setting, 'heat-stays-until', { heat: heatWords(after, setting), who });
}

/** What was typed in the other unit is shown in both. */
function lampSetting(command: Extract<CureCommand, { kind: 'lamp' }>, after: Outlook, setting: Setting): string {
  const value = degrees(setAt(command.when.latest, after), setting);
  const foreign = command.setting?.unit === 'F' && setting.shop.unit === 'C' && setting.unit === undefined;
  return foreign ? sayHappened(setting, 'typed-is', { value, typed: command.setting.value }) : value;
}

function readingSentence(command: Extract<CureCommand, { kind: 'read' }>, note: Note | undefined, before: Outlook | null, after: Outlook, setting: Setting): string {
  const read = [...after.cure.readBefore, ...after.cure.readings].findLast((one) => command.corrects === true || one.at === command.when.latest);
  const value = read === undefined ? '' : degrees(read.value, setting);
  if (note?.note === 'bare-metal') return sayHappened(setting, 'reading-bare', { value });
  if (note?.note === 'stored-heat') return sayHappened(setting, 'reading-stored', { value, heater: after.cure.heater });
  const wrong = command.corrects === true ? before?.cure.readings.at(-1) : undefined;
  if (wrong !== undefined) return sayHappened(setting, 'reading-corrected', { value, before: degrees(wrong.value, setting) });
  const foreign = command.value.unit === 'F' && setting.shop.unit === 'C' && setting.unit === undefined;
  const said = foreign ? sayHappened(setting, 'as-typed', { value, typed: command.value.value }) : value;
  const counted = after.cure.heat.findLast((event) => event.kind === 'reading' && event.at === read?.at);
  if (counted?.kind === 'reading' && read !== undefined && counted.value < read.value) return sayHappened(setting, 'reading-warmer', { value: said, counted: degrees(counted.value, setting) });
  return sayHappened(setting, after.cure.readBefore.some((one) => one === read) ? 'reading-before' : 'reading', { value: said });
}

function checkSentence(note: Note | undefined, by: PersonId, after: Outlook, setting: Setting): string {
  if (note?.note === 'two-answers') return sayHappened(setting, 'two-answers', { milestone: milestoneWord(note.milestone, setting), who: nameOf(setting.shop, note.other) });
  if (note?.note === 'first-check') return sayHappened(setting, 'first-check', { milestone: milestoneWord(note.milestone, setting), who: nameOf(setting.shop, by) });
  if (note?.note === 'confirmed') {
    const { answer: said, dueAt: due } = after.milestones.find((one) => one.kind === note.milestone)?.check ?? { answer: null, dueAt: null };
    const milestone = milestoneWord(note.milestone, setting);
    if (said === null) return sayHappened(setting, 'confirmed', { milestone });
    const confirmed = { milestone, at: clock(said.at, setting), who: nameOf(setting.shop, said.by) };
    return due !== null && minutesBetween(due, said.at) >= LONG_DUE ? sayHappened(setting, 'confirmed-late', { ...confirmed, due: clock(due, setting) }) : sayHappened(setting, 'confirmed-by', confirmed);
  }
  return sayHappened(setting, 'soft-noted');
}

/** What the same thing said again finds in the book. */
function standsAlready(command: Entered['command'], after: Outlook, setting: Setting): string {
  if (command.kind === 'depth') return beadWords(command.millimetres, setting);
  if (command.kind === 'build-up') return sayHappened(setting, 'build-up-noted', { metal: sayHappened(setting, command.buildUp) });
  return heatWords(after, setting);
}

const beadWords = (millimetres: number, setting: Setting): string => sayHappened(setting, 'bead-deep', { depth: tidy(millimetres, setting) });
