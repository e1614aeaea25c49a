import type { DeliveryTarget } from './message.js';

export const HOME_LANE = 'home';

/** Everything that lands in the home channel shares one lane; any other channel has its own. */
export function laneOf(target: DeliveryTarget): string {
  switch (target.kind) {
    case 'job-thread':
    case 'home-channel':
      return HOME_LANE;
    case 'channel':
    case 'only-for':
      return target.channel;
  }
}
