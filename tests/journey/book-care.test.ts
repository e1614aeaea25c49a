import Database from 'better-sqlite3';
import { execFile } from 'node:child_process';
import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { expect, it } from 'vitest';
import { Program, tempFolder } from '../support/program.js';

interface Ran {
  readonly code: number;
  readonly out: string;
}

const { PATH = '', HOME = '' } = process.env;

const run = (data: string, ...words: string[]): Promise<Ran> =>
  new Promise((resolve) => {
    execFile(process.execPath, ['dist/main.js', ...words], { env: { PATH, HOME, CURECLERK_DATA: data, CURECLERK_LOG: 'error' } }, (error, stdout, stderr) => {
      resolve({ code: error === null ? 0 : Number(error.code), out: stdout + stderr });
    });
  });

const CLOCK = '2026-03-03T08:00';

it('a copy made while people type is whole, and put back it forecasts the very same', async () => {
  const data = tempFolder();
  const program = await Program.start({ CURECLERK_DATA: data, CURECLERK_CLOCK: CLOCK });
  await program.say('tomek', 'air 19 50%');
  await program.say('tomek', 'cure 501 P1');
  await program.say('tomek', 'read 501 31');
  const typing = (async () => { for (let no = 600; no < 640; no += 1) await program.say('wren', `cure ${no} F1`); })();
  const to = join(tempFolder(), 'copy.sqlite');
  const [made] = await Promise.all([run(data, 'backup', to), typing]);
  expect(made).toMatchObject({ code: 0 });
  expect(made.out).toContain('Nothing is wrong.');
  const [before, all] = [await program.job('501'), await run(data, 'verify')];
  expect(all.out).toContain('Nothing is wrong.');
  await program.kill();

  const other = join(tempFolder(), 'data');
  mkdirSync(other);
  copyFileSync(to, join(other, 'book.sqlite'));
  const restored = await Program.start({ CURECLERK_DATA: other, CURECLERK_CLOCK: CLOCK });
  expect(await restored.job('501')).toEqual(before);
  await restored.stop();
});

it('a quiet change from outside is found, with the fact it begins at, and the exit code says so', async () => {
  const data = tempFolder();
  const program = await Program.start({ CURECLERK_DATA: data, CURECLERK_CLOCK: CLOCK });
  await program.say('tomek', 'cure 501 P1');
  await program.say('tomek', 'read 501 31');
  await program.stop();
  const db = new Database(join(data, 'book.sqlite'));
  db.exec("DROP TRIGGER fact_is_never_changed; UPDATE fact SET happened_at = happened_at - 3600000 WHERE seq = 2");
  db.close();
  const found = await run(data, 'verify');
  expect(found.code).toBe(1);
  expect(found.out).toContain('Fact 2 is not as it was written: the 1 before it are whole.');
});

it('says what is wrong where there is no book', async () => {
  const found = await run(tempFolder(), 'verify');
  expect(found.code).toBe(1);
  expect(found.out).toContain('There is no book');
});
