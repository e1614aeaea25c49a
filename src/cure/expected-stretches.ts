import type { AirStep } from './air.js';
import { heatedSpans, type HeatedSpan } from './heated-spans.js';
import type { JointHistory } from './history.js';
import type { TemperaturePoint } from './temperature-point.js';
import { learntConstant } from './learnt-constant.js';
import { celsius, colder, hotter, later, minutes, minutesBetween, type Celsius, type Instant, type Minutes } from './units.js';
import { temperatureAfter, timeConstantFrom, towardsThrough, type WarmUp } from './warm-up.js';

/** What the joint's temperature is expected to do over a stretch; `unknown` earns nothing. */
export type Course =
  | { readonly course: 'steady'; readonly temperature: Celsius }
  | { readonly course: 'ramp'; readonly from: Celsius; readonly to: Celsius; readonly length: Minutes }
  | { readonly course: 'warm-up'; readonly warmUp: WarmUp }
  | { readonly course: 'unknown' };

export interface CourseStretch {
  readonly from: Instant;
  /** null: goes on. */
  readonly to: Instant | null;
  readonly course: Course;
}

const UNKNOWN: Course = { course: 'unknown' };
const steady = (temperature: Celsius | null): Course => (temperature === null ? UNKNOWN : { course: 'steady', temperature });

/** Temperature some minutes into a course, or null where it is unknown. */
export function temperatureOn(course: Course, after: Minutes): Celsius | null {
  switch (course.course) {
    case 'steady':
      return course.temperature;
    case 'ramp':
      return celsius(course.from + ((course.to - course.from) * after) / course.length);
    case 'warm-up':
      return temperatureAfter(course.warmUp, after);
    case 'unknown':
      return null;
  }
}

/**
 * The joint's temperature as it is expected to have been and to go on, without gaps from the start: warm-up after a
 * switch-on, straight lines between readings, the shop's air wherever there is no heat (metal that cools counts nothing).
 * `usualConstant` holds until two readings of a warm-up show how this joint warms; the next warm-ups go by that.
 */
export function expectedStretches(history: JointHistory, usualConstant: Minutes): CourseStretch[] {
  const { air } = history;
  const stretches: CourseStretch[] = [];
  let cursor: Instant | null = null;
  let warm: Celsius | null = null;
  let timeConstant = usualConstant;
  for (const span of heatedSpans(history.heat)) {
    if (cursor === span.from) warm = span.keepsReading ? warm : turnedDown(warm, span.setting, airAt(air, span.from));
    else stretches.push(...airBetween(air, cursor, span.from));
    const before: Celsius | null = (cursor === span.from ? warm : null) ?? airAt(air, span.from);
    const heated = heatedStretches(span, before, air, timeConstant);
    for (const stretch of heated) stretches.push(stretch);
    cursor = span.to;
    warm = endTemperature(heated.at(-1)) ?? span.readings.at(-1)?.temperature ?? before;
    timeConstant = learntConstant(span) ?? timeConstant;
  }
  const goesOn = stretches.at(-1)?.to === null;
  return fromStart(goesOn ? stretches : [...stretches, ...airBetween(air, cursor, null)], history.start);
}

/** No colder than the air around it. */
function turnedDown(warm: Celsius | null, setting: Celsius | null, air: Celsius | null): Celsius | null {
  const lower = warm === null || setting === null ? warm : colder(warm, setting);
  return lower === null || air === null ? lower : hotter(lower, air);
}

/** A span from the temperature with which the joint came into it; where that is unknown, air counts until somebody reads. */
function heatedStretches(span: HeatedSpan, begin: Celsius | null, air: readonly AirStep[], timeConstant: Minutes): CourseStretch[] {
  const [first, ...rest] = span.readings;
  // Read at the very switch-on: that is what the heat begins with.
  if (span.fromSwitchOn && first?.at === span.from) return heatedStretches({ ...span, readings: rest }, first.temperature, air, timeConstant);
  if (first === undefined) return begin === null ? airBetween(air, span.from, span.to) : [{ from: span.from, to: span.to, course: unread(span, begin, timeConstant) }];
  const through = begin === null || !span.fromSwitchOn ? null : throughReading(begin, span.from, first, timeConstant);
  const stretches: CourseStretch[] = through === null ? airBetween(air, span.from, first.at) : [{ from: span.from, to: first.at, course: { course: 'warm-up', warmUp: through } }];
  for (const [index, reading] of span.readings.entries()) {
    const next = span.readings[index + 1];
    if (next === undefined) stretches.push({ from: reading.at, to: span.to, course: afterLast(span, reading, span.readings[index - 1], through) });
    else if (next.at > reading.at) stretches.push({ from: reading.at, to: next.at, course: { course: 'ramp', from: reading.temperature, to: next.temperature, length: minutesBetween(reading.at, next.at) } });
  }
  return stretches.filter((stretch) => stretch.to === null || stretch.to > stretch.from);
}

function unread(span: HeatedSpan, begin: Celsius, timeConstant: Minutes): Course {
  return span.towards === null ? steady(begin) : rising(begin, span.towards, timeConstant);
}

const throughReading = (begin: Celsius, from: Instant, reading: TemperaturePoint, timeConstant: Minutes): WarmUp => ({
  from: begin,
  towards: towardsThrough(begin, reading.temperature, minutesBetween(from, reading.at), timeConstant),
  timeConstant,
});

/** After the last reading the joint goes on as it was read, never beyond the setting: by two readings, by the curve through one, or it stays. */
function afterLast(span: HeatedSpan, last: TemperaturePoint, previous: TemperaturePoint | undefined, through: WarmUp | null): Course {
  const { setting } = span;
  if (setting === null) return steady(last.temperature);
  if (previous === undefined) return through === null ? steady(last.temperature) : rising(last.temperature, colder(through.towards, setting), through.timeConstant);
  return rising(last.temperature, setting, timeConstantFrom(previous.temperature, last.temperature, minutesBetween(previous.at, last.at), setting));
}

const rising = (from: Celsius, towards: Celsius, timeConstant: Minutes | null): Course =>
  timeConstant === null || towards <= from ? steady(from) : { course: 'warm-up', warmUp: { from, towards, timeConstant } };

function endTemperature(stretch: CourseStretch | undefined): Celsius | null {
  return stretch?.to == null ? null : temperatureOn(stretch.course, minutesBetween(stretch.from, stretch.to));
}

const airAt = (air: readonly AirStep[], at: Instant): Celsius | null => (air.findLast((step) => step.from <= at) ?? air[0])?.temperature ?? null;

/** The air's steps inside an interval; null is open on that side. */
function airBetween(air: readonly AirStep[], from: Instant | null, to: Instant | null): CourseStretch[] {
  return air.flatMap((step, index): CourseStretch[] => {
    const ends = air[index + 1]?.from ?? null;
    const begin = from === null ? step.from : later(from, step.from);
    const end = ends === null || (to !== null && to < ends) ? to : ends;
    return end !== null && end <= begin ? [] : [{ from: begin, to: end, course: steady(step.temperature) }];
  });
}

/** What was before the start earns nothing; a course that was under way goes on from where it was. */
function fromStart(stretches: readonly CourseStretch[], start: Instant): CourseStretch[] {
  return stretches.flatMap((stretch) => {
    if (stretch.from >= start) return [stretch];
    if (stretch.to !== null && stretch.to <= start) return [];
    return [{ from: start, to: stretch.to, course: goingOn(stretch.course, minutesBetween(stretch.from, start)) }];
  });
}

function goingOn(course: Course, after: Minutes): Course {
  const here = temperatureOn(course, after);
  if (here === null || course.course === 'steady') return course;
  if (course.course === 'ramp') return { ...course, from: here, length: minutes(course.length - after) };
  return course.course === 'warm-up' ? { course: 'warm-up', warmUp: { ...course.warmUp, from: here } } : course;
}
