import type { HeatEvent } from '../cure/history.js';
import { colder, type Celsius } from '../cure/units.js';

const ONE_MINUTE_MS = 60_000;

/**
 * Two readings within one minute are two places on one joint, and the colder place decides: the warmer one, if it came
 * second, counts as the colder. One over `maximum` stays what it is: that is harm and no question of strength.
 */
export function colderInOneMinute(events: readonly HeatEvent[], maximum: Celsius | null): HeatEvent[] {
  const told: HeatEvent[] = [];
  for (const event of events) {
    const before = told.at(-1);
    const together = event.kind === 'reading' && before?.kind === 'reading' && event.at - before.at < ONE_MINUTE_MS;
    const harm = event.kind === 'reading' && maximum !== null && event.value > maximum;
    told.push(together && !harm ? { ...event, value: colder(before.value, event.value) } : event);
  }
  return told;
}
