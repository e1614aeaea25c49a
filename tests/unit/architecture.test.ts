import { describe, expect, it } from 'vitest';
import { wrongArrows } from '../support/arrows.js';
import { isTypeScript, sourceFiles } from '../support/source-files.js';

const check = (path: string, text: string): string[] => wrongArrows([{ path, text }]);

describe('the rooms of the program', () => {
  it('import only what they may', () => {
    const files = sourceFiles('src').filter(isTypeScript);
    expect(files.length).toBeGreaterThan(20);
    expect(wrongArrows(files)).toEqual([]);
  });
});

describe('the check of the arrows', () => {
  it.each([
    ['cure looks up to repair', 'src/cure/a.ts', "import { x } from '../repair/ids.js';"],
    ['a type import counts too', 'src/cure/a.ts', "import type { X } from '../repair/ids.js';"],
    ['an import type inside an expression counts', 'src/cure/a.ts', "let a: import('../repair/ids.js').JobNo;"],
    ['a re-export counts', 'src/repair/a.ts', "export { x } from '../reply/answer.js';"],
    ['an import over several lines counts', 'src/repair/a.ts', "import {\n  x,\n} from\n  '../store/a.js';"],
    ['an import on first use counts', 'src/clerk/a.ts', "await import('../store/a.js');"],
    ['a computed import cannot be checked', 'src/clerk/a.ts', 'await import(name);'],
    ['the reader does not know the answers', 'src/grammar/a.ts', "import { x } from '../reply/answer.js';"],
    ['the clerk does not know its chats', 'src/clerk/a.ts', "import { x } from '../chat/page/a.js';"],
    ['a chat knows the ports of the clerk and nothing else of it', 'src/chat/page/a.ts', "import { x } from '../../clerk/clerk.js';"],
    ['one chat does not know the other', 'src/chat/page/a.ts', "import { x } from '../slack/a.js';"],
    ['the answers know the result of reading and not the reader', 'src/reply/a.ts', "import { x } from '../grammar/reader.js';"],
    ['the outbox does not know its chats', 'src/outbox/a.ts', "import { x } from '../chat/slack/a.js';"],
    ['the outbox does not know the store', 'src/outbox/a.ts', "import { x } from '../store/a.js';"],
    ['the page in the browser imports nothing of the program', 'src/chat/page/client/a.ts', "import { x } from '../room.js';"],
    ['a pure room reads no file', 'src/reply/a.ts', "import { readFileSync } from 'node:fs';"],
    ['a pure room takes no package but luxon and zod', 'src/grammar/a.ts', "import { parse } from 'yaml';"],
    ['a pure room reads no clock', 'src/repair/a.ts', 'const now = Date.now();'],
    ['a pure room makes no date of now', 'src/repair/a.ts', 'const now = new Date();'],
    ['a pure room asks luxon for no now', 'src/reply/a.ts', 'const now = DateTime.now();'],
    ['a pure room throws no dice', 'src/cure/a.ts', 'const x = Math.random();'],
    ['a pure room sets no timer', 'src/cure/a.ts', 'setTimeout(f, 1);'],
    ['only main touches process', 'src/app.ts', "if (process.env['X']) stop();"],
    ['only main touches process, also by another way', 'src/app.ts', 'globalThis.process.exit(1);'],
    ['only main imports process', 'src/store/a.ts', "import { env } from 'node:process';"],
    ['only the log imports pino', 'src/store/a.ts', "import { pino } from 'pino';"],
    ['only the store imports SQLite', 'src/clerk/a.ts', "import Database from 'better-sqlite3';"],
    ['only the Slack chat imports Slack', 'src/outbox/a.ts', "import { WebClient } from '@slack/web-api';"],
    ['a part of a package is that package', 'src/chat/slack/a.ts', "import { Hono } from 'hono/tiny';"],
    ['only the clock imports cron', 'src/app.ts', "import cron from 'node-cron';"],
    ['a file must belong to a room', 'src/misc/a.ts', ''],
  ])('sees that %s', (_, path, text) => {
    expect(check(path, text)).toHaveLength(1);
  });

  it.each([
    ['repair asks cure', 'src/repair/a.ts', "import { celsius } from '../cure/units.js';"],
    ['a room imports itself', 'src/cure/a.ts', "import type { Celsius } from './units.js';"],
    ['the clerk brings the pure rooms together', 'src/clerk/a.ts', "import { x } from '../grammar/a.js';\nimport { y } from '../reply/b.js';"],
    ['the store implements ports of the clerk', 'src/store/a.ts', "import type { BookStore } from '../clerk/ports.js';\nimport Database from 'better-sqlite3';"],
    ['a chat stands at the desk', 'src/chat/slack/a.ts', "import type { Desk } from '../../clerk/desk.js';\nimport bolt from '@slack/bolt';"],
    ['a remote chat implements the port of the outbox', 'src/chat/slack/a.ts', "import type { ChatSender } from '../../outbox/chat-sender.js';"],
    ['the page serves with hono', 'src/chat/page/a.ts', "import { serve } from '@hono/node-server';\nimport { streamSSE } from 'hono/streaming';"],
    ['main touches process', 'src/main.ts', "import { env } from 'node:process';\nprocess.exitCode = 1;"],
    ['the word in a text or a comment', 'src/repair/a.ts', "// in the process, Date.now()\nconst a = 'process of curing';"],
    ['a member called process', 'src/outbox/a.ts', 'const a = { process: 1 }; a.process;'],
    ['a date of a given moment', 'src/reply/a.ts', 'const a = new Date(at);'],
  ])('allows that %s', (_, path, text) => {
    expect(check(path, text)).toEqual([]);
  });
});
