import { ask, type Outcome } from './ask.js';
import { readDay, readNow, readReplyBody, type DayLineNote, type ReplyNote } from './read.js';

export interface DayEars {
  /** The shop's time as the page knows it. */
  now(): number;
  /** Looks at the desk again; true where something was posted since the last look. */
  posted(): Promise<boolean>;
  /** Somebody of the practice shop said their line. */
  said(line: DayLineNote, reply: ReplyNote): void;
  refused(detail: string | null): void;
  unreachable(): void;
}

const MINUTE = 60_000;
/** So many moments without a post and something is wrong. */
const MOST_STEPS = 200;

/** Moves the practice shop's clock on; its people say their lines when their time comes. */
export class PracticeDay {
  #busy = false;
  /** Keys of the lines that were said; null until the day was looked at. What was refused or only asked stands in no book. */
  #said: Set<string> | null = null;

  constructor(readonly ears: DayEars) {}

  /** On to the next thing the clerk says by itself. */
  toNextReminder(): Promise<void> {
    return this.#alone(async () => {
      await this.ears.posted();
      for (let step = 0; step < MOST_STEPS; step += 1) {
        if (!(await this.#step()) || (await this.ears.posted())) return;
      }
    });
  }

  on(byMinutes: number): Promise<void> {
    return this.#alone(async () => {
      const target = this.ears.now() + byMinutes * MINUTE;
      const lines = (await this.#toSay())?.filter((line) => line.at <= target) ?? [];
      for (const line of lines) {
        if (!(await this.#moveTo(line.at)) || !(await this.#say(line))) return;
        await this.ears.posted();
      }
      await this.#moveTo(target);
      await this.ears.posted();
    });
  }

  /** One line whose time has come, or on to the next planned moment, at most to the next line. */
  async #step(): Promise<boolean> {
    const lines = await this.#toSay();
    if (lines === null) return false;
    const [line] = lines;
    if (line !== undefined && line.at <= this.ears.now()) return this.#say(line);
    return this.#kept(await move({ to: 'next', ...(line === undefined ? {} : { until: new Date(line.at).toISOString() }) })) !== null;
  }

  async #say(line: DayLineNote): Promise<boolean> {
    const reply = this.#kept(await ask('/api/messages', readReplyBody, { body: { from: line.from, text: line.text }, key: line.key }));
    if (reply === null) return false;
    this.#said?.add(line.key);
    this.ears.said(line, reply);
    return true;
  }

  async #moveTo(at: number): Promise<boolean> {
    const ahead = at - this.ears.now();
    return ahead <= 0 || this.#kept(await move({ advance: `PT${ahead / 1_000}S` })) !== null;
  }

  /** Lines that nobody said yet, in order. Those of a time that had passed when the page was opened were said before. */
  async #toSay(): Promise<readonly DayLineNote[] | null> {
    const lines = this.#kept(await ask('/api/practice', readDay));
    if (lines === null) return null;
    const said = this.#said ?? new Set(lines.filter((line) => line.at < this.ears.now()).map((line) => line.key));
    this.#said = said;
    return lines.filter((line) => !line.said && !said.has(line.key));
  }

  #kept<T>(outcome: Outcome<T>): T | null {
    if (outcome.kind === 'done') return outcome.value;
    if (outcome.kind === 'refused') this.ears.refused(outcome.detail);
    else this.ears.unreachable();
    return null;
  }

  async #alone(work: () => Promise<void>): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    try {
      await work();
    } finally {
      this.#busy = false;
    }
  }
}

const move = (body: object): Promise<Outcome<number>> => ask('/api/clock', readNow, { body, key: null });
