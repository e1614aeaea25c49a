import ICAL from 'ical.js';
import { expect } from 'vitest';
import { z } from 'zod';
import { calendarLine, calendarText } from '../../src/record/calendar-text.js';
import { everyCheck, kind } from '../support/reference-checks.js';

/** RFC 5545 sections 3.1 (folding) and 3.3.11 (escaping, from memory); RFC 7986 section 5.7 (refresh interval). Read back with ical.js. */
const octets = (text: string): number => new TextEncoder().encode(text).length;
const unfolded = (text: string): string => text.replace(/\r\n[ \t]/g, '');

/** One property as a stranger's library reads it out of our line. */
function readBack(line: string): unknown {
  return ICAL.Component.fromString(`BEGIN:VEVENT\r\n${line}END:VEVENT\r\n`).getFirstPropertyValue('summary');
}

everyCheck('calendar-text', [
  kind(/^ical-esc-/, z.object({ text: z.string() }), z.string(), ({ text }, expected) => {
    expect(calendarText(text)).toBe(expected);
    expect(readBack(calendarLine(`SUMMARY:${calendarText(text)}`))).toBe(text);
  }),
  // Folding is not unique: the octets of the check are those of one valid folding, ours fills the first line as far.
  kind(/^ical-fold$/, z.object({ line: z.string() }), z.object({ one_valid_folding: z.string() }), ({ line }, expected) => {
    const folded = calendarLine(line);
    const physical = folded.split('\r\n');
    expect(physical.pop()).toBe('');
    expect(physical.length).toBeGreaterThan(1);
    expect(physical.filter((one) => octets(one) > 75)).toEqual([]);
    expect(folded).not.toContain('\uFFFD');
    expect(unfolded(folded)).toBe(`${line}\r\n`);
    expect(unfolded(folded)).toBe(`${unfolded(expected.one_valid_folding)}\r\n`);
  }),
  kind(/^ical-feed$/, z.object({ feed: z.string() }), z.object({ dtstart: z.string(), unix: z.number(), summary: z.string(), refresh: z.string() }), ({ feed }, expected) => {
    const ours = unfolded(feed)
      .trimEnd()
      .split('\r\n')
      .map((line) => calendarLine(line.startsWith('SUMMARY:') ? `SUMMARY:${calendarText(expected.summary)}` : line))
      .join('');
    expect(unfolded(ours)).toBe(unfolded(feed));
    const calendar = ICAL.Component.fromString(ours);
    const event = new ICAL.Event(calendar.getFirstSubcomponent('vevent') ?? undefined);
    expect([event.startDate.toICALString(), event.startDate.toUnixTime(), event.summary]).toEqual([expected.dtstart.replace(/[-:]/g, ''), expected.unix, expected.summary]);
    expect(calendar.getFirstProperty('refresh-interval')?.getFirstValue()?.toString()).toBe(expected.refresh);
  }),
]);
