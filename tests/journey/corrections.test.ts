import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('a wrong card is put right, kept in the record through a crash, and taken back', async () => {
  const day = await Day.begin();
  await day.at('09:40');
  await day.says('tomek', 'cure 501 P1 lamp 35');
  expect(await day.milestone('501', 'handling')).toBe('14:40 running');
  await day.at('09:53');
  const reply = await day.says('tomek', '501 is P2 not P1');
  expect(reply.text).toContain('501 is P2, not P1 (changed 09:53).');
  expect(reply.text).toContain('Handling strength 11:00 by the clock (was 14:40).');
  await day.killedUntil('09:54');
  expect(await day.milestone('501', 'handling')).toBe('11:00 running');
  await day.says('tomek', 'moved 501');
  expect((await day.program.press('tomek', reply, 'Undo')).text).toMatch(/taken back: change of card to P2/);
  // The panel that moved while it was called P2 moved all the same.
  expect(await day.milestone('501', 'handling')).toBe('14:54 running');
  await day.at('14:54');
  expect((await day.posts('handling')).map((post) => [post.at, post.about.card])).toEqual([[day.iso('14:54'), 'P1']]);
});

it('reminders follow the right card, and none comes for the wrong one', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.says('wren', 'cure 502 P1');
  await day.at('09:30');
  await day.says('tomek', 'card 501 P1');
  await day.says('wren', 'card 502 K');
  await day.at('13:30');
  expect(await day.posts('handling')).toEqual([]);
  expect(await day.milestone('501', 'handling')).toBe('14:00 running');
  await day.at('14:00');
  expect((await day.posts('handling')).map((post) => [post.at, post.about.job, post.about.card])).toEqual([[day.iso('14:00'), '501', 'P1']]);
});

it.each([
  ['card 501 X9', /“X9”, needs a known card/],
  ['card 501 P1', /501 is P1 already/],
  ['depth 501 3 mm', /P1 does not harden by depth/],
  ['pad 501 60 M9', /Not understood: “M9”.* Nothing stored/],
  ['pad 501 60 A', /Needs either lamp or pad.* Nothing stored/],
])('`%s` changes nothing and says why', async (line, words) => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 P1');
  const before = await day.book();
  expect((await day.says('tomek', line)).text).toMatch(words);
  expect(await day.book()).toEqual(before);
});

it('a bead without a depth has no time until one tap says it', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'air 20 rh 60');
  await day.says('tomek', 'cure 7214 j2 P1');
  const reply = await day.says('tomek', 'cure 7214 j3 S1');
  expect(reply.text).toContain('How deep is the bead? Until then no through-cure time.');
  expect(reply.buttons.map(({ label }) => label)).toEqual(['3 mm', '4 mm', '5 mm']);
  expect((await day.says('tomek', 'when 7214 j3')).text).toContain('no time: say the bead\'s depth');
  expect((await day.says('tomek', 'who waits')).text).toContain('7214 j3 through-cure time, no time: say the bead\'s depth');
  await day.program.press('tomek', reply, '3 mm');
  expect((await day.says('tomek', 'when 7214 j3')).text).not.toContain('say the bead');
  await day.says('tomek', 'depth 7214 1 mm');
  // A third of the sheet's 3 mm takes a ninth of its 24 h.
  expect(await day.milestone('7214', 'through', 'j3')).toBe('10:40 running');
});

it('damp metal is held until the foreman decides', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  expect((await day.says('tomek', 'air 18 rh 70')).text).toContain('Dew point 12.4 °C: metal at least 15.5 °C.');
  expect((await day.says('tomek', 'paste 501 P1')).text).toContain('metal at least 15.5 °C');
  await day.at('08:05');
  expect((await day.says('tomek', 'read 501 15')).text).toMatch(/HOLD: metal 2\.6 °C above the dew point/);
  await day.killedUntil('08:10');
  expect(await day.posted()).toEqual(['08:05 decision ines']);
  await day.says('tomek', 'closed 501');
  await day.says('tomek', 'read 501 65');
  await day.at('08:50');
  expect(await day.posts('handling')).toEqual([]);
  expect(await day.milestone('501', 'handling')).toBe('08:35 held');
  const [decision] = await day.posts('decision');
  if (decision === undefined) throw new Error('The foreman was not asked.');
  expect(decision.reply.text).toMatch(/dew point .*You decide/);
  expect((await day.says('ines', 'release 501 j1 wiped and warmed')).text).toContain('“wiped and warmed”');
  expect((await day.posts('handling')).map((post) => [post.at, post.dueAt])).toEqual([[day.iso('08:50'), day.iso('08:35')]]);
});

it('a pad counts by what the joint reads, and runs no recipe', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'cure 501 P1 pad 65 M1');
  expect((await day.says('tomek', 'cure 502 P2 pad 55 M2')).text).toContain('A pad runs no recipe: nothing of it counts.');
  await day.says('tomek', 'read 501 65');
  expect(await day.milestone('501', 'handling')).toBe('08:25 running');
  expect(await day.milestone('502', 'handling')).toMatch(/^- /);
  expect((await day.says('tomek', 'who waits')).text).toContain('pad M1 65 °C');
  const asked = await day.says('tomek', 'cure 503 P1 pad 65 M1');
  expect(asked.text).toContain('Pad M1 is on 501 by my book.');
  await day.program.press('tomek', asked, 'Moved here');
  expect((await day.says('tomek', 'when 501')).text).toContain('pad M1 off');
});
