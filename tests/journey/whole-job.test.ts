import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('a held job: seen in every list and post, quiet about strength, and after the release said once with its true time', async () => {
  const day = await Day.begin('2026-03-02T07:00');
  await day.at('09:00');
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('09:30');
  await day.says('ines', 'hold 501 part may be recalled');
  expect((await day.says('tomek', 'who waits')).text).toMatch(/501 HELD since 09:30 by Ines: “part may be recalled”, the foreman decides; handling strength 10:00/);
  await day.at('11:00');
  expect(await day.posts('handling')).toEqual([]);
  const [asked] = await day.posts('still-on');
  expect(asked?.reply.text).toMatch(/501.*HELD since 09:30/s);
  expect((await day.says('tomek', 'read 501 31')).text).toMatch(/HELD since 09:30 by Ines/);
  expect((await day.says('tomek', 'hard 501')).text).toMatch(/HELD since 09:30/);
  await day.at('12:40');
  await day.says('ines', 'release 501 part is fine');
  await day.at('12:45');
  const posts = await day.posts('handling');
  expect(posts.map((post) => `${post.at} ${post.dueAt}`)).toEqual([`${day.iso('12:40')} ${day.iso('10:00')}`]);
  expect(posts[0]?.reply.text).toMatch(/handling strength due 10:00.*the job was held when it was due/s);
  expect((await day.says('tomek', 'who waits')).text).not.toContain('HELD');
});

it('a job that is held and waits on nothing is in the list and in the bundles', async () => {
  const day = await Day.begin('2026-03-02T09:00');
  await day.says('ines', 'begin 501 bonded-panel');
  await day.says('ines', 'hold 501 part may be recalled');
  expect((await day.says('tomek', 'who waits')).text).toMatch(/501 HELD since 09:00 by Ines/);
  await day.at('17:01');
  await day.at('2026-03-03T07:31');
  expect((await day.posts('bundle')).map((post) => /501 HELD since/.test(post.reply.text))).toEqual([true, true]);
});

it('an expired cartridge is a hold at the paste; the foreman\'s word is seen from then on', async () => {
  const day = await Day.begin('2026-03-02T08:00');
  await day.says('ines', 'begin 501 bonded-panel');
  await day.says('tomek', 'batch 501 55-B');
  await day.says('tomek', 'opened 501 28.02.2026');
  expect((await day.says('tomek', 'expiry 501 02/26')).text).toMatch(/expired: HOLD/);
  expect((await day.says('tomek', 'paste 501 P1')).text).toMatch(/bond NOT yet: expired: HOLD \(02\/26\), only the foreman can go on/);
  expect((await day.says('ines', 'override 501 bond sheet gives three months more')).text).toMatch(/bond overridden 08:00, Ines, past this only: .*expired \(02\/26\)/);
  const pasted = await day.says('tomek', 'paste 501 P1');
  expect(pasted.text).toMatch(/Overridden: bond, Ines 08:00: “sheet gives three months more”/);
  expect(pasted.text).toMatch(/bond was done 08:00, still: tap “cartridge warm/);
  expect((await day.says('wren', 'tap 501 bond 2')).text).toMatch(/“both components flow”, Wren 08:00/);
  for (const line of ['when 501', 'who waits', 'read 501 20', 'next 501', 'closed 501']) expect([line, (await day.says('tomek', line)).text]).toEqual([line, expect.stringMatching(/verridden: bond/)]);
  await day.at('17:00');
  expect((await day.posts('bundle')).map((post) => /overridden: bond \(Ines 08:00: “sheet gives three months more”\)/.test(post.reply.text))).toEqual([true]);
});

it('the closing taken back takes the move with it, and says so', async () => {
  const day = await Day.begin('2026-03-02T09:00');
  await day.says('tomek', 'paste 501 P1');
  await day.at('09:10');
  const closed = await day.says('tomek', 'closed 501');
  await day.at('09:15');
  await day.says('tomek', 'moved 501');
  expect((await day.program.press('tomek', closed, 'Undo')).text).toMatch(/The move of 09:15 counts for nothing now: the panel stands as open/);
  await day.says('tomek', 'closed 501 at 9:12');
  expect(await day.milestone('501', 'handling')).toMatch(/^14:15/);
});
