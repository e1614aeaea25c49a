import type { Heater, HeatEvent } from './history.js';
import { celsius, minutes, plus, type Celsius, type Instant } from './units.js';

export type LampState = 'never' | 'on' | 'off' | 'unclear';

/** What is believed about the heat on a joint after an event. */
export interface HeatState {
  readonly lamp: LampState;
  readonly setting: Celsius | null;
  /** What the setting is of. */
  readonly heater: Heater;
  /** The reading that counts provisionally, or null: only air counts. */
  readonly counted: Celsius | null;
  /** The last reading that counted, also after the heat was lost. */
  readonly lastCounted: Celsius | null;
  /** Last moment at which the heat was seen working. */
  readonly lastSign: Instant | null;
  /** When it was last found off, or null. */
  readonly foundOff: Instant | null;
}

export const NO_HEAT: HeatState = { lamp: 'never', setting: null, heater: 'lamp', counted: null, lastCounted: null, lastSign: null, foundOff: null };

/**
 * A joint read at most this much colder than before the heat was found off is warm because the heat is back;
 * anything colder is stored heat on its way down, which never counts (errs late).
 */
const SAME_HEAT = 2;
/** So soon after a lamp was found off, a warm joint is stored heat: somebody has to say that the lamp is on again. */
const STILL_WARM = minutes(10);

/** The belief after one event. A reading while the lamp is known to be off is stored heat and does not count. */
export function afterHeatEvent(state: HeatState, event: HeatEvent): HeatState {
  switch (event.kind) {
    case 'lamp-set':
      return { ...state, lamp: 'on', setting: event.setting, heater: event.heater, counted: keepsReading(state, event) ? state.counted : null, lastSign: event.at };
    case 'lamp-on':
      return { ...state, lamp: 'on', counted: state.lamp === 'on' || state.lamp === 'never' ? state.counted : null, lastSign: event.at };
    case 'lamp-off':
      return { ...state, lamp: 'off', counted: null };
    case 'lamp-found-off':
      return { ...state, lamp: 'unclear', counted: null, foundOff: event.at };
    case 'closing':
      return { ...state, lamp: state.lamp === 'never' ? 'never' : state.lamp === 'off' ? 'off' : 'unclear', counted: null };
    case 'reading':
      return afterReading(state, event.at, event.value);
  }
}

function afterReading(state: HeatState, at: Instant, value: Celsius): HeatState {
  if (state.lamp === 'off') return state;
  if (state.lamp === 'unclear') {
    const cooling = state.foundOff !== null && at < plus(state.foundOff, STILL_WARM);
    const back = !cooling && state.lastCounted !== null && value >= celsius(state.lastCounted - SAME_HEAT);
    return back ? { ...state, lamp: 'on', counted: value, lastCounted: value, lastSign: at } : state;
  }
  return { ...state, counted: value, lastCounted: value, lastSign: at };
}

/** Turned down, or a pad instead of the lamp: what was read before says nothing about the time after. */
function keepsReading(state: HeatState, { setting, heater }: { readonly setting: Celsius; readonly heater: Heater }): boolean {
  if (state.setting !== null && state.heater !== heater) return false;
  if (state.lamp === 'off' || state.lamp === 'unclear') return false;
  return state.setting === null || setting >= state.setting;
}
