import { afterHeatEvent, NO_HEAT, type HeatState } from './heat.js';
import type { HeatEvent } from './history.js';
import type { TemperaturePoint } from './temperature-point.js';
import { colder, earlier, type Celsius, type Instant } from './units.js';

/** A stretch in which heat is believed to work on the joint without a break and at one setting of one heater. */
export interface HeatedSpan {
  readonly from: Instant;
  /** null: goes on. */
  readonly to: Instant | null;
  readonly setting: Celsius | null;
  /** Where the joint goes until somebody reads it, or null where no setting is known. */
  readonly towards: Celsius | null;
  /** True from a switch-on; false where a reading is the first that is known of the heat. */
  readonly fromSwitchOn: boolean;
  /** Whether what was read before still speaks for the joint; not so where a lamp was turned down. */
  readonly keepsReading: boolean;
  /** The readings that count, in order; none before `from`. */
  readonly readings: readonly TemperaturePoint[];
}

interface Ended extends HeatedSpan {
  readonly to: Instant;
}

/** Grows in place: a joint may be read many times under one lamp. */
interface Open extends HeatedSpan {
  readonly readings: TemperaturePoint[];
}

/**
 * When heat worked on the joint, with the same belief as the safe side: off at a switch-off and at closing time, and
 * when it is found off, off since the last sign of life.
 */
export function heatedSpans(events: readonly HeatEvent[]): HeatedSpan[] {
  let state: HeatState = NO_HEAT;
  let ended: Ended[] = [];
  let open: Open | null = null;
  for (const event of events) {
    const before = state;
    state = afterHeatEvent(state, event);
    if (open !== null && endsSpan(event, before)) {
      ended.push({ ...open, to: event.at });
      open = null;
    }
    if (event.kind === 'lamp-found-off' && before.lamp !== 'off' && before.lastSign !== null) ended = cutAt(ended, before.lastSign);
    if (open === null && beginsSpan(event, state)) open = spanFrom(event, before, state);
    if (open !== null && event.kind === 'reading' && state.counted !== null) open.readings.push({ at: event.at, temperature: event.value });
  }
  return open === null ? ended : [...ended, open];
}

function endsSpan(event: HeatEvent, before: HeatState): boolean {
  switch (event.kind) {
    case 'lamp-off':
    case 'lamp-found-off':
    case 'closing':
      return true;
    case 'lamp-set':
      return before.lamp !== 'on' || before.setting !== event.setting || before.heater !== event.heater;
    case 'lamp-on':
      return before.lamp !== 'on';
    case 'reading':
      return false;
  }
}

const beginsSpan = (event: HeatEvent, after: HeatState): boolean =>
  event.kind === 'lamp-set' || event.kind === 'lamp-on' || (event.kind === 'reading' && after.counted !== null);

function spanFrom(event: HeatEvent, before: HeatState, { setting, heater, counted, lastCounted }: HeatState): Open {
  const knownHere = before.setting === setting && before.heater === heater && lastCounted !== null;
  const towards = setting === null ? null : knownHere ? colder(lastCounted, setting) : setting;
  return { from: event.at, to: null, setting, towards, fromSwitchOn: event.kind !== 'reading', keepsReading: counted !== null, readings: [] };
}

const cutAt = (spans: readonly Ended[], end: Instant): Ended[] => spans.flatMap((span) => (span.from >= end ? [] : [{ ...span, to: earlier(span.to, end) }]));
