import { DateTime } from 'luxon';
import { expect } from 'vitest';
import { z } from 'zod';
import { instant, minus, minutes, plus, type Instant } from '../../src/cure/units.js';
import { momentsOf } from '../../src/grammar/local-time.js';
import { clock } from '../../src/reply/compose/words.js';
import { exampleShop } from '../support/example-shop.js';
import { everyCheck, kind } from '../support/reference-checks.js';

/** IANA tz database 2025b through another program; ours computes with luxon on the ICU data of Node. */
const ONE_HOUR = minutes(60);
const LATER = instant(Date.UTC(2027, 0, 1));
const moment = z.iso.datetime().transform((text) => instant(Date.parse(text)));
const local = z.string().transform((text) => DateTime.fromISO(text, { setZone: true }));

/** What the shop reads, a day later. */
const shown = (at: Instant, zone: string): string => clock(at, { shop: exampleShop({ zone }), now: plus(at, minutes(48 * 60)) });
const offsetAt = (at: Instant, zone: string): string => DateTime.fromMillis(at, { zone }).toFormat('ZZ');

/** Every hour at whose end the offset differs from the one at its begin. */
function changes(zone: string): Instant[] {
  const found: Instant[] = [];
  for (let at = instant(Date.UTC(2026, 0, 1)); at < LATER; at = plus(at, ONE_HOUR)) {
    if (offsetAt(at, zone) !== offsetAt(plus(at, ONE_HOUR), zone)) found.push(at);
  }
  return found;
}

const timer = z.object({ zone: z.string(), start_local: z.string(), fold: z.number(), minutes: z.number().transform(minutes) });
const ends = z.object({ start_utc: moment, end_utc: moment, end_local: local });

everyCheck('clock-zones', [
  kind(/^tz-(?!trans-)/, timer, ends, ({ zone, start_local, fold, minutes: length }, expected) => {
    const { year, month, day, hour, minute } = DateTime.fromISO(start_local, { zone: 'utc' });
    const came = momentsOf({ year, month, day, hour, minute, second: 0 }, { now: LATER, zone, cards: new Map(), lamps: new Map(), pads: new Map(), openJobs: new Set(), procedures: new Map(), allows: () => true });
    const started = fold === 0 ? came?.earliest : came?.latest;
    expect(started).toBe(expected.start_utc);
    expect(plus(expected.start_utc, length)).toBe(expected.end_utc);
    expect(shown(expected.end_utc, zone)).toBe(expected.end_local.setLocale('en-GB').toFormat('ccc HH:mm'));
    expect(offsetAt(expected.end_utc, zone)).toBe(expected.end_local.toFormat('ZZ'));
  }),
  kind(/^tz-trans-/, z.object({ zone: z.string() }), z.array(z.tuple([moment, z.string(), z.string()])), ({ zone }, expected) => {
    const justBefore = (at: Instant): Instant => minus(at, minutes(1 / 60_000));
    expect(expected.map(([at]) => [at, offsetAt(justBefore(at), zone), offsetAt(at, zone)])).toEqual(expected);
    // None of them lies within an hour, but for Lord Howe's half hour: the hour that ends in or with the change.
    expect(changes(zone)).toEqual(expected.map(([at]) => instant(Math.floor((at - 1) / 3_600_000) * 3_600_000)));
    for (const [at, , after] of expected) expect(shown(at, zone)).toBe(DateTime.fromMillis(at, { zone: `UTC${after}`, locale: 'en-GB' }).toFormat('ccc HH:mm'));
  }),
]);
