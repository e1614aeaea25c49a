import { describe, expect, it } from 'vitest';
import { readPracticeSetting } from '../../../src/clock/practice-setting.js';

const ZONE = 'Europe/Berlin';

describe('the setting of the practice clock', () => {
  it.each([
    ['2026-03-02T07:00', '2026-03-02T06:00:00.000Z', null],
    [' 2026-07-02T07:00 ', '2026-07-02T05:00:00.000Z', null],
    ['2026-03-02T07:00/x600', '2026-03-02T06:00:00.000Z', 600],
    ['2026-03-02T07:00/x0.5', '2026-03-02T06:00:00.000Z', 0.5],
    ['2026-03-02T07:00/x10000', '2026-03-02T06:00:00.000Z', 10_000],
    ['2026-03-29T03:00', '2026-03-29T01:00:00.000Z', null],
  ])('%s is shop time', (text, utc, speed) => {
    expect(readPracticeSetting(text, ZONE)).toEqual({ ok: true, start: { startsAt: Date.parse(utc), speed } });
  });

  it.each([
    ['', 'is not a start for the practice clock. Write 2026-03-02T07:00 (stands)'],
    ['tomorrow', '"tomorrow" is not a start'],
    ['2026-03-02', 'is not a start'],
    ['2026-03-02T07:00Z', 'is not a start'],
    ['2026-03-02T07:00/600', 'is not a start'],
    ['2026-03-02T07:00/x-1', 'is not a start'],
    ['2026-02-30T07:00', '2026-02-30T07:00 is not a date and time in Europe/Berlin'],
    ['2026-03-02T25:00', '2026-03-02T25:00 is not a date and time in Europe/Berlin'],
    // The European Union puts its clocks forward at 01:00 UTC on the last Sunday of March (Directive 2000/84/EC).
    ['2026-03-29T02:30', '2026-03-29T02:30 does not exist in Europe/Berlin'],
    ['2026-03-02T07:00/x0', 'cannot run 0 times as fast'],
    ['2026-03-02T07:00/x10001', 'cannot run 10001 times as fast'],
  ])('%j is refused', (text, problem) => {
    const setting = readPracticeSetting(text, ZONE);
    expect(setting.ok ? 'accepted' : setting.problem).toContain(problem);
  });
});
