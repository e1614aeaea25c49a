import type { Heater } from '../cure/history.js';
import type { BuildUp } from '../cure/warm-up.js';
import type { AirSaid, CartridgeLabel, EntryCommand, QuestionCommand, Subject, TypedTemperature, When } from './commands.js';
import type { LampName } from './ids.js';
import type { Entering } from './procedure.js';
import { questionLine } from './question-line.js';

/** Entries, and the questions that are about a job. */
export type LineCommand = EntryCommand | Extract<QuestionCommand, Subject>;

/** The line that means exactly this command; buttons are such lines, so pressing and typing are one path. */
export function lineOf(command: LineCommand): string {
  return wordsOf(command).filter((word) => word !== '').join(' ');
}

function wordsOf(command: LineCommand): string[] {
  switch (command.kind) {
    case 'paste':
      // Open time errs early: of a range it is the earlier end that counts.
      return [command.again === true ? 'second cartridge' : 'paste', ...subject(command), command.card ?? '', depth(command.depth), ...labelWords(command.label), ...air(command.air), time({ ...command.when, latest: command.when.earliest })];
    case 'closed':
      return ['closed', ...subject(command), command.card ?? '', depth(command.depth), ...air(command.air), time(command.when)];
    case 'moved':
      return ['moved', ...subject(command), time(command.when)];
    case 'cure':
      return ['cure', ...subject(command), command.card ?? '', depth(command.depth), command.setting === null ? (command.lamp ?? '') : `${command.heater} ${degrees(command.setting)} ${heaterNamed(command)}`.trimEnd(), ...labelWords(command.label), ...air(command.air), time(command.when)];
    case 'lamp':
      return [command.setting === null ? 'up' : command.heater, ...subject(command), command.setting === null ? '' : degrees(command.setting), heaterNamed(command), time(command.when)];
    case 'off':
      return [command.part === true ? 'covers half' : 'off', ...subject(command), lampNamed(command.lamp), command.since === 'unknown' ? "don't know when" : time(command.when)];
    case 'on':
      return ['on', ...subject(command), lampNamed(command.lamp), time(command.when)];
    case 'read':
      return ['read', ...subject(command), degrees(command.value), command.method === 'unstated' ? '' : command.method, time(command.when)];
    case 'air':
      return [...air(command), time(command.when)];
    case 'check':
      return ['check', ...subject(command), command.milestone ?? '', command.result, command.lampWanted === true ? 'lamp' : '', time(command.when)];
    case 'later':
      return ['later', ...subject(command)];
    case 'stay':
      return command.who === undefined ? [command.here === true ? 'im here' : 'stay', ...subject(command)] : [command.who, 'stays', ...subject(command)];
    case 'release':
    case 'scrap':
      return [command.kind, ...subject(command), command.reason];
    case 'depth':
      return ['depth', ...subject(command), depth(command.millimetres)];
    case 'build-up':
      return ['metal', ...subject(command), BUILD_UP_WORDS[command.buildUp]];
    case 'wrong-card':
      return ['card', ...subject(command), command.card];
    case 'undo':
      return ['undo', command.entry === null ? '' : `${command.entry}`];
    case 'begin':
      return ['begin', ...subject(command), command.procedure ?? ''];
    case 'done':
      return ['done', ...subject(command), command.step ?? '', time(command.when)];
    case 'sign':
      return ['sign', ...subject(command), command.step ?? ''];
    case 'tap':
      return ['tap', ...subject(command), command.step, `${command.tap + 1}`];
    case 'enter':
      return [...entering(command.what, command), command.text, ...(command.more ?? []).flatMap(({ what, text }) => [what, text])];
    case 'hold':
      return ['hold', ...subject(command), command.reason];
    case 'override':
      return ['override', ...subject(command), command.step ?? '-', command.reason];
    case 'weld':
      return ['weld', ...subject(command), time(command.when)];
    case 'smoke':
      return ['smoke', ...subject(command)];
    case 'hand':
      return ['hand', ...subject(command), 'to', command.to];
    case 'handover':
      return ['handover', command.to, ...(command.except.length === 0 ? [] : ['except', ...command.except])];
    case 'accept':
      return ['accept'];
    case 'busy':
      return ['busy', `${command.minutes} min`];
    case 'move':
      return ['move', `${command.from}>${command.to}`];
    case 'adopt':
      return ['adopt', command.person, command.role ?? ''];
    case 'turn-away':
      return ['refuse', command.person];
    case 'when':
    case 'why':
    case 'next':
    case 'may':
    case 'what-if':
    case 'latest-start':
      return [questionLine(command)];
  }
}

/** `batch 501 …`; air and metal have commands of their own, so they stand behind a word that says that it is for a step. */
function entering(what: Entering, command: Subject): string[] {
  return what === 'air' || what === 'metal' ? ['enter', ...subject(command), what] : [what, ...subject(command)];
}

/** What stands on the cartridge, behind everything that has a place of its own. */
function labelWords(label: CartridgeLabel | undefined): string[] {
  const { batch = null, expiry = null, opened = null } = label ?? {};
  return [...(batch === null ? [] : ['batch', batch]), ...(expiry === null ? [] : ['exp', expiry]), ...(opened === null ? [] : ['opened', opened])];
}

/** As a person types it. */
export const BUILD_UP_WORDS: Readonly<Record<BuildUp, string>> = { 'thin-skin': 'thin', 'two-sheets-with-flange': 'flange' };

const depth = (millimetres: number | null): string => (millimetres === null ? '' : `${millimetres} mm`);

const air = (said: AirSaid | undefined): string[] => (said === undefined ? [] : ['air', degrees(said.value), said.humidity === null ? '' : `rh ${said.humidity}`]);

const heaterNamed = ({ heater, lamp }: { readonly heater: Heater; readonly lamp: LampName | null }): string => (lamp === null ? '' : `${heater} ${lamp}`);

const subject = (command: Subject): string[] => [command.job ?? '', command.joint ?? ''];

/** `lamp C`, since a bare C after a number would be a unit. */
const lampNamed = (lamp: LampName | null): string => (lamp === null ? '' : `lamp ${lamp}`);

const degrees = (typed: TypedTemperature): string => `${typed.value}${typed.unit ?? ''}`;

/** A stated time goes out as an instant, so that the button means the same tomorrow. */
function time(when: When): string {
  if (!when.stated) return '';
  const yes = when.attended === true ? ' attended' : when.confirmed ? ' yes' : '';
  return `at ${new Date(when.latest).toISOString()}${yes}`;
}
