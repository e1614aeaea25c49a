import { describe, expect, it } from 'vitest';
import { personId } from '../../../src/repair/ids.js';
import type { Person, Shop, ShopShift } from '../../../src/repair/shop.js';
import { toText } from '../../../src/reply/to-text.js';
import { DeskDay, withButtons } from '../../support/desk-day.js';

const ALL_DAYS = [1, 2, 3, 4, 5, 6, 7];
const person = (id: string, role: Person['role']): Person => ({ id: personId(id), name: id.charAt(0).toUpperCase() + id.slice(1), role, chatId: null, language: 'en', unit: null });
const shift = (name: string, begins: number, ends: number, ...people: string[]): ShopShift => ({ name, days: ALL_DAYS, begins: begins * 60, ends: ends * 60, people: people.map(personId) });

/** Three shifts round the clock; the shop is open as long as the first two. */
const floor = (change: Partial<Shop> = {}): DeskDay =>
  new DeskDay({
    people: [person('ines', 'foreman'), person('tomek', 'technician'), person('bo', 'foreman'), person('sam', 'technician'), person('ana', 'technician')],
    shifts: [shift('early', 6, 14, 'ines', 'tomek'), shift('late', 14, 22, 'bo', 'sam'), shift('night', 22, 30, 'ana')],
    ...change,
  });

describe('a quarter of an hour before a shift ends', () => {
  it('whoever still has cures running is asked once who takes over, with the people of the next shift to tap', () => {
    const day = floor();
    for (const job of ['601', '604', '607']) day.says('tomek', '10:00', `cure ${job} P1`);
    day.at('13:44');
    expect(day.heard('handover')).toEqual([]);
    day.at('13:45');
    expect(day.heard('handover')).toEqual(['13:45 handover tomek']);
    const [asked] = day.posts('handover');
    expect(asked === undefined ? '' : withButtons(asked.answer)).toBe(
      'Your shift ends 14:00, still running: 601, 604, 607. Who takes over?\nThey stay yours until somebody accepts.\nNot all of them: `handover Bo except 601`.\nP1 is an example card, not your data sheet.\n[Bo] handover bo\n[Sam] handover sam',
    );
  });

  it('until the other accepts they stay the giver\'s, then they are the other\'s', () => {
    const day = floor();
    day.says('tomek', '10:00', 'cure 601 P1');
    expect(day.told('tomek', '13:46', 'handover sam')).toMatch(/Offered to Sam: 601\. They stay yours until Sam accepts/);
    expect(day.told('ines', '13:50', 'when 601')).toMatch(/^601 P1, Tomek,/);
    expect(day.told('sam', '14:02', 'ok')).toMatch(/^Accepted 14:02: \d/);
    expect(day.told('ines', '14:03', 'when 601')).toMatch(/^601 P1, Sam,/);
    day.at('15:10');
    // Offered is answered: nobody else hears of it.
    expect(day.heard('handover')).toEqual(['13:45 handover tomek', '13:46 handover sam', '14:02 handover tomek']);
    expect(day.heard('handling')).toEqual(['15:00 handling sam', '15:10 handling sam']);
  });

  it('unanswered, the foreman on duty hears of it at the end, and what comes due goes there', () => {
    const day = floor();
    day.says('tomek', '10:00', 'cure 601 P1');
    day.says('ines', '10:05', 'cure 602 P1');
    day.at('15:01');
    expect(day.heard('handover', 'handling')).toEqual(['13:45 handover tomek', '13:45 handover ines', '14:00 handover bo', '15:00 handling bo']);
    expect(toText(day.posts('handover').at(-1)?.answer ?? day.says('bo', '15:01', 'help'))).toMatch(/^Nobody has taken over from Tomek, Ines, whose shift ended 14:00: 601, 602\./);
  });

  it('nobody is asked where nothing runs, where nobody follows, or where the shop has no shifts', () => {
    const done = floor();
    done.says('tomek', '08:00', 'cure 601 F1');
    done.says('tomek', '08:10', 'scrap 601 wrong panel');
    done.at('14:10');
    expect(done.heard('handover')).toEqual([]);
    const alone = floor({ shifts: [shift('day', 6, 14, 'ines', 'tomek')] });
    alone.says('tomek', '10:00', 'cure 601 P1');
    alone.at('16:00');
    expect(alone.heard('handover')).toEqual([]);
    const without = new DeskDay();
    without.says('tomek', '10:00', 'cure 601 P1');
    without.at('Tue 07:00');
    expect(without.heard('handover')).toEqual([]);
  });

  it('comes again at the end of each shift that the cure outlasts, past midnight too', () => {
    const day = floor();
    day.says('tomek', '13:00', 'cure 601 P1');
    day.says('tomek', '13:46', 'handover sam');
    day.says('sam', '14:01', 'accept');
    day.says('sam', '21:46', 'handover ana');
    day.says('ana', '22:01', 'accept');
    day.at('Tue 06:30');
    expect(day.heard('handover').filter((one) => one.includes(':45 '))).toEqual(['13:45 handover tomek', '21:45 handover sam', 'Tue 05:45 handover ana']);
  });
});

describe('a bare ok', () => {
  it('answers the one question that is open: a lamp, a check', () => {
    const day = new DeskDay({ shifts: [] });
    day.says('tomek', '08:00', 'cure 501 P2 lamp 35');
    day.at('09:00');
    expect(day.told('tomek', '09:01', 'ok')).toMatch(/^501 on 09:01, thanks\./);
    day.at('09:20');
    expect(day.told('tomek', '09:21', 'yes')).toMatch(/^501 handling strength confirmed 09:21 by Tomek/);
  });

  it('asks which, one button each, where a handover and a check are open', () => {
    const day = floor();
    day.says('tomek', '13:00', 'cure 601 F1');
    day.says('tomek', '13:46', 'handover sam');
    day.says('sam', '14:01', 'cure 702 K lamp 30');
    day.at('15:01');
    const asked = day.told('sam', '15:02', 'ok');
    expect(asked).toBe('Yes to which? More than one question is open. Nothing stored yet.\n[Accept] accept\n[702 hard] check 702 j1 handling hard');
    expect(day.told('sam', '15:03', 'ok', '702')).toMatch(/^702 handling strength confirmed 15:03 by Sam/);
    expect(day.told('sam', '15:04', 'ok')).toMatch(/^Accepted 15:04: \d/);
  });

  it('like a bare hard, asks which of two due checks', () => {
    const day = new DeskDay({ shifts: [] });
    for (const job of ['501', '502']) day.says('tomek', '08:00', `cure ${job} P1`);
    day.at('13:00');
    expect(day.told('tomek', '13:01', 'ok')).toMatch(/^Yes to which\?.*\n\[501 hard\] check 501 j1 handling hard\n\[502 hard\] check 502 j1 handling hard$/);
    expect(day.told('tomek', '13:02', 'hard')).toMatch(/^Which job\?.*\n\[501\] check 501 hard\n\[502\] check 502 hard$/);
    expect(day.told('tomek', '13:03', 'hard', '502')).toMatch(/^502 handling strength confirmed/);
  });
});
