import type { AirStep } from '../../src/cure/air.js';
import { afterHeatEvent, NO_HEAT, type HeatState } from '../../src/cure/heat.js';
import type { HeatEvent, JointHistory, JointStep } from '../../src/cure/history.js';
import type { BetweenReadings } from '../../src/cure/heat-stretches.js';
import { colder, earlier, type Celsius, type Instant } from '../../src/cure/units.js';

interface Stretch {
  readonly from: Instant;
  readonly reading: Celsius | null;
  readonly cap: Celsius | null;
  readonly between: boolean;
}

/** The joint's temperature by the rules word for word: every event goes over all stretches, every edge over all stretches and all air. */
export function naiveJointSteps(history: JointHistory, maximum: Celsius | null, between: BetweenReadings = 'colder'): JointStep[] {
  const stretches = heatStretches(history.heat, history.start, between);
  const edges = new Set<Instant>([history.start]);
  for (const stretch of stretches) edges.add(stretch.from);
  for (const step of history.air) edges.add(step.from);
  const steps: JointStep[] = [];
  for (const from of [...edges].filter((edge) => edge >= history.start).sort((a, b) => a - b)) {
    const step = stepAt(from, stretches, history.air, maximum);
    const last = steps.at(-1);
    if (last === undefined || last.temperature !== step.temperature || last.source !== step.source) steps.push(step);
  }
  return steps;
}

function heatStretches(events: readonly HeatEvent[], start: Instant, between: BetweenReadings): Stretch[] {
  let state: HeatState = NO_HEAT;
  const begin = earlier(start, events[0]?.at ?? start);
  let stretches: Stretch[] = [{ from: begin, reading: null, cap: null, between: false }];
  let capsFrom = begin;
  let lastRead: Celsius | null = null;
  for (const event of events) {
    const before = state;
    state = afterHeatEvent(state, event);
    if (event.kind === 'lamp-found-off' && before.lamp !== 'off') {
      capsFrom = before.lastSign ?? begin;
      stretches = withoutHeatSince(stretches, capsFrom);
    }
    if (event.kind === 'reading') lastRead = event.value;
    if (event.kind === 'closing') lastRead = null;
    if (event.kind === 'reading' && between === 'colder') stretches = capped(stretches, capsFrom, event.value);
    stretches.push({ from: event.at, reading: state.counted, cap: state.counted === null ? lastRead : null, between: false });
    if (event.kind === 'reading' || event.kind === 'closing' || changesRegime(before, state)) capsFrom = event.at;
  }
  return stretches;
}

const changesRegime = (before: HeatState, after: HeatState): boolean =>
  before.lamp !== after.lamp && (after.lamp === 'off' || (before.lamp !== 'never' && after.lamp === 'on'));

function capped(stretches: readonly Stretch[], since: Instant, value: Celsius): Stretch[] {
  return stretches.map((stretch) => (stretch.from < since ? stretch : { ...stretch, cap: lowest(stretch.cap, value), between: stretch.reading !== null }));
}

const withoutHeatSince = (stretches: readonly Stretch[], since: Instant): Stretch[] =>
  stretches.map((stretch) => (stretch.from < since || stretch.reading === null ? stretch : { ...stretch, reading: null, cap: lowest(stretch.cap, stretch.reading), between: false }));

function stepAt(at: Instant, stretches: readonly Stretch[], air: readonly AirStep[], maximum: Celsius | null): JointStep {
  const stretch = stretches.filter((one) => one.from <= at).at(-1);
  const around = air.filter((step) => step.from <= at).at(-1);
  if (stretch?.reading == null) {
    const temperature = around?.temperature ?? null;
    return { from: at, temperature: temperature === null ? null : lowest(stretch?.cap ?? null, temperature), source: around?.source ?? 'unknown air' };
  }
  if (maximum !== null && stretch.reading > maximum) return { from: at, temperature: null, source: 'over the maximum' };
  return { from: at, temperature: lowest(stretch.cap, stretch.reading), source: stretch.between ? 'colder of two readings' : 'reading' };
}

const lowest = (cap: Celsius | null, value: Celsius): Celsius => (cap === null ? value : colder(cap, value));
