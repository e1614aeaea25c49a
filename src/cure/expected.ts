import type { SheetRow } from './card.js';
import { expectedStretches, temperatureOn, type Course, type CourseStretch } from './expected-stretches.js';
import type { JointHistory } from './history.js';
import { nominalStretches } from './nominal-stretches.js';
import { beginLines, dueIfHeld, dueOf, goAlong, lastPoint, shareOf, type ProgressLines } from './progress-lines.js';
import { rampsFrom } from './ramps-from.js';
import { gridOf } from './rate-grid.js';
import { meanRate, rateTable, steadyRate, type RateTable } from './rate-table.js';
import { reachedAfter } from './reached-after.js';
import type { SheetLaw } from './sheet-law.js';
import type { PackedPoints } from './temperature-point.js';
import { celsius, earlier, instant, minutes, minutesBetween, plus, type Celsius, type Instant, type Minutes } from './units.js';
import { TIME_CONSTANTS, warmUpEarned, warmUpLasts, type BuildUp } from './warm-up.js';

/** Rounding of a sum of shares. */
const DUST = 1e-12;

/** What a wait is expected to do, on the most likely temperatures rather than the safe ones. */
export interface ExpectedProgress {
  readonly table: RateTable;
  /** Without gaps from the start; the last one goes on. */
  readonly stretches: readonly CourseStretch[];
  /** Share earned before the last stretch; goes on above 1. */
  readonly earned: number;
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

/** What a wait does along a course of temperatures, the last of which goes on. */
export function progressAlong(table: RateTable, stretches: readonly CourseStretch[]): ExpectedProgress {
  let sum: Sum = { share: 0, due: null, lines: null };
  let index = 0;
  for (let stretch = stretches[0]; stretch !== undefined; stretch = stretches[index]) {
    const run = rampsFrom(stretches, index);
    sum = run === null ? afterStretch(table, sum, stretch) : afterRun(table, sum, run);
    index += run === null ? 1 : run.length / 2 - 1;
  }
  return { table, stretches, earned: sum.share, due: sum.due };
}

/** The running sum; `lines` right after a run of readings. */
interface Sum {
  readonly share: number;
  readonly due: Instant | null;
  readonly lines: ProgressLines | null;
}

/** A run of readings is one walk: each reading costs one look-up. */
function afterRun(table: RateTable, { share, due }: Sum, run: PackedPoints): Sum {
  const [at = NaN, temperature = NaN] = run;
  const lines = beginLines(gridOf(table), { at: instant(at), temperature: celsius(temperature) }, share);
  goAlong(lines, run, 2);
  return { share: shareOf(lines), due: due ?? known(dueOf(lines)), lines };
}

function afterStretch(table: RateTable, { share, due, lines }: Sum, stretch: CourseStretch): Sum {
  const { from, to, course } = stretch;
  const earned = to === null ? 0 : earnedOn(table, course, minutesBetween(from, to));
  const staysAsRead = to === null && course.course === 'steady' && course.temperature === (lines === null ? null : lastPoint(lines).temperature);
  return { share: share + earned, due: due ?? (lines !== null && staysAsRead ? known(dueIfHeld(lines)) : reachedIn(table, stretch, 1 - share)), lines: null };
}

const known = (due: Instant): Instant | null => (due < Infinity ? due : null);

/** Share of the wait that is expected to be done at a moment, 0 to 1; never a share of strength. */
export function expectedShareAt({ table, stretches }: ExpectedProgress, at: Instant): number {
  const begun = stretches.filter((stretch) => stretch.from <= at);
  return Math.min(1, begun.reduce((sum, { from, to, course }) => sum + earnedOn(table, course, minutesBetween(from, to === null ? at : earlier(to, at))), 0));
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
