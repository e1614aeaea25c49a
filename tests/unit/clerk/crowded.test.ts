import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DeskDay } from '../../support/desk-day.js';
import { toText } from '../../../src/reply/to-text.js';

/** No two of them differ only by figures changed over. */
const jobNamed = (index: number): number => 800 + 11 * index;

const many = (count: number, minute: (index: number) => number): DeskDay => {
  const day = new DeskDay({ shifts: [] });
  for (let index = 0; index < count; index += 1) day.says('tomek', `08:${String(minute(index)).padStart(2, '0')}`, `cure ${jobNamed(index)} P1`);
  return day;
};

describe('more than six messages an hour to one person', () => {
  it('that are due at once come as one, each named, none twice', () => {
    const day = many(8, () => 0);
    day.at('13:05');
    expect(day.heard('handling', 'bundle').slice(-1)).toEqual(['13:00 bundle tomek']);
    const said = toText(day.posts('bundle').at(-1)?.answer ?? day.says('tomek', '13:05', 'help'));
    for (let index = 0; index < 8; index += 1) expect(said.match(new RegExp(`${jobNamed(index)} handling strength due`, 'g'))).toHaveLength(1);
    expect(day.heard('handling')).toEqual([]);
  });

  it('go out one by one up to six, and the rest together a quarter of an hour later at most', () => {
    const day = many(9, (index) => 2 * index);
    day.at('13:09');
    expect(day.heard('handling')).toHaveLength(5);
    day.at('13:30');
    // 13:00 … 13:10 alone (one repeat among them); what comes from then on waits, and comes with the repeats.
    expect(day.heard('handling')).toEqual(['13:00 handling tomek', '13:02 handling tomek', '13:04 handling tomek', '13:06 handling tomek', '13:08 handling tomek']);
    expect(day.heard('bundle').filter((one) => one.includes('tomek'))).toEqual(['13:10 bundle tomek', '13:27 bundle tomek']);
  });

  it('call no repeat late, although it waited its turn', () => {
    const day = many(4, (index) => 3 * index);
    day.at('15:00');
    const texts = day.posts('handling').map((post) => toText(post.answer));
    expect(texts.length).toBeGreaterThan(4);
    expect(texts.filter((text) => / late\./.test(text))).toEqual([]);
  });

  it('name the override of each job behind what is asked about it', () => {
    const day = many(9, () => 0);
    day.says('ines', '12:58', 'override 822 fill other end of the seam');
    day.at('13:05');
    const together = day.posts('bundle').filter(({ to }) => to === 'tomek').map(({ answer }) => toText(answer)).join('\n');
    expect(together).toMatch(/^822 handling strength due 13:00.*Overridden: fill on this car \(Ines 12:58: “other end of the seam”\)\.$/m);
    expect(together).toMatch(/^833 handling strength due 13:00(?!.*Overridden).*$/m);
  });

  it('never hold back what cannot wait', () => {
    const day = many(8, () => 0);
    day.says('tomek', '12:30', 'paste 950 P1');
    day.at('13:30');
    expect(day.heard('open-limit')).toEqual(['13:20 open-limit tomek', '13:30 open-limit tomek']);
    day.says('tomek', '13:31', `read ${jobNamed(0)} 88`);
    expect(day.heard('safety').slice(0, 2).sort()).toEqual(['13:31 safety ines', '13:31 safety tomek']);
  });

  it('never hold back what the foreman has to decide, nor put it among other questions', () => {
    const day = new DeskDay({ shifts: [] });
    for (let index = 0; index < 8; index += 1) day.says('ines', `08:0${index}`, `cure ${jobNamed(index)} P1`);
    day.says('tomek', '12:50', 'cure 950 P1');
    day.at('13:07');
    day.says('tomek', '13:08', 'weld 950');
    expect(day.heard('decision')).toEqual(['13:08 decision ines']);
    expect(day.posts('decision').map(({ answer }) => answer.buttons.map(({ line }) => line))).toEqual([['hold 950 hot work before full strength']]);
  });

  it('do not touch what goes to others', () => {
    const day = many(7, () => 0);
    day.says('wren', '08:00', 'cure 950 P1');
    day.at('13:01');
    expect(day.heard('handling')).toEqual(['13:00 handling wren']);
  });

  it('lose nothing and say nothing twice, whenever the cures were begun', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 59 }), { minLength: 1, maxLength: 14 }), (minutes) => {
        const starts = [...minutes].sort((one, other) => one - other);
        const day = many(starts.length, (index) => starts[index] ?? 0);
        day.at('14:20');
        const said = day.posts().filter((post) => post.to === 'tomek').map((post) => toText(post.answer));
        starts.forEach((start, index) => {
          const first = said.filter((one) => one.includes(`${jobNamed(index)} handling strength due`));
          expect([start, index, first.length > 0]).toEqual([start, index, true]);
        });
        // Six, and then one message every quarter of an hour at most.
        const posts = day.posts().filter((post) => post.to === 'tomek');
        for (const post of posts) expect(posts.filter((other) => other.at > post.at - 3_600_000 && other.at <= post.at).length).toBeLessThanOrEqual(10);
        expect(new Set(day.posts().map((post) => post.key)).size).toBe(day.posts().length);
      }),
      { numRuns: 15 },
    );
  });
});
