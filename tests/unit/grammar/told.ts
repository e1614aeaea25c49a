import { DateTime } from 'luxon';
import type { Instant } from '../../../src/cure/units.js';
import type { Choice, Misread, ReadingContext } from '../../../src/grammar/reading.js';
import type { AirSaid, Command, TypedTemperature, When } from '../../../src/repair/commands.js';
import { partsWords } from '../../../src/reply/compose/misread.js';
import { problemWords } from '../../../src/reply/compose/problem-words.js';
import { saidWords } from '../../../src/reply/compose/said-words.js';

/**
 * A command as the data files write it: its kind, then what it holds, `closed job=501 at 13:50`.
 * A heater is told when it is no lamp. A time is left out when none was typed; `at 13:40..13:50` is a range, `!` a confirmed time.
 */
export function toldCommand(command: Command, { now, zone }: ReadingContext): string {
  const { kind, ...held } = command;
  const words = Object.entries(held).flatMap(([name, value]: [string, unknown]) => (MOMENTS.has(name) && typeof value !== 'string' ? [] : toldPart(name, value)));
  const ahead = 'readyBy' in command ? [`readyBy=${toldMoment(command.readyBy, now, zone)}`] : command.kind === 'what-if' && command.from !== null ? [`from=${toldMoment(command.from, now, zone)}`] : [];
  const time = 'when' in command ? toldTime(command.when, now, zone) : [];
  return [kind, ...words, ...ahead, ...time].join(' ');
}

const MOMENTS: ReadonlySet<string> = new Set(['when', 'from', 'readyBy']);

function toldPart(name: string, value: unknown): string[] {
  if (value === null || value === false || value === 'unstated' || (name === 'since' && value === 'stated') || (name === 'heater' && value === 'lamp')) return [];
  if (value === true) return [name];
  if (isAir(value)) return [...toldPart('air', value.value), ...toldPart('humidity', value.humidity)];
  if (isTemperature(value)) return [`${name}=${value.value}${value.unit ?? ''}`];
  return [`${name}=${typeof value === 'string' || typeof value === 'number' ? value : JSON.stringify(value)}`];
}

const isTemperature = (value: unknown): value is TypedTemperature => typeof value === 'object' && value !== null && 'unit' in value;

const isAir = (value: unknown): value is AirSaid => typeof value === 'object' && value !== null && 'humidity' in value;

function toldTime(when: When, now: Instant, zone: string): string[] {
  if (!when.stated) return when.earliest === now && when.latest === now && !when.confirmed ? [] : ['at something other than now'];
  const range = when.earliest === when.latest ? toldMoment(when.latest, now, zone) : `${toldMoment(when.earliest, now, zone)}..${toldMoment(when.latest, now, zone)}`;
  return ['at', when.confirmed ? `${range}!` : range];
}

function toldMoment(at: Instant, now: Instant, zone: string): string {
  const moment = DateTime.fromMillis(at, { zone });
  return moment.toFormat(moment.hasSame(DateTime.fromMillis(now, { zone }), 'day') ? 'HH:mm' : 'd.L. HH:mm');
}

/** A misread as the data files write it: understood | unclear | problem | nearest | choices, `-` for nothing; in English. */
export const toldMisread = (misread: Misread): string =>
  [partsWords(misread, {}), misread.unclear ?? '', toldProblem(misread), misread.nearest, misread.choices.map((choice) => `[${toldLabel(choice)}] ${choice.line}`).join(' ')].map((part) => (part === '' ? '-' : part)).join(' | ');

export const toldProblem = ({ problem }: Pick<Misread, 'problem'>): string => problemWords(problem, {});

export const toldLabel = ({ label }: Pick<Choice, 'label'>): string => label.map((one) => saidWords(one, {})).join(' ');
