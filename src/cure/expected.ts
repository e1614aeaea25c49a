import type { SheetRow } from './card.js';
import { expectedStretches, temperatureOn, type Course, type CourseStretch } from './expected-stretches.js';
import type { JointHistory } from './history.js';
import { nominalStretches } from './nominal-stretches.js';
import { append, progressLine, type ProgressLine, type TemperaturePoint } from './progress-line.js';
import { meanRate, rateTable, steadyRate, type RateTable } from './rate-table.js';
import { reachedAfter } from './reached-after.js';
import type { SheetLaw } from './sheet-law.js';
import { celsius, minutes, minutesBetween, plus, type Celsius, type Instant, type Minutes } from './units.js';
import { TIME_CONSTANTS, warmUpEarned, warmUpLasts, type BuildUp } from './warm-up.js';

/** Rounding of a sum of shares. */
const DUST = 1e-12;

/** A stretch of the expected temperature and the share that was earned before it. */
export interface ExpectedStretch extends CourseStretch {
  readonly earnedBefore: number;
}

/** What a wait is expected to do, on the most likely temperatures rather than the safe ones. */
export interface ExpectedProgress {
  readonly table: RateTable;
  /** Without gaps from the start; the last one goes on. */
  readonly stretches: readonly ExpectedStretch[];
  /** Exact moment at which the share is expected to reach 1, not rounded; null: as things stand it never comes. */
  readonly due: Instant | null;
}

/**
 * The expected side of one milestone with printed rows: Arrhenius between the rows, warm-up after switch-on, straight
 * lines between readings; above `maximum`, the card's highest panel temperature, nothing. For showing beside the safe side
 * ("take a reading to lock it in") and for what-if only. It errs early as often as late: nothing may ever be announced,
 * reminded or confirmed on it.
 */
export const expectedProgress = (rows: readonly SheetRow[], history: JointHistory, buildUp: BuildUp, maximum: Celsius | null = null): ExpectedProgress =>
  progressAlong(rateTable(rows, maximum), expectedStretches(history, TIME_CONSTANTS[buildUp]));

/**
 * The expected side by the law behind a sheet's recipe: lamp settings as they were set, air elsewhere, since the sheet's
 * minutes have the warm-up in them. `maximum` is the card's highest lamp setting. Never announced either.
 */
export const nominalProgress = (law: SheetLaw, history: JointHistory, maximum: Celsius | null = null): ExpectedProgress =>
  progressAlong(rateTable(law.rows, maximum), nominalStretches(history));

/** What a wait does along a course of temperatures. */
export function progressAlong(table: RateTable, courses: readonly CourseStretch[]): ExpectedProgress {
  const stretches: ExpectedStretch[] = [];
  let sum: Sum = { share: 0, due: null, line: null };
  for (const stretch of courses) {
    stretches.push({ ...stretch, earnedBefore: sum.share });
    sum = stretch.course.course === 'ramp' && stretch.to !== null ? afterRamp(table, sum, { at: stretch.from, temperature: stretch.course.from }, { at: stretch.to, temperature: stretch.course.to }) : afterStretch(table, sum, stretch);
  }
  return { table, stretches, due: sum.due };
}

/** The running sum; `line` while one reading follows the other. */
interface Sum {
  readonly share: number;
  readonly due: Instant | null;
  readonly line: ProgressLine | null;
}

/** A run of readings is one line: each reading costs one look-up. */
function afterRamp(table: RateTable, { share, due, line }: Sum, from: TemperaturePoint, to: TemperaturePoint): Sum {
  const goesOn = line !== null && line.last.at === from.at && line.last.temperature === from.temperature;
  const longer = append(goesOn ? line : progressLine(table, from, [], share), to);
  return { share: longer.share, due: due ?? longer.due, line: longer };
}

function afterStretch(table: RateTable, { share, due }: Sum, stretch: CourseStretch): Sum {
  const earned = stretch.to === null ? 0 : earnedOn(table, stretch.course, minutesBetween(stretch.from, stretch.to));
  return { share: share + earned, due: due ?? reachedIn(table, stretch, 1 - share), line: null };
}

/** Share of the wait that is expected to be done at a moment, 0 to 1; never a share of strength. */
export function expectedShareAt(progress: ExpectedProgress, at: Instant): number {
  const stretch = progress.stretches.findLast((one) => one.from <= at);
  if (stretch === undefined) return 0;
  return Math.min(1, stretch.earnedBefore + earnedOn(progress.table, stretch.course, minutesBetween(stretch.from, at)));
}

/** Temperature the joint is expected to have at a moment, or null where it is unknown. */
export function expectedTemperatureAt(progress: ExpectedProgress, at: Instant): Celsius | null {
  const stretch = progress.stretches.findLast((one) => one.from <= at);
  return stretch === undefined ? null : temperatureOn(stretch.course, minutesBetween(stretch.from, at));
}

/** Share of the wait that the first minutes of a course earn. */
export function earnedOn(table: RateTable, course: Course, after: Minutes): number {
  switch (course.course) {
    case 'steady':
      return after * steadyRate(table, course.temperature);
    case 'ramp':
      return after * meanRate(table, course.from, temperatureOn(course, after) ?? course.to);
    case 'warm-up':
      return warmUpEarned(table, course.warmUp, after);
    case 'unknown':
      return 0;
  }
}

/** The moment inside a stretch at which it has earned `needed`, or null. */
function reachedIn(table: RateTable, stretch: CourseStretch, needed: number): Instant | null {
  const { course } = stretch;
  const longest = stretch.to === null ? longestUntil(table, course, needed) : minutesBetween(stretch.from, stretch.to);
  if (longest === null || earnedOn(table, course, longest) < needed - DUST) return null;
  const rate = (after: Minutes): number => steadyRate(table, temperatureOn(course, after) ?? celsius(-Infinity));
  return plus(stretch.from, reachedAfter({ earned: (after) => earnedOn(table, course, after), rate }, longest, needed));
}

/** Minutes after which a course that goes on has surely earned `needed`; null: never. */
function longestUntil(table: RateTable, course: Course, needed: number): Minutes | null {
  const settles = course.course === 'warm-up' ? warmUpLasts(course.warmUp) : minutes(0);
  const settled = temperatureOn(course, settles);
  const rate = settled === null ? 0 : steadyRate(table, settled);
  if (rate > 0) return minutes(settles + (needed / rate) * (1 + 1e-9));
  return earnedOn(table, course, settles) >= needed ? settles : null;
}
