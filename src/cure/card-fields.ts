import { z } from 'zod';
import type { OpenTime, SheetRow } from './card.js';
import { expects } from './closed-object.js';
import { celsius, COLDEST_ACCEPTED, HOTTEST_ACCEPTED, minutes, type Celsius, type Minutes } from './units.js';

const LONGEST_WAIT = 60 * 24 * 60;
const LONGEST_NAME = 12;
const NUMBER = /^-?\d+(\.\d+)?$/;
const DURATION = /^(\d+(?:\.\d+)?)\s*(min|h)$/;

const temperatureWords = `a temperature in °C from ${COLDEST_ACCEPTED} to ${HOTTEST_ACCEPTED}`;
const durationWords = 'minutes, or a time such as 36 h';

/** °C. */
export const temperatureField = z
  .number({ error: expects(temperatureWords) })
  .min(COLDEST_ACCEPTED, { error: `must be ${temperatureWords}` })
  .max(HOTTEST_ACCEPTED, { error: `must be ${temperatureWords}` })
  .transform(celsius);

/** A plain number is minutes; `24 h` and `45 min` say their unit. */
export const durationField = z.union([z.number(), z.string()], { error: expects(durationWords) }).transform((value, context): Minutes => {
  const length = typeof value === 'number' ? value : durationOf(value);
  if (length === null) return refuse(context, `must be ${durationWords}`);
  if (length <= 0) return refuse(context, 'must be longer than 0 minutes');
  if (length > LONGEST_WAIT) return refuse(context, 'is longer than 60 days, which looks like a typing error');
  return minutes(length);
});

/** Relative humidity of the air in percent. */
export const humidityField = z
  .number({ error: expects('percent of relative humidity, 0 to 100') })
  .min(0, { error: 'must be 0 to 100 percent' })
  .max(100, { error: 'must be 0 to 100 percent' });

const marginWords = 'percent that the waits by rows grow by, 0 to 100';

export const marginField = z.number({ error: expects(marginWords) }).min(0, { error: `must be ${marginWords}` }).max(100, { error: `must be ${marginWords}` });

const DAYS = 'whole days from 1 to 730';

/** How long an opened cartridge may be used. */
export const openedDaysField = z.int({ error: expects(DAYS) }).min(1, { error: `must be ${DAYS}` }).max(730, { error: `must be ${DAYS}` });

/** Rows of a sheet, `temperature: minutes`, coldest first in the result; hotter must be shorter. */
export const rowsField = z.record(z.string(), durationField, { error: expects('rows, each a temperature in °C and its minutes') }).transform((record, context): readonly SheetRow[] => {
  const written: (SheetRow & { readonly key: string })[] = [];
  for (const [key, wait] of Object.entries(record)) {
    const temperature = rowTemperature(key);
    if (temperature === null) context.addIssue({ code: 'custom', path: [key], message: `stands where a row has ${temperatureWords}` });
    else written.push({ key, temperature, minutes: wait });
  }
  written.sort((one, other) => one.temperature - other.temperature);
  if (Object.keys(record).length === 0) context.addIssue({ code: 'custom', message: 'has no rows: leave it out if the sheet states none' });
  for (const [index, row] of written.entries()) {
    const problem = rowProblem(row, written[index - 1]);
    if (problem !== null) context.addIssue({ code: 'custom', path: [row.key], message: problem });
  }
  return written.map((row): SheetRow => ({ temperature: row.temperature, minutes: row.minutes }));
});

function rowProblem(row: SheetRow, colder: SheetRow | undefined): string | null {
  if (colder === undefined) return null;
  if (row.temperature === colder.temperature) return `is a second row for ${row.temperature} °C`;
  return row.minutes < colder.minutes ? null : `must be shorter than the ${colder.minutes} minutes at ${colder.temperature} °C: hotter is faster`;
}

/** Open time: rows by temperature, or one number of minutes. */
export const openField = z.unknown().transform((value, context): OpenTime => {
  if (typeof value === 'object' && value !== null) {
    const rows = rowsField.safeParse(value);
    if (rows.success) return { by: 'rows', rows: rows.data };
    for (const issue of rows.error.issues) context.addIssue({ code: 'custom', path: issue.path, message: issue.message });
    return z.NEVER;
  }
  const plain = durationField.safeParse(value);
  if (plain.success) return { by: 'minutes', minutes: plain.data };
  return refuse(context, plain.error.issues[0]?.message ?? `must be rows, or ${durationWords}`);
});

/** What people type for the card: a letter first, and nothing that reads like a joint (`j1`). */
export const cardNameField = z
  .string({ error: expects('a short name such as P1') })
  .regex(/^[A-Za-z][A-Za-z0-9-]*$/, { error: 'must begin with a letter and hold letters, digits and hyphens only' })
  .max(LONGEST_NAME, { error: `must have at most ${LONGEST_NAME} characters: people type it with gloves on` })
  .refine((name) => !/^j\d+$/i.test(name), { error: 'reads like the number of a joint (j1, j2): choose another name' });

/** A title or a version as people read it. */
export const wordsField = z.string({ error: expects('words; put a number into quotes') }).trim().min(1, { error: 'must not be empty' }).max(60, { error: 'must have at most 60 characters' });

function refuse(context: z.RefinementCtx, message: string): never {
  context.addIssue({ code: 'custom', message });
  return z.NEVER;
}

function durationOf(text: string): number | null {
  const found = DURATION.exec(text.trim());
  if (found === null) return null;
  return Number(found[1]) * (found[2] === 'h' ? 60 : 1);
}

function rowTemperature(key: string): Celsius | null {
  const value = Number(key);
  return NUMBER.test(key) && value >= COLDEST_ACCEPTED && value <= HOTTEST_ACCEPTED ? celsius(value) : null;
}
