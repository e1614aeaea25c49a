import type { CourseStretch } from './expected-stretches.js';
import type { PackedPoints } from './temperature-point.js';

/** The ramps from a place on, each of which begins where the one before it ends, as one history; null: there is none. */
export function rampsFrom(stretches: readonly CourseStretch[], place: number): PackedPoints | null {
  const points: number[] = [];
  for (let index = place; ; index += 1) {
    const stretch = stretches[index];
    if (stretch === undefined || stretch.to === null || stretch.course.course !== 'ramp') break;
    const { from, to } = stretch.course;
    if (points.length === 0) points.push(stretch.from, from);
    else if (points.at(-2) !== stretch.from || points.at(-1) !== from) break;
    points.push(stretch.to, to);
  }
  return points.length === 0 ? null : Float64Array.from(points);
}
