import fc from 'fast-check';
import { airSteps, type AirInput, type AirReading, type AirStep, type OpenPeriod } from '../../src/cure/air.js';
import { afterHeatEvent, NO_HEAT, type LampState } from '../../src/cure/heat.js';
import { HEATERS, type HeatEvent, type JointHistory } from '../../src/cure/history.js';
import { celsius, instant, minutes, plus, type Celsius, type Instant } from '../../src/cure/units.js';
import { on } from './joint.js';

const SECONDS_PER_DAY = 86_400;

/** Two weeks of a shop that is closed at the weekend and on the second Wednesday, and the Friday before. */
export const PERIODS: readonly OpenPeriod[] = [-7, 0, 7].flatMap((week) =>
  ['Mon', 'Tue', 'Wed', 'Thu', 'Fri'].flatMap((day): OpenPeriod[] => {
    const later = minutes(week * 24 * 60);
    const closed = (week > 0 && day === 'Wed') || (week < 0 && day !== 'Fri');
    const longClosureAfter = day === 'Fri' || (week > 0 && day === 'Tue');
    return closed ? [] : [{ opens: plus(on(`${day} 07:30`), later), closes: plus(on(`${day} 17:00`), later), longClosureAfter }];
  }),
);

/** Any second of the first week. */
export const anyStart: fc.Arbitrary<Instant> = fc.oneof(
  fc.constant(on('08:00')),
  fc.integer({ min: SECONDS_PER_DAY / 4, max: 7 * SECONDS_PER_DAY }).map((seconds) => instant(on('00:00') + seconds * 1000)),
);

/** Seconds from the start: mostly within a working day, some before it, some days later. */
const distance: fc.Arbitrary<number> = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 0, max: 10 * 60 }).map((after) => after * 60) },
  { weight: 2, arbitrary: fc.integer({ min: 0, max: 10 * 3600 }) },
  { weight: 1, arbitrary: fc.integer({ min: -90 * 60, max: 0 }) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 4 * SECONDS_PER_DAY }) },
);
export const momentAround = (start: Instant): fc.Arbitrary<Instant> => distance.map((seconds) => instant(start + seconds * 1000));
export const momentAfter = (start: Instant): fc.Arbitrary<Instant> => distance.map((seconds) => instant(start + Math.abs(seconds) * 1000));

export const jointTemperature: fc.Arbitrary<Celsius> = fc.oneof(fc.constantFrom(15, 20, 30, 40, 60, 65).map(celsius), fc.integer({ min: 20, max: 900 }).map((tenths) => celsius(tenths / 10)));
export const heaterOf = fc.constantFrom(...HEATERS);

export const readingAt = (at: fc.Arbitrary<Instant>) => fc.record({ kind: fc.constant('reading' as const), at, value: jointTemperature });
export const lampSetAt = (at: fc.Arbitrary<Instant>) => fc.record({ kind: fc.constant('lamp-set' as const), at, setting: fc.constantFrom(30, 35, 55, 60).map(celsius), heater: heaterOf });
const plainEventAt = (at: fc.Arbitrary<Instant>) => fc.record({ kind: fc.constantFrom('lamp-on' as const, 'lamp-off' as const, 'lamp-found-off' as const, 'closing' as const), at });

export const heatEventAt = (at: fc.Arbitrary<Instant>): fc.Arbitrary<HeatEvent> =>
  fc.oneof({ weight: 4, arbitrary: readingAt(at) }, { weight: 2, arbitrary: lampSetAt(at) }, { weight: 3, arbitrary: plainEventAt(at) });

/** Two things at the same moment have no order that anybody could rely on. */
export function inOrder<Event extends { readonly at: Instant }>(events: readonly Event[]): Event[] {
  const sorted = [...events].sort((a, b) => a.at - b.at);
  return sorted.filter((event, index) => event.at !== sorted[index + 1]?.at);
}

export type AirGiven = Omit<AirInput, 'start' | 'periods'>;

export const airReadingAt = (at: fc.Arbitrary<Instant>): fc.Arbitrary<AirReading> =>
  fc.record({ at, value: fc.integer({ min: 2, max: 38 }).map(celsius), humidity: fc.option(fc.integer({ min: 0, max: 100 })) });

export const airGiven = (start: Instant): fc.Arbitrary<AirGiven> =>
  fc.record({ readings: fc.array(airReadingAt(momentAround(start)), { maxLength: 4 }).map(inOrder), usual: fc.constantFrom(null, celsius(20)), night: fc.constantFrom(null, celsius(12), celsius(20)), closedDays: fc.constantFrom(null, celsius(5), celsius(16)) });

export const airOf = (start: Instant, given: AirGiven): AirStep[] => airSteps({ start, periods: PERIODS, ...given });

/** A joint's past and what its air was made of. */
export interface RandomPast {
  readonly history: JointHistory;
  readonly given: AirGiven;
}

export const randomPast: fc.Arbitrary<RandomPast> = anyStart.chain((start) =>
  fc
    .record({ heat: fc.array(heatEventAt(momentAround(start)), { maxLength: 8 }).map(inOrder), given: airGiven(start), depthMillimetres: fc.option(fc.integer({ min: 1, max: 9 })) })
    .map(({ heat, given, depthMillimetres }) => ({ given, history: { start, heat, depthMillimetres, air: airOf(start, given) } })),
);

export const randomHistory: fc.Arbitrary<JointHistory> = randomPast.map((past) => past.history);

/** What is believed about the lamp after each event. */
export function lampBeliefs(heat: readonly HeatEvent[]): LampState[] {
  let state = NO_HEAT;
  return heat.map((event) => {
    state = afterHeatEvent(state, event);
    return state.lamp;
  });
}
