import { DateTime } from 'luxon';
import { z } from 'zod';
import { instant, type Instant } from '../cure/units.js';
import { problemsOf, type FileProblem } from './file-problem.js';
import { readYamlFile } from './yaml-file.js';

/** A line that somebody of the practice shop says at its time. */
export interface DayLine {
  readonly at: Instant;
  readonly from: string;
  readonly say: string;
}

/** The days of the practice shop: when they begin, in shop time, and what its people say, in order. */
export interface PracticeDay {
  readonly begins: string;
  readonly lines: readonly DayLine[];
}

export type PracticeDayRead = { readonly ok: true; readonly day: PracticeDay } | { readonly ok: false; readonly problems: readonly FileProblem[] };

const TIME = "yyyy-MM-dd'T'HH:mm";
const fileSchema = z.strictObject({
  begins: z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/),
  days: z.array(z.strictObject({ date: z.string().regex(/^\d{4}-\d\d-\d\d$/), lines: z.array(z.tuple([z.string().regex(/^\d\d:\d\d$/), z.string().min(1), z.string().min(1)])) })),
});

/** Reads the practice days from their file; the times in it are shop time in `zone`. */
export function readPracticeDay(path: string, zone: string): PracticeDayRead {
  const name = 'practice-day.yaml';
  const file = readYamlFile(path, name);
  if (!file.ok) return file;
  const read = fileSchema.safeParse(file.value);
  if (!read.success) return { ok: false, problems: problemsOf(name, read.error.issues, file.lineOf) };
  const lines = read.data.days.flatMap(({ date, lines: said }) => said.map(([time, from, say]): DayLine => ({ at: instant(DateTime.fromFormat(`${date}T${time}`, TIME, { zone }).toMillis()), from, say })));
  return { ok: true, day: { begins: read.data.begins, lines: lines.sort((one, other) => one.at - other.at) } };
}
