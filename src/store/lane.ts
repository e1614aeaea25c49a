import type { DeliveryTarget } from '../clerk/message.js';

const HOME = 'home';

/** Deliveries of one lane leave one after another; lanes do not wait for each other. */
export function laneOf(target: DeliveryTarget): string {
  switch (target.kind) {
    case 'job-thread':
    case 'home-channel':
      return HOME;
    case 'channel':
    case 'only-for':
      return target.channel;
  }
}
