import type { DeliveryTarget } from './message.js';

export const HOME_LANE = 'home';
export const EDIT_LANE = 'edits';

/** Everything that lands in the home channel shares one lane; any other channel has its own. Edits have theirs, so that none of them holds up a message. */
export function laneOf(target: DeliveryTarget): string {
  switch (target.kind) {
    case 'job-thread':
    case 'home-channel':
      return HOME_LANE;
    case 'channel':
    case 'only-for':
      return target.channel;
    case 'direct':
      return target.user;
    case 'edit':
    case 'thread-head':
      return EDIT_LANE;
  }
}
