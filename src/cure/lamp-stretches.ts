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
  let ended: Ended[] = [];
  let open: { readonly from: Instant; readonly setting: LampStretch['setting'] } | null = null;
  for (const event of events) {
    const before = state;
    state = afterHeatEvent(state, event);
    if (open !== null && (state.lamp !== 'on' || state.setting !== before.setting || before.lamp !== 'on')) {
      if (event.at > open.from) ended.push({ ...open, to: event.at });
      open = null;
    }
    if (event.kind === 'lamp-found-off' && before.lamp !== 'off' && before.lastSign !== null) ended = cutAt(ended, before.lastSign);
    if (state.lamp === 'on' && open === null) open = { from: event.at, setting: state.setting };
  }
  return open === null ? ended : [...ended, { ...open, to: null }];
}

const cutAt = (stretches: readonly Ended[], end: Instant): Ended[] =>
  stretches.flatMap((stretch) => (stretch.from >= end ? [] : [{ ...stretch, to: earlier(stretch.to, end) }]));
