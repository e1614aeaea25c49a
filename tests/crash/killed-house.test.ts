import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { verifyBook } from '../../src/store/verify.js';
import { spawnBuilt } from '../support/spawn-built.js';
import { tempFolder } from '../support/temp-book.js';

/** A day of the house: what is told when, and after how many points each process dies. */
interface KilledDay {
  readonly lines: readonly string[];
  readonly deaths: readonly number[];
}

const JOBS = ['501', '502', '503'];
const WORDS = ['cure {job} P1', 'cure {job} F1', 'cure {job} K lamp 30', 'paste {job} P1', 'closed {job}', 'read {job} 31', 'read {job} 24', 'read {job} 88', 'lamp {job} 30', 'off {job}', 'hard {job}', 'soft {job}', 'later {job}', 'air 17', 'air 23 50%', 'undo', 'busy 20', 'hold {job} wet floor', 'release {job} dry again', 'nonsense {job}'];

const anyLine = fc.record({ minute: fc.integer({ min: 0, max: 540 }), who: fc.constantFrom('tomek', 'wren', 'ines'), words: fc.constantFrom(...WORDS), job: fc.constantFrom(...JOBS) });

/** Seeded by fast-check, so that a failing day can be told again. */
const anyDay: fc.Arbitrary<KilledDay> = fc.record({
  lines: fc.array(anyLine, { minLength: 12, maxLength: 20 }).map((lines) =>
    lines.toSorted((one, other) => one.minute - other.minute).map(({ minute, who, words, job }) => `${minute} ${who} ${words.replace('{job}', job)}`)),
  deaths: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 30, maxLength: 30 }),
});

interface House {
  readonly folder: string;
  readonly platform: string;
  readonly lines: string;
}

function houseOf(lines: readonly string[]): House {
  const root = tempFolder();
  const folder = join(root, 'data');
  mkdirSync(folder);
  writeFileSync(join(root, 'lines'), lines.join('\n'));
  return { folder, platform: join(root, 'platform'), lines: join(root, 'lines') };
}

const ended = (child: ReturnType<typeof spawnBuilt>): Promise<NodeJS.Signals | number | null> =>
  new Promise((resolve) => { child.once('close', (code, signal) => { resolve(signal ?? code); }); });

/** One process, from the first line that nobody was told the answer of; null: it came to its end. */
async function live({ folder, platform, lines }: House, from: number, dieAt: number): Promise<number | null> {
  const child = spawnBuilt('killed-house-child.ts', [folder, lines, platform, String(from), String(dieAt)]);
  const heard: string[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => heard.push(line));
  const end = await ended(child);
  if (heard.includes('done')) return null;
  expect(end).toBe('SIGKILL');
  return heard.reduce((next, line) => Math.max(next, Number(line.replace('told ', '')) + 1), from);
}

interface Kept {
  /** Without the numbers, which a rolled-back transaction may not use up. */
  readonly facts: unknown[];
  readonly posts: unknown[];
  readonly sent: string[];
  /** In place of a message that stands: the same edit twice is one, so an answer that got lost repeats it. */
  readonly edited: ReadonlySet<string>;
}

function kept({ folder, platform }: House): Kept {
  const file = join(folder, 'book.sqlite');
  expect(verifyBook(file).ok).toBe(true);
  const db = new Database(file, { readonly: true });
  const facts = db.prepare('SELECT entry, job, happened_at, entered_at, by_whom, type, undoes, body FROM fact ORDER BY seq').all();
  const posts = db.prepare('SELECT key, at, due_at, to_whom, answer FROM post ORDER BY seq').all();
  db.close();
  const sent = existsSync(platform) ? readFileSync(platform, 'utf8').trim().split('\n') : [];
  const isEdit = (line: string): boolean => line.startsWith('edit ');
  return { facts, posts, sent: sent.filter((line) => line.includes('post:') && !isEdit(line)).toSorted(), edited: new Set(sent.filter(isEdit).toSorted()) };
}

let kills = 0;

const twins = async ({ lines, deaths }: KilledDay): Promise<void> => {
  const [quiet, killed] = [houseOf(lines), houseOf(lines)];
  expect(await live(quiet, 0, 0)).toBeNull();
  let from: number | null = 0;
  for (const dieAt of deaths) {
    if (from === null) break;
    from = await live(killed, from, dieAt);
    if (from !== null) kills += 1;
  }
  if (from !== null) expect(await live(killed, from, 0)).toBeNull();
  const [wanted, found] = [kept(quiet), kept(killed)];
  expect(found).toEqual(wanted);
  expect(new Set(found.sent).size).toBe(found.sent.length);
};

it('a house killed at any point tells, and keeps, exactly what it would have without', async () => {
  await fc.assert(fc.asyncProperty(anyDay, twins), { numRuns: 3, endOnFailure: true });
  expect(kills).toBeGreaterThan(30);
}, 600_000);
