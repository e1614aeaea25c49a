import { DateTime } from 'luxon';
import type { Instant } from '../../../src/cure/units.js';
import type { Misread, ReadingContext } from '../../../src/grammar/reading.js';
import type { Command, TypedTemperature, When } from '../../../src/repair/commands.js';

/**
 * A command as the data files write it: its kind, then what it holds, `closed job=501 at 13:50`.
 * A time is left out when none was typed; `at 13:40..13:50` is a range, `!` a confirmed time.
 */
export function toldCommand(command: Command, { now, zone }: ReadingContext): string {
  const { kind, ...held } = command;
  const words = Object.entries(held).flatMap(([name, value]: [string, unknown]) => (name === 'when' ? [] : toldPart(name, value)));
  const time = 'when' in command ? toldTime(command.when, now, zone) : [];
  return [kind, ...words, ...time].join(' ');
}

function toldPart(name: string, value: unknown): string[] {
  if (value === null || value === 'unstated' || (name === 'since' && value === 'stated')) return [];
  if (isTemperature(value)) return [`${name}=${value.value}${value.unit ?? ''}`];
  return [`${name}=${typeof value === 'string' ? value : JSON.stringify(value)}`];
}

const isTemperature = (value: unknown): value is TypedTemperature => typeof value === 'object' && value !== null && 'unit' in value;

function toldTime(when: When, now: Instant, zone: string): string[] {
  if (!when.stated) return when.earliest === now && when.latest === now && !when.confirmed ? [] : ['at something other than now'];
  const told = (at: Instant) => {
    const moment = DateTime.fromMillis(at, { zone });
    return moment.toFormat(moment.hasSame(DateTime.fromMillis(now, { zone }), 'day') ? 'HH:mm' : 'd.L. HH:mm');
  };
  const range = when.earliest === when.latest ? told(when.latest) : `${told(when.earliest)}..${told(when.latest)}`;
  return ['at', when.confirmed ? `${range}!` : range];
}

/** A misread as the data files write it: understood | unclear | problem | nearest | choices, `-` for nothing. */
export const toldMisread = ({ understood, unclear, problem, nearest, choices }: Misread): string =>
  [understood, unclear ?? '', problem, nearest, choices.map(({ label, line }) => `[${label}] ${line}`).join(' ')].map((part) => (part === '' ? '-' : part)).join(' | ');
