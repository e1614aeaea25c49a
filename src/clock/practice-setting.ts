import { DateTime } from 'luxon';
import { instant } from '../cure/units.js';
import type { PracticeStart } from './practice-clock.js';

export type PracticeSetting =
  | { readonly ok: true; readonly start: PracticeStart }
  /** What is wrong with the text and what would be right, for the person who set it. */
  | { readonly ok: false; readonly problem: string };

const PATTERN = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2})(?:\/x(\d{1,5}(?:\.\d{1,3})?))?$/;
const FORMAT = "yyyy-MM-dd'T'HH:mm";
const FASTEST = 10_000;
const EXAMPLES = '2026-03-02T07:00 (stands) or 2026-03-02T07:00/x600 (600 times as fast)';

const refuse = (problem: string): PracticeSetting => ({ ok: false, problem });

/** Reads the setting of the practice clock; the time is shop time in `zone`. */
export function readPracticeSetting(text: string, zone: string): PracticeSetting {
  const match = PATTERN.exec(text.trim());
  const local = match?.[1];
  if (local === undefined) return refuse(`"${text}" is not a start for the practice clock. Write ${EXAMPLES}.`);

  const start = DateTime.fromFormat(local, FORMAT, { zone });
  if (!start.isValid) return refuse(`${local} is not a date and time in ${zone}: ${start.invalidExplanation ?? 'unknown'}. Write ${EXAMPLES}.`);
  // Where clocks are put forward, an hour is missing; the library would move such a time on in silence.
  if (start.toFormat(FORMAT) !== local) return refuse(`${local} does not exist in ${zone}: the clocks are put forward then. Take another hour.`);

  const speed = match?.[2] === undefined ? null : Number(match[2]);
  if (speed !== null && (speed <= 0 || speed > FASTEST)) return refuse(`The practice clock cannot run ${speed} times as fast. Write a speed above 0, up to x${FASTEST}.`);
  return { ok: true, start: { startsAt: instant(start.toMillis()), speed } };
}
