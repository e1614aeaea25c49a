import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { Program, tempFolder, type PostJson } from '../support/program.js';

const ALWAYS_OPEN = '\nhours:\n  mon-sun: 00:00-24:00\n';

function alwaysOpenShop(): string {
  const file = join(mkdtempSync(join(tmpdir(), 'cureclerk-shop-')), 'shop.yaml');
  writeFileSync(file, readFileSync('src/shop/example-shop.yaml', 'utf8').replace(/\nhours:[\s\S]*?\n\n/, `${ALWAYS_OPEN}\n`));
  return file;
}

/** A made-up filler that is quick enough for a test in real time. */
function quickCards(): string {
  const folder = tempFolder();
  writeFileSync(join(folder, 'q.yaml'), 'card: Q1\ntitle: quick filler\nversion: check 1\nexample: true\nbasis: panel-temperature\nsand: { 20: 0.05 }\n');
  return folder;
}

async function firstPost(program: Program, kind: string, withinMs: number): Promise<PostJson> {
  const deadline = Date.now() + withinMs;
  for (;;) {
    const post = (await program.feed()).find((one) => one.about.kind === kind);
    if (post !== undefined) return post;
    if (Date.now() > deadline) throw new Error(`no ${kind} post within ${withinMs} ms`);
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

it('on the real clock a reminder comes by itself, and the clock cannot be moved', { timeout: 120_000 }, async () => {
  const program = await Program.start({ CURECLERK_DATA: tempFolder(), CURECLERK_SHOP: alwaysOpenShop(), CURECLERK_CARDS: quickCards() });
  try {
    await program.say('tomek', 'cure 501 Q1');
    const post = await firstPost(program, 'sand', 90_000);
    expect(Date.parse(post.at)).toBeGreaterThanOrEqual(Date.parse(post.dueAt));
    expect(Date.parse(post.dueAt) % 60_000).toBe(0);
    expect((await program.post('/api/clock', { advance: 'PT1M' })).status).toBe(404);
  } finally {
    expect(await program.stop()).toBe(0);
  }
});

it('a practice clock that runs 600 times as fast says handling strength after six seconds', { timeout: 60_000 }, async () => {
  const program = await Program.start({ CURECLERK_DATA: tempFolder(), CURECLERK_CLOCK: '2026-03-02T09:00/x600' });
  try {
    await program.say('tomek', 'cure 501 K lamp 30');
    const post = await firstPost(program, 'handling', 40_000);
    expect(post.to).toBe('tomek');
    expect(Date.parse(post.at)).toBeGreaterThanOrEqual(Date.parse(post.dueAt));
    expect((await program.post('/api/clock', { advance: 'PT1M' })).status).toBe(409);
  } finally {
    expect(await program.stop()).toBe(0);
  }
});

it('a practice clock and a Slack token of a real workspace do not start together', async () => {
  await expect(Program.start({ CURECLERK_DATA: tempFolder(), CURECLERK_CLOCK: '2026-03-02T09:00', SLACK_BOT_TOKEN: 'xoxb-1', SLACK_APP_TOKEN: 'xapp-1', SLACK_CHANNEL: 'C1' })).rejects.toThrow(/practice clock/);
});
