import type { SheetRow } from './card.js';
import { expectedStretches, temperatureOn, type Course, type CourseStretch } from './expected-stretches.js';
import type { JointHistory } from './history.js';
import { meanRate, rateTable, steadyRate, type RateTable } from './rate-table.js';
import { reachedAfter } from './reached-after.js';
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
 * lines between readings. For showing beside the safe side ("take a reading to lock it in") and for what-if only.
 * It errs early as often as late: nothing may ever be announced, reminded or confirmed on it.
 */
export function expectedProgress(rows: readonly SheetRow[], history: JointHistory, buildUp: BuildUp): ExpectedProgress {
  const table = rateTable(rows);
  const stretches: ExpectedStretch[] = [];
  let earnedBefore = 0;
  let due: Instant | null = null;
  for (const stretch of expectedStretches(history, TIME_CONSTANTS[buildUp])) {
    stretches.push({ ...stretch, earnedBefore });
    const needed = 1 - earnedBefore;
    if (due === null) due = reachedIn(table, stretch, needed);
    if (stretch.to !== null) earnedBefore += earnedOn(table, stretch.course, minutesBetween(stretch.from, stretch.to));
  }
  return { table, stretches, due };
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
