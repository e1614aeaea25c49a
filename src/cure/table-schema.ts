import { z } from 'zod';
import type { TableRow } from './card.js';
import { durationField, humidityField, temperatureField } from './card-fields.js';
import { closedObject, expects } from './closed-object.js';

/** `any` is written out, so that a forgotten humidity is not taken for one that does not matter. */
const humidityOrAny = z.unknown().transform((value, context): number => {
  if (value === 'any') return 0;
  const parsed = humidityField.safeParse(value);
  if (parsed.success) return parsed.data;
  context.addIssue({ code: 'custom', message: `${value === undefined ? 'is missing' : 'must be'}: percent of relative humidity, 0 to 100, or any` });
  return z.NEVER;
});

const rowField = closedObject({ 'at-least': temperatureField, humidity: humidityOrAny, minutes: durationField }).transform(
  (plain): TableRow => ({ atLeast: plain['at-least'], humidity: plain.humidity, minutes: plain.minutes }),
);

/** A table that is looked up and never interpolated; what is warmer and damper must be shorter. Warmest row first in the result. */
export const tableField = z.array(rowField, { error: expects('a list of rows, each with at-least, humidity and minutes') }).transform((rows, context): readonly TableRow[] => {
  if (rows.length === 0) context.addIssue({ code: 'custom', message: 'has no rows' });
  for (const [index, row] of rows.entries()) {
    const better = rows.find((other, at) => at !== index && other.atLeast >= row.atLeast && other.humidity >= row.humidity && other.minutes >= row.minutes);
    if (better !== undefined) context.addIssue({ code: 'custom', path: [index, 'minutes'], message: `must be longer than the ${better.minutes} minutes of the row at ${better.atLeast} °C and ${better.humidity} %: worse air takes longer` });
  }
  return [...rows].sort((one, other) => other.atLeast - one.atLeast || other.humidity - one.humidity);
});
