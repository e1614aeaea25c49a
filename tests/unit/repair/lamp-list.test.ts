import { describe, expect, it } from 'vitest';
import { runningOutlooks } from '../../../src/repair/book.js';
import { lampName } from '../../../src/repair/ids.js';
import { composeLamps } from '../../../src/reply/compose/lamps.js';
import { toText } from '../../../src/reply/to-text.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

function lamps(shift: Shift, when: string): string[] {
  shift.until(when);
  const now = on(when);
  return toText(composeLamps(runningOutlooks(shift.situation('ines', now).book, shift.shop, shift.jobs()), { shop: shift.shop, now })).split('\n');
}

describe('the list of lamps', () => {
  it('names every lamp and pad: where it is, how hot and till when, or that it is free', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '7203', card: 'P1', setting: warm(65), lamp: lampName('A') });
    shift.enters('tomek', '09:05', { kind: 'read', job: '7203', value: warm(65) });
    const due = shift.due('7203', 'handling');
    expect(lamps(shift, '09:10').slice(0, 4)).toEqual([`A 7203 65 °C till ${due}`, 'B free', 'M1 free', 'M2 free']);
  });

  it('says that the shop closes first, unless somebody stays', () => {
    const shift = new Shift();
    shift.enters('tomek', '14:00', { kind: 'cure', job: '7203', card: 'P1', setting: warm(30), lamp: lampName('A') });
    shift.enters('tomek', '15:10', { kind: 'read', job: '7203', value: warm(30) });
    expect(lamps(shift, '15:20')[0]).toBe('A 7203 30 °C, off at 17:00 unless somebody stays');
    shift.enters('wren', '15:30', { kind: 'stay', job: '7203' });
    expect(lamps(shift, '15:40')[0]).toBe(`A 7203 30 °C till ${shift.due('7203', 'handling')}, Wren stays`);
  });

  it('knows of a lamp that was found off', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '7203', card: 'P1', setting: warm(30), lamp: lampName('B') });
    shift.enters('tomek', '09:30', { kind: 'off', job: '7203', since: 'unknown' });
    expect(lamps(shift, '09:31')[1]).toBe('B 7203 not seen on since 09:00');
    shift.enters('tomek', '09:32', { kind: 'on', job: '7203' });
    shift.enters('tomek', '09:33', { kind: 'off', job: '7203' });
    expect(lamps(shift, '09:34')[1]).toBe('B free');
  });

  it('keeps a lamp that covers only a part: it burns, and is asked about, until it is said off', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '7203', card: 'P1', setting: warm(30), lamp: lampName('A') });
    shift.enters('tomek', '09:05', { kind: 'off', job: '7203', since: 'stated', part: true });
    expect(lamps(shift, '09:06')[0]).toMatch(/^A 7203 /);
    shift.until('10:10');
    expect(shift.heard('still-on')).toEqual(['10:00 still-on tomek']);
    shift.enters('tomek', '10:11', { kind: 'off', job: '7203' });
    expect(lamps(shift, '10:12')[0]).toBe('A free');
  });

  it('shows what heats without a name', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '7203', card: 'K', setting: warm(30) });
    expect(lamps(shift, '09:01')).toContain('Lamp 7203 30 °C till 10:00');
  });

  it('stays within eight lines, busy ones first', () => {
    const names = Array.from({ length: 12 }, (_, index) => lampName(`L${index + 1}`));
    const shift = new Shift({ lamps: names, pads: [] });
    for (const [index, lamp] of names.slice(0, 9).entries()) shift.enters('tomek', '09:00', { kind: 'cure', job: `80${index}`, card: 'P1', setting: warm(30), lamp });
    const lines = lamps(shift, '09:01');
    expect(lines).toHaveLength(8);
    expect(lines.slice(-3)).toEqual(['and 4 more: type who waits', 'L10, L11, L12 free', 'P1 is an example card, not your data sheet.']);
  });

  it('says so where the shop has none', () => {
    expect(lamps(new Shift({ lamps: [], pads: [] }), '09:00')).toEqual([expect.stringContaining('No lamp and no pad')]);
  });
});
