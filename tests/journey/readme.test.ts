import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

/** One exchange of the README's tour: who typed what at which time (null: the clerk by itself), and the lines of the answer. */
interface Exchange {
  readonly at: string;
  readonly typed: { readonly from: string; readonly text: string } | null;
  readonly answer: readonly string[];
}

const HEAD = /^(?:(\d\d:\d\d) )?> (\w+): (.*)$/;
const BY_ITSELF = /^(\d\d:\d\d), by itself/;

function tour(): Exchange[] {
  const block = readFileSync('README.md', 'utf8').split('## One minute')[1]?.split('```')[1] ?? '';
  let at = '08:00';
  return block.trim().split('\n\n').map((part) => {
    const [head = '', ...lines] = part.split('\n');
    const typed = HEAD.exec(head);
    at = typed?.[1] ?? BY_ITSELF.exec(head)?.[1] ?? at;
    const answer = lines.map((line) => line.replace(/\s+\[.*$/, ''));
    return { at, typed: typed === null ? null : { from: typed[2] ?? '', text: typed[3] ?? '' }, answer };
  });
}

it('the README\'s tour is what the program really answers', async () => {
  const exchanges = tour();
  expect(exchanges.length).toBeGreaterThan(5);
  const day = await Day.begin('2026-03-02T08:00');
  for (const { at, typed, answer } of exchanges) {
    await day.at(at);
    const text = typed === null ? (await day.posts()).filter((post) => post.at === day.iso(at)).map((post) => post.reply.text).join('\n') : (await day.says(typed.from, typed.text)).text;
    for (const line of answer) expect(text.split('\n')).toContain(line);
  }
});

it('the README names every kind of post and every variable', () => {
  const readme = readFileSync('README.md', 'utf8');
  const config = readFileSync('src/config.ts', 'utf8') + readFileSync('src/config/slack-settings.ts', 'utf8');
  const variables = new Set(config.match(/\b(?:CURECLERK|SLACK)_[A-Z]+_?[A-Z]*[A-Z]\b/g) ?? []);
  expect([...variables].filter((name) => !readme.includes(name))).toEqual([]);
  const kinds = readFileSync('src/repair/reminder.ts', 'utf8').match(/REMINDER_KINDS = \[([^\]]*)\]/)?.[1]?.match(/[a-z-]+/g) ?? [];
  expect(kinds.filter((kind) => !readme.includes(`\`${kind}\``))).toEqual([]);
});
