import { describe, expect, it } from 'vitest';
import { personId } from '../../../src/repair/ids.js';
import type { Person, Shop } from '../../../src/repair/shop.js';
import { toText } from '../../../src/reply/to-text.js';
import { DeskDay } from '../../support/desk-day.js';

const person = (id: string, role: Person['role'], unit: Person['unit'] = null): Person => ({ id: personId(id), name: id.charAt(0).toUpperCase() + id.slice(1), role, chatId: null, language: 'en', unit });
const desk = (change: Partial<Shop> = {}): DeskDay => new DeskDay({ shifts: [], ...change });

describe('a lamp that was left on', () => {
  it('is asked about in the list until it is off, and says so', () => {
    const day = desk();
    day.says('tomek', '08:00', 'cure 501 K lamp 30 A');
    day.says('tomek', '09:01', 'hard');
    day.says('tomek', '09:02', 'up');
    day.says('tomek', '10:33', 'check 501 full hard');
    expect(day.told('ines', '10:34', 'lamps')).toContain('A 501 is done, still on? Last seen 09:02');
    expect(day.told('tomek', '10:35', 'off A')).toMatch(/^501 lamp off 10:35/);
    expect(day.told('ines', '10:36', 'lamps')).toContain('A free');
  });

  it('or until it heats another job, which nobody is asked about', () => {
    const day = desk();
    day.says('tomek', '08:00', 'cure 501 T1 lamp 50 A');
    day.says('tomek', '08:01', 'read 501 50');
    day.says('tomek', '08:20', 'hard 501');
    expect(day.told('ines', '08:21', 'lamps')).toContain('A 501 is done, still on?');
    expect(day.told('wren', '08:30', 'cure 502 P2 lamp 35 A')).toMatch(/^502 P2 closed 08:30, lamp A 35/);
    expect(day.told('ines', '08:31', 'lamps')).toMatch(/^A 502 35 °C till 09:50/);
  });

  it('that the book has on two jobs is asked about once an hour, not once for each', () => {
    const day = desk();
    day.says('tomek', '08:00', 'cure 501 P2 lamp 35 A');
    day.says('tomek', '08:00', 'cure 501 j2 P2 lamp 35 A');
    day.says('tomek', '08:10', 'cure 502 P2 lamp 35 A at 08:10 yes');
    day.at('09:18');
    expect(day.heard('still-on')).toEqual(['09:00 still-on tomek']);
    expect(toText(day.posts('still-on').at(-1)?.answer ?? day.says('tomek', '09:18', 'help'))).toMatch(/^501 j2, 502 still on\?/);
  });

  it('over two joints asks one question for both, and one answer counts for both', () => {
    const day = desk();
    day.says('tomek', '08:00', 'cure 501 P2 lamp 35 A');
    day.says('tomek', '08:20', 'cure 501 j2 P2 lamp 35 A');
    day.at('09:00');
    expect(day.heard('still-on')).toEqual(['09:00 still-on tomek']);
    expect(day.told('tomek', '09:01', 'on 501 lamp A')).toMatch(/on 09:01/);
    day.at('09:19');
    expect(day.heard('still-on')).toEqual(['09:00 still-on tomek']);
  });
});

describe('a lamp that is needed past closing', () => {
  it('is not noted until somebody stays or it is left to the air', () => {
    const day = desk();
    const asked = day.told('tomek', '15:58', 'start 430 p1 lamp 30');
    expect(asked).toMatch(/^430: lamp 30 °C would be needed until 18:38, the shop closes 17:00, and no lamp runs alone\. Who stays\? Nothing stored yet\./);
    expect(day.told('tomek', '15:58', 'who waits')).toBe('No car waits on a cure.');
    const [stay, air] = day.says('tomek', '15:58', 'start 430 p1 lamp 30').buttons;
    expect([stay?.label, air?.line]).toEqual(['I stay', 'cure 430 P1']);
    expect(day.told('tomek', '15:59', stay?.line ?? '')).toMatch(/^430 P1 closed 15:58, lamp 30 °C/);
    day.says('tomek', '16:20', 'read 430 30');
    expect(day.told('ines', '16:21', 'when 430')).toContain('Handling strength 18:');
  });

  it('is noted where the wait ends in time, or where people work on in the night', () => {
    expect(desk().told('tomek', '15:30', 'cure 501 P2 lamp 35')).toMatch(/^501 P2 closed/);
    expect(desk().told('tomek', '07:10', 'cure 501 P2 lamp 35')).toMatch(/^501 P2 closed/);
    expect(desk().told('tomek', '18:00', 'cure 501 P2 lamp 35')).toMatch(/^501: lamp 35 °C would be needed until 19:20, the shop is closed,/);
    const night = desk({ people: [person('ines', 'foreman'), person('bo', 'technician')], shifts: [{ name: 'late', days: [1, 2, 3, 4, 5, 6, 7], begins: 840, ends: 1320, people: [personId('bo')] }] });
    expect(night.told('bo', '16:30', 'cure 501 P2 lamp 35')).toMatch(/^501 P2 closed/);
  });
});

describe('a slip', () => {
  it('of two figures changed over in a new job is asked about; a number one higher is not', () => {
    const day = desk();
    for (const job of ['417', '421']) day.says('tomek', '08:00', `cure ${job} P1`);
    expect(day.told('tomek', '08:03', 'start 471 p1')).toMatch(/^No open job 471\. One of these, or a new one\?.*\n\[421\].*\n\[417\] cure 417 P1\n\[New 471\] cure 471 P1 at .* yes$/);
    expect(day.told('tomek', '08:04', 'start 422 p1')).toMatch(/^422 P1 closed/);
  });

  it('of a reading is put right with sorry, and both stay in the book', () => {
    const day = desk();
    day.says('tomek', '08:00', 'cure 421 P1 lamp 65');
    day.says('tomek', '08:30', 'read 421 88');
    expect(day.told('tomek', '08:31', 'sory 58')).toMatch(/^421 reading 58 °C, corrected from 88 °C\./);
    expect(day.told('ines', '08:32', 'when 421')).not.toContain('HELD');
    expect(day.told('ines', '08:33', 'why 421')).toContain('88 °C corrected to 58 °C by Tomek 08:31, both kept.');
    expect(day.told('tomek', '08:50', 'sorry 59')).toMatch(/type the right figure as a new entry|ago/);
  });

  it('of the air beside a start is no slip: both stand in one entry, and go with it', () => {
    const day = desk();
    expect(day.told('tomek', '08:55', 'paste 31 p1 air 27')).toMatch(/^31 P1 paste on 08:55\. Air 27 °C; .*\nClose the panel by 09:25 \(30 min at 27 °C\)/);
    expect(day.told('tomek', '08:56', 'undo')).toMatch(/^31 taken back: paste of 08:55/);
    expect(day.told('tomek', '08:57', 'paste 31 p1')).toContain('Close the panel by 09:57 (60 min at 20 °C)');
    expect(day.told('tomek', '09:00', 'closed 31 air 66')).toMatch(/66.*Nothing stored/);
    expect(day.told('tomek', '09:36', 'closed 31 air 66F')).toMatch(/^31 closed 09:36\. 39 of 60 min used\. Air 18\.9 °C/);
  });

  it('of a reading stays in `why` until the right figure is taken back as well, however often it was put right', () => {
    const day = desk();
    day.says('tomek', '08:00', 'cure 421 P1 lamp 65');
    day.says('tomek', '08:30', 'read 421 88');
    day.says('tomek', '08:31', 'sorry 58');
    day.says('tomek', '08:32', 'sorry 59');
    expect(day.told('ines', '08:33', 'why 421')).toContain('88 °C corrected to 58 °C by Tomek 08:31, both kept. 58 °C corrected to 59 °C by Tomek 08:32, both kept.');
    day.says('tomek', '08:34', 'undo');
    expect(day.told('ines', '08:35', 'why 421')).not.toContain('corrected');
  });

  it('of two things in one line is one question with a button for each', () => {
    const day = desk();
    expect(day.told('tomek', '08:55', 'paste 31 p1 read 19')).toMatch(/one thing at a time.*Nothing stored\.\n\[paste\] paste 31 P1\n\[read\] read 31 19$/);
  });
});

describe('what went along with a move', () => {
  it('is not undone by whoever said it first: they are told where it is', () => {
    const day = desk();
    day.says('tomek', '08:00', 'cure 7219 T1');
    day.says('tomek', '08:31', 'hard 7219');
    day.says('wren', '08:32', 'cure 7219 E1 j2');
    day.says('ines', '08:33', 'move 7219>7211');
    expect(day.told('wren', '08:34', 'undo')).toBe('Your entry went along to 7211 (moved 08:33 by Ines). Answer anew there, or Ines takes the move back. Nothing changed.');
    expect(day.told('ines', '08:35', 'undo')).toMatch(/taken back/);
    expect(day.told('wren', '08:36', 'undo')).toMatch(/^7219 taken back/);
  });
});

describe('somebody who reads °F in a °C shop', () => {
  const people = [person('ines', 'foreman'), person('pat', 'technician', 'F'), person('tomek', 'technician')];

  it('types °F, and is told both; others are told the shop\'s', () => {
    const day = desk({ people });
    expect(day.told('pat', '08:00', 'cure 501 P1 lamp 149')).toContain('lamp 149 °F (65 °C)');
    expect(day.told('pat', '08:20', 'read 501 149')).toContain('reading 149 °F (65 °C)');
    expect(day.told('tomek', '08:21', 'read 501 64')).toContain('reading 64 °C.');
    expect(day.told('pat', '08:22', 'air 68')).toContain('Air 68 °F (20 °C)');
    expect(day.told('pat', '08:23', 'lamp 501 60C')).toContain('140 °F (60 °C)');
    day.at('09:30');
    for (const post of day.posts('handling', 'still-on')) expect(JSON.stringify(post.answer)).not.toMatch(/[^(]\b\d+ °C/);
  });
});

describe('strangers who wanted to enter something', () => {
  it('stand in the foreman\'s lists until they are taken on or refused', () => {
    const day = desk();
    day.says('sam', '08:00', 'cure 501 P1');
    day.says('max', '08:01', 'cure 502 P1');
    expect(day.told('ines', '08:02', 'who waits')).toContain('Wants to enter things, for the foreman: Sam (`adopt sam` or `refuse sam`), Max (`adopt max` or `refuse max`).');
    expect(day.told('tomek', '08:02', 'who waits')).not.toContain('Wants to enter');
    expect(day.told('tomek', '08:03', 'refuse max')).toMatch(/Only the foreman/);
    expect(day.told('ines', '08:03', 'refuse max')).toMatch(/^Max is not taken on: may ask, enters nothing\./);
    day.at('Tue 07:31');
    expect(JSON.stringify(day.posts('bundle').at(-1)?.answer)).toMatch(/Wants to enter things/);
    expect(JSON.stringify(day.posts('bundle').at(-1)?.answer)).not.toMatch(/refuse max/);
    day.says('ines', 'Tue 07:40', 'adopt sam');
    expect(day.told('ines', 'Tue 07:41', 'who waits')).toBe('No car waits on a cure.');
    expect(day.told('ines', 'Tue 07:42', 'refuse tomek')).toMatch(/^Tomek is one of the shop's people/);
  });
});

describe('help', () => {
  it.each(['ines', 'tomek', 'wren', 'nobody'])('fits twelve lines for %s, whatever stands in the book', (who) => {
    const day = desk();
    const lines = (when: string): number => day.told(who, when, 'help').split('\n').length;
    const seen = [lines('07:40')];
    day.says('tomek', '08:00', 'paste 501 P1');
    seen.push(lines('08:01'));
    day.says('tomek', '08:10', 'cure 501 lamp 30');
    seen.push(lines('08:11'));
    day.says('tomek', '08:20', 'read 501 95');
    seen.push(lines('08:21'));
    day.says('ines', '08:22', 'begin 502 bonded-panel');
    seen.push(lines('08:23'));
    expect(Math.max(...seen)).toBeLessThanOrEqual(12);
  });
});
