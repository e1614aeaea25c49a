import Database from 'better-sqlite3';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { Program, tempFolder, type PostJson, type ReplyJson } from './program.js';

/**
 * A day in the example shop on a standing practice clock: `at('09:41')` moves the clock there,
 * `says` types a line. Times are shop time of the example shop, whose zone has no offset in early March.
 */
export class Day {
  readonly #date: string;
  readonly #data: string;
  readonly #environment: Readonly<Record<string, string>>;
  #program: Program;
  #now: number;

  private constructor(date: string, data: string, environment: Readonly<Record<string, string>>, program: Program, now: number) {
    this.#date = date;
    this.#data = data;
    this.#environment = environment;
    this.#program = program;
    this.#now = now;
  }

  static async begin(start = '2026-03-02T07:00', environment: Readonly<Record<string, string>> = {}): Promise<Day> {
    const data = tempFolder();
    const program = await Program.start({ CURECLERK_DATA: data, CURECLERK_CLOCK: start, ...environment });
    const day = new Day(start.slice(0, 10), data, environment, program, Date.parse(`${start}Z`));
    running.add(day);
    return day;
  }

  get program(): Program {
    return this.#program;
  }

  /** Where its book lies. */
  get folder(): string {
    return this.#data;
  }

  /** The instant of a time of this day, `HH:MM` or `HH:MM:SS`, or of a full local time. */
  iso(time: string): string {
    return new Date(Date.parse(`${time.length > 'HH:MM:SS'.length ? time : `${this.#date}T${time}`}Z`)).toISOString();
  }

  async at(time: string): Promise<void> {
    const target = Date.parse(this.iso(time));
    if (target < this.#now) throw new Error(`${time} has passed.`);
    if (target > this.#now) await this.#program.advance(`PT${(target - this.#now) / 1000}S`);
    this.#now = target;
  }

  /** Moves to the next moment at which something is planned, at the latest to `time`; gives the instant it is then. */
  async stepTowards(time: string): Promise<number> {
    this.#now = Date.parse(await this.#program.advanceToNext(this.iso(time)));
    return this.#now;
  }

  says(from: string, text: string): Promise<ReplyJson> {
    return this.#program.say(from, text);
  }

  /** Posts by the bot itself, as `HH:MM kind to`, from the start of the day. */
  async posted(): Promise<string[]> {
    return (await this.posts()).map((post) => `${post.at.slice(11, 16)} ${post.about.kind} ${post.to}`);
  }

  async posts(kind?: string): Promise<PostJson[]> {
    const posts = await this.#program.feed();
    return kind === undefined ? posts : posts.filter((post) => post.about.kind === kind);
  }

  /** An instant of this day as `HH:MM`, of another day with its date. */
  shortTime(instant: string): string {
    return instant.startsWith(this.#date) ? instant.slice(11, 16) : instant.slice(0, 16);
  }

  /** `due time state` of one milestone of a job; the time in `HH:MM`, or `-`. */
  async milestone(job: string, kind: string, joint = 'j1'): Promise<string> {
    const sheet = await this.#program.job(job);
    const found = sheet.cures.filter((cure) => cure.joint === joint).flatMap((cure) => cure.milestones).find((one) => one.kind === kind);
    if (found === undefined) throw new Error(`${job} ${joint} has no ${kind}.`);
    const due = found.dueAt === null ? '-' : this.shortTime(found.dueAt);
    return `${due} ${found.state}`;
  }

  /** The cures that stand on a job, as `joint card`. */
  async cures(job: string): Promise<string[]> {
    return (await this.#program.job(job)).cures.map(({ joint, card }) => `${joint} ${card}`);
  }

  async share(job: string, kind: string): Promise<number> {
    const sheet = await this.#program.job(job);
    return sheet.cures.flatMap((cure) => cure.milestones).find((one) => one.kind === kind)?.share ?? Number.NaN;
  }

  /** What stands in the book, as other programs see it. */
  async book(): Promise<unknown> {
    return [await this.#program.feed(), await this.#program.get('/api/waiting'), dump(this.#data)];
  }

  /** Ends the program and gives the folder of its book. */
  async closedData(): Promise<string> {
    await this.end();
    return this.#data;
  }

  /** `kill -9` now; starts again with the clock at `time`. */
  async killedUntil(time: string, changes: Readonly<Record<string, string>> = {}): Promise<void> {
    await this.#program.kill();
    const start = this.iso(time).slice(0, 16);
    this.#program = await Program.start({ CURECLERK_DATA: this.#data, ...this.#environment, ...changes, CURECLERK_CLOCK: start });
    this.#now = Date.parse(`${start}Z`);
  }

  async end(): Promise<number | null> {
    running.delete(this);
    return this.#program.stop();
  }
}

/** All rows of all tables, read beside the running program; without the notes of which buttons were shown, which every answer leaves and no entry rests on. */
function dump(folder: string): unknown {
  const db = new Database(join(folder, 'book.sqlite'), { readonly: true });
  try {
    const tables = db.prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT IN ('offer', 'asked_reply') ORDER BY name").all();
    return tables.map(({ name }) => [name, db.prepare(`SELECT * FROM "${name}"`).all()]);
  } finally {
    db.close();
  }
}

const running = new Set<Day>();

/** Every day that a test began is ended, whatever became of the test. */
afterEach(async () => {
  await Promise.all([...running].map((day) => day.end()));
});
