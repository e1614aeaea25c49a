import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { Day } from '../support/day.js';

// Our own scenario with invented figures; the sums behind the times are redone by hand in tests/unit/repair/demo-days.test.ts.

const script = z.object({ begins: z.string(), days: z.array(z.object({ date: z.string(), lines: z.array(z.tuple([z.string(), z.string(), z.string()])) })) }).parse(parse(readFileSync('src/shop/practice-day.yaml', 'utf8')));
const WEEKDAYS: Readonly<Record<string, string>> = { '2026-03-03': 'Tue', '2026-03-04': 'Wed', '2026-03-05': 'Thu' };

/** What the answer to a line must say, to the minute. */
const ANSWERS: Readonly<Record<string, RegExp>> = {
  'Tue 08:40 paste 7203 P1': /Close the panel by 09:40/,
  'Tue 09:15 closed 7203': /Handling strength earliest 14:15/,
  'Tue 09:50 read 7203 30 tape': /Handling strength 12:03 by the clock/,
  'Tue 10:10 lamp B 35 on 7208': /Handling strength 11:30/,
  'Tue 11:24 A off dont know when': /heat counts only to 10:20/,
  'Tue 11:30 hard 7208': /first check by Wren/,
  'Tue 11:30 7208 soft': /two answers, Wren said otherwise\. Held as soft\.\nHandling strength 11:50/,
  'Tue 11:40 read 7203 30': /Handling strength 12:43 by the clock/,
  'Tue 11:52 hard 7208': /confirmed 11:52 by Tomek/,
  'Tue 11:58 up 7208': /Full strength 14:08/,
  'Tue 12:35 B on': /Full strength 14:43/,
  'Tue 12:55 hard 7203': /confirmed 12:55 by Tomek/,
  'Tue 12:58 lamp 7203 149': /149 what\?.*149 °F = 65 °C\. Nothing counted yet/,
  'Tue 12:58 lamp 7203 149F': /lamp A 149 °F = 65 °C/,
  'Tue 13:12 read 7203 65': /Full strength 14:19/,
  'Tue 14:25 hard 7203': /full strength confirmed 14:25 by Tomek/,
  'Tue 15:20 cure 7214 P1': /33 % of the wait by 17:00, then it sleeps/,
  'Tue 15:25 lamp A 30 on 7214': /the shop closes 17:00.*Who stays\? Nothing stored/,
  'Wed 08:24 move 7219>7211': /^7211 T1 moved here from 7219, start 08:20\. Sanding time 08:50/,
  'Wed 08:52 hard 7211': /first check by Wren/,
  'Wed 08:53 hard 7211': /sanding time confirmed 08:53 by Tomek/,
  'Wed 09:05 read 7214 30': /Handling strength 10:08/,
  'Wed 09:30 cure 7211 j2 E1': /Recoat time 10:00/,
  'Wed 10:22 hard 7214': /confirmed 10:22 by Ines/,
  'Wed 10:40 can i sand 7220': /^7220 NOT yet/,
  'Wed 10:46 read 7214 65': /Full strength 11:53/,
  'Wed 13:55 read 7220 60': /Sanding time 14:16/,
  'Wed 14:10 paste 7219 G1': /Set the glass by 14:20/,
  'Wed 14:17 closed 7219': /Standing time earliest 18:17/,
  'Wed 15:05 read 7203 60': /Metal time 15:40/,
  'Wed 15:26 read 7203 60': /Metal time 15:46/,
  'Thu 09:00 cure 7220 W1': /Drip-free time 12:00.*no welding and no bake on this car/s,
  'Thu 09:40 weld 7220 bracket': /^7220 STOP: no heat, no flame\..*Ines is told at once/s,
  'Thu 11:00 cure 7214 S1 5 mm': /Through-cure time earliest Mon/,
};

/** What the clerk says by itself in the three days, all of it and in this order. */
const POSTS = [
  'Tue 09:45 reading tomek 7203', 'Tue 11:10 still-on tomek 7208', 'Tue 11:20 still-on tomek 7203', 'Tue 11:30 handling tomek 7208', 'Tue 11:30 decision ines 7208', 'Tue 11:30 decision wren 7208', 'Tue 11:50 handling tomek 7208',
  'Tue 12:40 still-on tomek 7203', 'Tue 12:43 handling tomek 7203', 'Tue 12:53 handling tomek 7203', 'Tue 13:35 still-on tomek 7208', 'Tue 14:12 still-on tomek 7203', 'Tue 14:19 full tomek 7203',
  'Tue 14:35 still-on tomek 7208', 'Tue 14:43 full tomek 7208', 'Tue 17:00 bundle channel -',
  'Wed 07:30 bundle channel -', 'Wed 08:50 sand wren 7211', 'Wed 09:00 reading ines 7214', 'Wed 10:20 recoat-from tomek 7211', 'Wed 10:20 handling ines 7214', 'Wed 11:46 still-on ines 7214', 'Wed 11:53 full ines 7214',
  'Wed 13:50 reading tomek 7220', 'Wed 14:16 sand tomek 7220', 'Wed 14:17 open-limit tomek 7219', 'Wed 14:52 flash-off ines 7203', 'Wed 15:46 dwell ines 7203', 'Wed 17:00 bundle channel -',
  'Thu 07:30 bundle channel -', 'Thu 09:40 safety ines 7220', 'Thu 09:40 safety tomek 7220', 'Thu 09:40 safety wren 7220', 'Thu 12:00 drip-free tomek 7220',
];

it('three days in the shop, to the minute: every answer and every reminder, a kill -9 in the middle included', async () => {
  const day = await Day.begin(script.begins);
  const wrong: string[] = [];
  const asked = new Set<string>();
  for (const { date, lines } of script.days) {
    for (const [time, from, text] of lines) {
      if (`${date} ${time}` === '2026-03-04 10:20') {
        await day.at('2026-03-04T09:55');
        await day.killedUntil('2026-03-04T10:20');
      }
      await day.at(`${date}T${time}`);
      const key = `${WEEKDAYS[date] ?? date} ${time} ${text}`;
      asked.add(key);
      const answer = (await day.says(from, text)).text;
      const wanted = ANSWERS[key];
      if (wanted !== undefined && !wanted.test(answer)) wrong.push(`${key}: ${answer}`);
    }
  }
  expect(wrong).toEqual([]);
  expect(Object.keys(ANSWERS).filter((key) => !asked.has(key))).toEqual([]);
  const posts = await day.posts();
  expect(posts.map((post) => `${WEEKDAYS[post.at.slice(0, 10)] ?? post.at} ${post.at.slice(11, 16)} ${post.about.kind} ${post.to} ${post.about.job ?? '-'}`)).toEqual(POSTS);
  const late = posts.filter((post) => post.at.startsWith('2026-03-04T10:20'));
  expect(late.map((post) => [post.dueAt.slice(11, 16), /I was down/.test(post.reply.text)])).toEqual([['10:00', true], ['10:08', true]]);
  expect(posts.some((post) => /\b(safe|cured|guaranteed)\b/i.test(post.reply.text))).toBe(false);
});
