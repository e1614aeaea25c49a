import { describe, expect, test } from 'vitest';
import { instant, type Instant } from '../../../src/cure/units.js';
import { readLine } from '../../../src/grammar/read-line.js';
import type { When } from '../../../src/repair/commands.js';
import { SHOP } from './line-file.js';
import { toldProblem } from './told.js';

const at = (iso: string): Instant => instant(Date.parse(iso));

function whenOf(time: string, now: string, zone = 'Europe/London'): When | string {
  const read = readLine(`closed 501 ${time}`, { ...SHOP, now: at(now), zone });
  if (!read.ok) return toldProblem(read.misread);
  return read.command.kind === 'closed' ? read.command.when : read.command.kind;
}

const stated = (earliest: string, latest = earliest): When => ({ earliest: at(earliest), latest: at(latest), stated: true, confirmed: false });

describe('the day the clocks go back', () => {
  test('a time that came twice has both moments as its ends', () => {
    expect(whenOf('01:30', '2026-10-25T09:00Z')).toEqual(stated('2026-10-25T00:30Z', '2026-10-25T01:30Z'));
    expect(whenOf('2026-10-25T01:30', '2026-10-25T09:00Z')).toEqual(stated('2026-10-25T00:30Z', '2026-10-25T01:30Z'));
  });

  test('the second of the two cannot be meant before it has come', () => {
    expect(whenOf('01:30', '2026-10-25T00:50Z')).toEqual(stated('2026-10-25T00:30Z'));
  });

  test('minutes ago are real minutes', () => {
    expect(whenOf('2 h ago', '2026-10-25T02:00Z')).toEqual(stated('2026-10-25T00:00Z'));
  });
});

describe('the day the clocks go forward', () => {
  test('a time that did not come is asked about', () => {
    expect(whenOf('01:30', '2026-03-29T09:00Z')).toBe('a time that exists: the clocks went over it');
    expect(whenOf('2026-03-29T01:30', '2026-03-29T09:00Z')).toBe('a date and a time that exist');
  });

  test('in the afternoon the other reading of 1:30 is the only one', () => {
    expect(whenOf('1:30', '2026-03-29T14:00Z')).toEqual(stated('2026-03-29T12:30Z'));
  });

  test('minutes ago are real minutes', () => {
    expect(whenOf('2 h ago', '2026-03-29T02:00Z')).toEqual(stated('2026-03-29T00:00Z'));
  });
});

describe('twelve hours or twenty-four', () => {
  test('the nearest past of the two readings', () => {
    expect(whenOf('1:30', '2026-03-02T13:20Z')).toEqual(stated('2026-03-02T01:30Z'));
    expect(whenOf('1:30', '2026-03-02T13:30Z')).toEqual(stated('2026-03-02T13:30Z'));
    expect(whenOf('11:59', '2026-03-02T12:10Z')).toEqual(stated('2026-03-02T11:59Z'));
    expect(whenOf('9:20', '2026-03-02T22:00Z')).toEqual(stated('2026-03-02T21:20Z'));
  });

  test('a phone that is a minute ahead is not in the future', () => {
    expect(whenOf('1:41', '2026-03-02T13:40:30Z')).toEqual(stated('2026-03-02T13:41Z'));
  });

  test('a time still to come stays as typed, for the desk to ask', () => {
    expect(whenOf('11.40', '2026-03-02T11:05Z')).toEqual(stated('2026-03-02T11:40Z'));
    expect(whenOf('15:30', '2026-03-02T14:10Z')).toEqual(stated('2026-03-02T15:30Z'));
  });

  test('more than half a day ahead was yesterday', () => {
    expect(whenOf('23:50', '2026-03-02T00:10Z')).toEqual(stated('2026-03-01T23:50Z'));
    expect(whenOf('12:10', '2026-03-02T00:10Z')).toEqual(stated('2026-03-02T12:10Z'));
    expect(whenOf('12:11', '2026-03-02T00:10Z')).toEqual(stated('2026-03-01T12:11Z'));
  });

  test('on another day nothing tells morning from afternoon', () => {
    expect(whenOf('yesterday 4:30', '2026-03-02T09:00Z')).toBe('morning or afternoon');
    expect(whenOf('yesterday 10:30', '2026-03-02T09:00Z')).toEqual(stated('2026-03-01T10:30Z'));
    expect(whenOf('yesterday 4:30 pm', '2026-03-02T09:00Z')).toEqual(stated('2026-03-01T16:30Z'));
  });
});

describe('days', () => {
  test('a weekday is the latest such day on which the time is past', () => {
    expect(whenOf('mon 13:00', '2026-03-02T14:00Z')).toEqual(stated('2026-03-02T13:00Z'));
    expect(whenOf('mon 15:00', '2026-03-02T14:00Z')).toEqual(stated('2026-02-23T15:00Z'));
    for (const [day, date] of [['tue', '02-24'], ['wed', '02-25'], ['thu', '02-26'], ['fri', '02-27'], ['sat', '02-28'], ['sun', '03-01']] as const) {
      expect(whenOf(`${day} 16:00`, '2026-03-02T14:00Z')).toEqual(stated(`2026-${date}T16:00Z`));
    }
  });

  test('yesterday is the day before in the shop, not in Greenwich', () => {
    expect(whenOf('yesterday 23:00', '2026-03-02T11:30Z', 'Pacific/Auckland')).toEqual(stated('2026-03-02T10:00Z'));
  });
});

test('without a time it is now, and not stated', () => {
  const now = at('2026-03-02T14:10Z');
  expect(whenOf('', '2026-03-02T14:10Z')).toEqual({ earliest: now, latest: now, stated: false, confirmed: false });
  expect(whenOf('now', '2026-03-02T14:10Z')).toEqual({ earliest: now, latest: now, stated: true, confirmed: false });
});

test('yes behind a time confirms it; in front of it, it is an answer', () => {
  expect(whenOf('at 2026-03-02T11:40Z yes', '2026-03-02T14:10Z')).toEqual({ ...stated('2026-03-02T11:40Z'), confirmed: true });
  expect(whenOf('yes at 11:40', '2026-03-02T14:10Z')).toBe('one thing at a time');
});

test('a zone that does not exist is no reason to throw', () => {
  expect(whenOf('13:40', '2026-03-02T14:10Z', 'Nowhere/None')).toBe('a time that exists: the clocks went over it');
});
