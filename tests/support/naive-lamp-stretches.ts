import { afterHeatEvent, NO_HEAT, type HeatState } from '../../src/cure/heat.js';
import type { HeatEvent, LampStretch } from '../../src/cure/history.js';
import { earlier, type Instant } from '../../src/cure/units.js';

interface Ended extends LampStretch {
  readonly to: Instant;
}

/** When the lamp was on by the rules word for word: whenever it is found off, all stretches are gone through. */
export function naiveLampStretches(events: readonly HeatEvent[]): LampStretch[] {
  let state: HeatState = NO_HEAT;
  let ended: Ended[] = [];
  let open: { readonly from: Instant; readonly setting: LampStretch['setting']; readonly heater: LampStretch['heater'] } | null = null;
  for (const event of events) {
    const before = state;
    state = afterHeatEvent(state, event);
    if (open !== null && (state.lamp !== 'on' || state.setting !== before.setting || state.heater !== before.heater || before.lamp !== 'on')) {
      if (event.at > open.from) ended.push({ ...open, to: event.at });
      open = null;
    }
    if (event.kind === 'lamp-found-off' && before.lamp !== 'off' && before.lastSign !== null) ended = cutAt(ended, before.lastSign);
    if (state.lamp === 'on' && open === null) open = { from: event.at, setting: state.setting, heater: state.heater };
  }
  return open === null ? ended : [...ended, { ...open, to: null }];
}

const cutAt = (stretches: readonly Ended[], end: Instant): Ended[] =>
  stretches.flatMap((stretch) => (stretch.from >= end ? [] : [{ ...stretch, to: earlier(stretch.to, end) }]));
