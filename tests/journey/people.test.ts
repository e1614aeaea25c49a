import { describe, expect, it } from 'vitest';
import { Day } from '../support/day.js';
import { writtenFiles } from '../support/written-files.js';

describe('somebody who is not on the shop\'s list', () => {
  it('may ask and enters nothing, until the foreman takes them on with one tap', async () => {
    const day = await Day.begin();
    await day.at('08:00');
    const before = await day.says('Sam', 'cure 501 P2 lamp 35');
    expect(before.text).toMatch(/Sam, you are not on the shop's list.*Ask Ines to type `adopt sam technician`/);
    await day.says('Sam', 'cure 501 P2 lamp 35');
    expect((await day.says('Sam', 'who waits')).text).toBe('No car waits on a cure.');
    const offers = await day.posts('stranger');
    expect(offers.map((post) => [post.to, post.reply.buttons.map((button) => button.id)])).toEqual([['ines', ['adopt sam technician', 'adopt sam apprentice', 'refuse sam']]]);
    await day.program.press('ines', offers[0]?.reply ?? before, 'Technician');
    expect((await day.says('Sam', 'cure 501 P2 lamp 35')).text).toMatch(/^501 P2 closed 08:00/);
    await day.killedUntil('08:30');
    expect((await day.says('Sam', 'cure 502 P1')).text).toMatch(/^502 P1 closed 08:30/);
    expect((await day.says('ines', 'when 502')).text).toMatch(/^502 P1, Sam,/);
  });
});

describe('handing on', () => {
  it('a job tells both, and the messages follow', async () => {
    const day = await Day.begin();
    await day.at('08:00');
    await day.says('tomek', 'cure 501 P2 lamp 35');
    const said = await day.says('ines', 'hand 501 to wren');
    expect(said.text).toMatch(/^501 is Wren's now; Wren is told\.\nNext: 501 handling strength 09:20\./);
    expect((await day.posts('handover')).map((post) => post.to).sort()).toEqual(['tomek', 'wren']);
    await day.at('09:20');
    expect((await day.posted()).filter((post) => post.includes('handling'))).toEqual(['09:20 handling wren']);
  });

  it('a shift counts from the acceptance, which two can tap and one is', async () => {
    const day = await Day.begin();
    await day.at('08:00');
    for (const job of ['501', '502', '503']) await day.says('tomek', `cure ${job} P1`);
    expect((await day.says('tomek', 'handover wren except 502')).text).toMatch(/^Offered to Wren: 501, 503\. They stay yours until Wren accepts\. 502 stays with you\./);
    const [offer] = await day.posts('handover');
    expect([offer?.to, offer?.reply.buttons.map((button) => button.label)]).toEqual(['wren', ['Accept']]);
    await day.at('08:05');
    expect((await day.says('wren', 'accept')).text).toMatch(/^Accepted 08:05: 501, 503\.\nNext for Wren: 501 handling strength 13:00; 503 handling strength 13:00\./);
    expect((await day.says('tomek', 'accept')).text).toBe('Already accepted by Wren 08:05. Nothing changed.');
    await day.at('13:00');
    expect((await day.posted()).filter((post) => post.includes('handling')).sort()).toEqual(['13:00 handling tomek', '13:00 handling wren', '13:00 handling wren']);
  });
});

describe('with shifts', () => {
  const SHIFTS = 'name: Round the clock\nzone: Europe/London\nhours:\n  mon-sun: 07:30-17:00\nair: 20\nnight: 20\npeople:\n  ines: { name: Ines, role: foreman }\n  bo: { name: Bo, role: foreman }\n  tomek: { name: Tomek, role: technician }\nshifts:\n  - { name: day, days: mon-sun, hours: 06:00-14:00, people: [ines, tomek] }\n  - { name: night, days: mon-sun, hours: 14:00-06:00 next day, people: [bo] }\n';

  it('a check goes to whoever works when it comes due, across a crash', async () => {
    const day = await Day.begin('2026-03-02T09:00', { CURECLERK_SHOP: `${writtenFiles({ 'shop.yaml': SHIFTS })}/shop.yaml` });
    await day.says('tomek', 'cure 501 P1');
    await day.at('13:59');
    await day.killedUntil('14:05');
    expect((await day.posted()).filter((post) => post.includes('handling'))).toEqual(['14:05 handling bo']);
    await day.at('15:30');
    expect((await day.posted()).filter((post) => post.includes('handling'))).toEqual(['14:05 handling bo', '14:15 handling bo', '14:35 handling bo', '14:55 handling bo']);
  });
});

describe('an apprentice', () => {
  it('looks first; somebody else confirms', async () => {
    const day = await Day.begin();
    await day.at('08:00');
    await day.says('tomek', 'cure 501 P2 lamp 35');
    await day.at('09:21');
    const first = await day.says('wren', 'hard 501');
    expect(first.text).toMatch(/^501 handling strength: first check by Wren\.\n.*\nSecond tap by a technician or the foreman/);
    expect(first.buttons.map((button) => button.label)).toContain('Hard');
    expect(await day.milestone('501', 'handling')).toBe('09:20 due');
    await day.at('09:30');
    expect((await day.posts('handling')).at(-1)?.reply.text).toMatch(/First check by Wren 09:21: second tap/);
    await day.program.press('tomek', first, 'Hard');
    expect(await day.milestone('501', 'handling')).toBe('09:20 confirmed');
  });
});

describe('busy', () => {
  it('holds the messages back and says them once', async () => {
    const day = await Day.begin();
    await day.at('08:00');
    await day.says('tomek', 'cure 501 P2 lamp 35');
    await day.at('09:15');
    expect((await day.says('tomek', 'busy 20')).text).toMatch(/^Tomek busy until 09:35/);
    await day.at('09:40');
    expect((await day.posted()).filter((post) => post.includes('handling'))).toEqual(['09:35 handling tomek']);
  });
});
