import { afterHeatEvent, NO_HEAT, type HeatState } from './heat.js';
import type { HeatEvent, LampStretch } from './history.js';
import { earlier, type Instant } from './units.js';

interface Ended extends LampStretch {
  readonly to: Instant;
}

/**
 * When the lamp was on, and at which setting, as far as it is believed: found off, it counts as off
 * since the last sign of life, also when closing time lies between; at closing time it counts as off unless somebody stays.
 */
export function lampStretches(events: readonly HeatEvent[]): LampStretch[] {
  let state: HeatState = NO_HEAT;
  const ended: Ended[] = [];
  let open: { readonly from: Instant; readonly setting: LampStretch['setting']; readonly heater: LampStretch['heater'] } | null = null;
  for (const event of events) {
    const before = state;
    state = afterHeatEvent(state, event);
    if (open !== null && (state.lamp !== 'on' || state.setting !== before.setting || state.heater !== before.heater || before.lamp !== 'on')) {
      if (event.at > open.from) ended.push({ ...open, to: event.at });
      open = null;
    }
    if (event.kind === 'lamp-found-off' && before.lamp !== 'off' && before.lastSign !== null) cutAt(ended, before.lastSign);
    if (state.lamp === 'on' && open === null) open = { from: event.at, setting: state.setting, heater: state.heater };
  }
  return open === null ? ended : [...ended, { ...open, to: null }];
}

/** Stretches follow one another, so only the last ones reach beyond the cut. */
function cutAt(stretches: Ended[], end: Instant): void {
  while ((stretches.at(-1)?.from ?? -Infinity) >= end) stretches.pop();
  const last = stretches.pop();
  if (last !== undefined) stretches.push({ ...last, to: earlier(last.to, end) });
}
