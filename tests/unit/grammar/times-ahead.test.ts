import { describe, expect, test } from 'vitest';
import { instant, type Instant } from '../../../src/cure/units.js';
import { readLine } from '../../../src/grammar/read-line.js';
import { SHOP } from './line-file.js';
import { toldProblem } from './told.js';

const at = (iso: string): Instant => instant(Date.parse(iso));

function readyBy(time: string, now: string, zone = 'Europe/London'): Instant | string {
  const read = readLine(`when start 501 P1 ready ${time}`, { ...SHOP, now: at(now), zone });
  if (!read.ok) return toldProblem(read.misread);
  return read.command.kind === 'latest-start' ? read.command.readyBy : read.command.kind;
}

function from(time: string, now: string): Instant | string | null {
  const read = readLine(`what if 501 lamp 65 ${time}`, { ...SHOP, now: at(now) });
  if (!read.ok) return toldProblem(read.misread);
  return read.command.kind === 'what-if' ? read.command.from : read.command.kind;
}

describe('ready by', () => {
  test('a time of day is the next such time', () => {
    expect(readyBy('16:00', '2026-03-02T15:59Z')).toBe(at('2026-03-02T16:00Z'));
    expect(readyBy('16:00', '2026-03-02T16:01Z')).toBe(at('2026-03-03T16:00Z'));
  });

  test('the minute that runs has not gone', () => {
    expect(readyBy('16:00', '2026-03-02T16:00:40Z')).toBe(at('2026-03-02T16:00Z'));
  });

  test('a weekday is the next such day on which the time is still to come', () => {
    for (const [day, date] of [['mon', '03-02'], ['tue', '03-03'], ['wed', '03-04'], ['thu', '03-05'], ['fri', '03-06'], ['sat', '03-07'], ['sun', '03-08']] as const) {
      expect(readyBy(`${day} 16:00`, '2026-03-02T14:00Z')).toBe(at(`2026-${date}T16:00Z`));
    }
    expect(readyBy('mon 13:00', '2026-03-02T14:00Z')).toBe(at('2026-03-09T13:00Z'));
  });

  test('tomorrow is the day after in the shop, not in Greenwich', () => {
    expect(readyBy('tomorrow 12:00', '2026-03-02T11:30Z', 'Pacific/Auckland')).toBe(at('2026-03-03T23:00Z'));
  });

  test('morning or afternoon is never guessed', () => {
    expect(['4', '4:00', '7:30', 'fri 4', 'tomorrow 4:30'].map((time) => readyBy(time, '2026-03-02T14:00Z'))).toEqual(Array.from({ length: 5 }, () => 'morning or afternoon'));
  });

  test('ten and eleven are taken as they stand: the 24-hour clock has no clearer way to write them', () => {
    expect(readyBy('mon 10:00', '2026-03-03T14:00Z')).toBe(at('2026-03-09T10:00Z'));
    expect(readyBy('11:30', '2026-03-03T09:00Z')).toBe(at('2026-03-03T11:30Z'));
    expect(readyBy('mon 10 pm', '2026-03-03T14:00Z')).toBe(at('2026-03-09T22:00Z'));
  });

  test('what is over cannot be meant', () => {
    expect(['today 13:00', 'yesterday 16:00', '20 min ago', 'now'].map((time) => readyBy(time, '2026-03-02T14:00Z'))).toEqual(Array.from({ length: 4 }, () => 'a time still to come'));
  });

  test('of a time that comes twice, the first is meant', () => {
    expect(readyBy('01:30', '2026-10-24T20:00Z')).toBe(at('2026-10-25T00:30Z'));
  });

  test('a moment written in full is that moment', () => {
    expect(readyBy('2026-03-06T17:00:00+01:00', '2026-03-02T14:00Z')).toBe(at('2026-03-06T16:00Z'));
    expect(readyBy('2026-03-06T17:00', '2026-03-02T14:00Z', 'Europe/Madrid')).toBe(at('2026-03-06T16:00Z'));
  });
});

describe('supposed from', () => {
  test('nothing said is nothing', () => {
    expect(from('', '2026-03-02T14:00Z')).toBe(null);
  });

  test('the nearest such time to come, of 2:30 the half that comes first', () => {
    expect(from('from 13:00', '2026-03-02T14:00Z')).toBe(at('2026-03-03T13:00Z'));
    expect(from('from 2:30', '2026-03-02T14:00Z')).toBe(at('2026-03-02T14:30Z'));
    expect(from('from 2:30', '2026-03-02T15:00Z')).toBe(at('2026-03-03T02:30Z'));
  });

  test('now, or minutes ago', () => {
    expect(from('now', '2026-03-02T14:00Z')).toBe(at('2026-03-02T14:00Z'));
    expect(from('from 5 min ago', '2026-03-02T14:00Z')).toBe(at('2026-03-02T13:55Z'));
  });

  test('of a time that comes twice, the second is meant', () => {
    expect(from('from 01:30', '2026-10-24T20:00Z')).toBe(at('2026-10-25T01:30Z'));
  });
});
