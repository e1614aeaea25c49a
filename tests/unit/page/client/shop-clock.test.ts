import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ShopClock } from '../../../../src/chat/page/client/shop-clock.js';
import type { Language } from '../../../../src/repair/shop.js';
import { phrasesOf } from '../../../support/page-phrases.js';

const NOON = Date.parse('2026-03-03T12:00:00Z');
const MINUTE = 60_000;

beforeEach(() => { vi.useFakeTimers({ toFake: ['performance', 'Date'] }); });
afterEach(() => { vi.useRealTimers(); });

const clockAt = (now: number, practice: 'standing' | 'running' | null = null, zone = 'UTC', language: Language = 'en'): ShopClock => {
  const clock = new ShopClock(phrasesOf(language));
  clock.hear({ now, practice, zone });
  return clock;
};

test('real and running clocks go on between two looks, a standing one stands', () => {
  const clocks = [clockAt(NOON), clockAt(NOON, 'running'), clockAt(NOON, 'standing')];
  vi.advanceTimersByTime(90_000);
  expect(clocks.map((clock) => clock.now())).toEqual([NOON + 90_000, NOON + 90_000, NOON]);
});

test('times are the shop\u2019s own, wherever the phone thinks it is', () => {
  expect(clockAt(NOON, null, 'America/Denver').time(NOON)).toBe('05:00');
  expect(clockAt(NOON, null, 'Asia/Kolkata').time(NOON)).toBe('17:30');
  expect(clockAt(NOON).time(Date.parse('2026-03-03T00:05:00Z'))).toBe('00:05');
  expect(clockAt(NOON, null, 'Pacific/Auckland').day(NOON)).toBe('Wed 4 Mar');
});

test('another day is named', () => {
  const clock = clockAt(NOON);
  expect(clock.weekdayUnlessToday(NOON + 11 * 60 * MINUTE)).toBe('');
  expect(clock.weekdayUnlessToday(NOON + 12 * 60 * MINUTE)).toBe('Wed');
});

test.each([
  [43 * MINUTE, 'in 43 min'],
  [42 * MINUTE + 1, 'in 43 min'],
  [1, 'in 1 min'],
  [0, 'now'],
  [-MINUTE + 1, 'now'],
  [-20 * MINUTE - 59_999, '20 min ago'],
  [60 * MINUTE, 'in 1 h'],
  [125 * MINUTE, 'in 2 h 5'],
  [48 * 60 * MINUTE, 'in 2 days'],
  [-72 * 60 * MINUTE, '3 days ago'],
])('%i ms from now reads %s: never sooner and never longer ago than it is', (from, words) => {
  expect(clockAt(NOON).distance(NOON + from)).toBe(words);
});

test.each([
  ['de', 'Di. 3. März', 'Mi', ['in 43 min', 'vor 20 min', 'in 2 h 5', 'jetzt', 'in 2 Tagen', 'vor 3 Tagen']],
  ['es', 'mar 3 mar', 'mié', ['en 43 min', 'hace 20 min', 'en 2 h 5', 'ahora', 'en 2 días', 'hace 3 días']],
] as const)('days and lengths of time in %s', (language, day, weekday, words) => {
  const clock = clockAt(NOON, null, 'UTC', language);
  expect([clock.day(NOON), clock.weekdayUnlessToday(NOON + 12 * 60 * MINUTE)]).toEqual([day, weekday]);
  expect([43, -20, 125, 0, 48 * 60, -72 * 60].map((minutes) => clock.distance(NOON + minutes * MINUTE))).toEqual(words);
});
