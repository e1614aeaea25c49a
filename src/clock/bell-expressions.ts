import type { OpeningHours, Shop } from '../repair/shop.js';

export interface Bell {
  readonly bell: 'opening' | 'closing';
  /** Minute, hour and weekdays for a cron library, in the shop's zone. */
  readonly expression: string;
}

const MINUTES_PER_DAY = 1440;
const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const;

/** When the shop's bells ring: days that open (or close) at the same time share one line. */
export function bellExpressions(shop: Pick<Shop, 'hours'>): Bell[] {
  return [...bells(shop, 'opening', (hours) => hours.opens), ...bells(shop, 'closing', (hours) => hours.closes)];
}

function bells(shop: Pick<Shop, 'hours'>, bell: Bell['bell'], minuteOf: (hours: OpeningHours) => number): Bell[] {
  const days = new Map<string, number[]>();
  for (const weekday of WEEKDAYS) {
    const hours = shop.hours[weekday];
    if (hours === null) continue;
    const minute = minuteOf(hours);
    // Closing at 24:00 is 0:00 of the day after; a week of cron begins with Sunday as 0.
    const day = (weekday + Math.floor(minute / MINUTES_PER_DAY)) % 7;
    const time = `${minute % 60} ${Math.floor(minute / 60) % 24}`;
    days.set(time, [...(days.get(time) ?? []), day]);
  }
  return [...days].map(([time, list]) => ({ bell, expression: `${time} * * ${list.toSorted().join(',')}` }));
}
