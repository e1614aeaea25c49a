import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { expect, it } from 'vitest';
import { messageId } from '../../src/clerk/message.js';
import { entryNo, jobNo } from '../../src/repair/ids.js';
import { openBook } from '../../src/store/open.js';
import { spawnBuilt } from '../support/spawn-built.js';
import { tempFolder } from '../support/temp-book.js';

const FACTS_PER_COMMAND = 5;
/** Far more than the page cache holds, so that part of it is in the log before the end. */
const HUGE = 20_000;

/** Lets the writer work until it has stored `commands` more, kills it, and returns the last number it told. */
async function killAfter(folder: string, commands: number): Promise<number> {
  const child = spawnBuilt('store-kill-child.ts', [folder, String(FACTS_PER_COMMAND), '0']);
  const told: number[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => {
    told.push(Number(line));
    if (told.length === commands) child.kill('SIGKILL');
  });
  expect(await once(child, 'close')).toEqual([null, 'SIGKILL']);
  return told.at(-1) ?? 0;
}

/** Every stored command must be whole; returns how many there are. */
function wholeCommands(folder: string): number {
  const book = openBook(folder);
  try {
    return book.transact((tx) => {
      const stored = tx.nextEntry() - 1;
      const entries = Array.from({ length: stored }, (_, index) => entryNo(index + 1));
      expect(entries.map((entry) => tx.factsOfEntry(entry).length)).toEqual(entries.map(() => FACTS_PER_COMMAND));
      expect(entries.map((entry) => tx.seen(messageId(`k${entry}`))?.replyId)).toEqual(entries.map((entry) => `k${entry}`));
      expect(tx.remindersOf(jobNo('501')).map(({ round }) => round)).toEqual(stored === 0 ? [] : [stored]);
      expect(book.postsAfter(0, stored + 9).map(({ key }) => key)).toEqual(entries.map((entry) => `k${entry}`));
      return stored;
    });
  } finally {
    book.close();
  }
}

it('a process killed again and again leaves whole commands, and every one it told of', async () => {
  const folder = tempFolder();
  for (const commands of [1, 17, 60, 5]) {
    const told = await killAfter(folder, commands);
    const stored = wholeCommands(folder);
    expect(stored).toBeGreaterThanOrEqual(told);
    expect(told).toBeGreaterThan(0);
  }
});

it('a process killed in the middle of a command leaves nothing of it', async () => {
  const folder = tempFolder();
  await killAfter(folder, 3);
  const before = wholeCommands(folder);
  const child = spawnBuilt('store-kill-child.ts', [folder, String(HUGE), String(HUGE)]);
  expect(await once(child, 'close')).toEqual([null, 'SIGKILL']);
  expect(wholeCommands(folder)).toBe(before);
});
