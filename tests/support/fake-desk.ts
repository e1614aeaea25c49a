import type { CureForm, Desk, JobSheet, Reply, WaitingCar } from '../../src/clerk/desk.js';
import type { Message, MessageId, Post } from '../../src/clerk/message.js';
import type { NewPost } from '../../src/clerk/ports.js';
import { instant } from '../../src/cure/units.js';
import { jobNo, personId, type PersonId } from '../../src/repair/ids.js';
import type { Answer, Button } from '../../src/reply/answer.js';
import type { HomeBoard } from '../../src/reply/compose/home.js';

/** An answer of plain lines. */
export const answerOf = (text: string, buttons: readonly Button[] = []): Answer => ({
  tone: 'plain',
  lines: text.split('\n').map((line) => [{ kind: 'text', text: line }]),
  buttons,
});

/** A reminder as the clerk would post it, with everything that a test does not care about filled in. */
export function postOf(key: string, text: string, change: Partial<NewPost> = {}): NewPost {
  const at = instant(Date.parse('2026-03-02T10:00:00Z'));
  return { key, at, dueAt: at, to: personId('tomek'), about: { job: jobNo('501'), joint: null, card: 'P1', kind: 'handling' }, answer: answerOf(text), ...change };
}

/**
 * A desk without a clerk behind it: it answers as told, remembers what it was asked,
 * and treats the same message id twice as the same message.
 */
export class FakeDesk implements Desk {
  readonly said: Message[] = [];
  cars: WaitingCar[] = [];
  /** In whose words the waiting cars were asked for. */
  readonly readers: (PersonId | undefined)[] = [];
  jobs: JobSheet[] = [];
  board: HomeBoard = { mine: [], waiting: answerOf('No car waits.') };
  form: CureForm = { cards: [{ name: 'P2', title: 'Panel adhesive', needsDepth: false }], lamps: ['A'], pads: [], last: { card: null, heat: null } };
  /** Lines that cannot be read; every other line can. */
  readonly unreadable = new Set<string>();
  answer: (message: Message) => Answer = (message) => answerOf(`heard: ${message.text}`);
  readonly #posts: Post[] = [];
  readonly #replies = new Map<MessageId, Reply>();
  readonly #listeners = new Set<() => void>();

  say(message: Message): Reply {
    const before = this.#replies.get(message.id);
    if (before !== undefined) return before;
    const reply = { id: `reply-${this.said.length + 1}`, answer: this.answer(message) };
    this.said.push(message);
    this.#replies.set(message.id, reply);
    this.change();
    return reply;
  }

  knows(id: MessageId): boolean {
    return this.#replies.has(id);
  }

  offeredUnder(reply: string): readonly string[] | null {
    const under = [...this.#replies.values()].find(({ id }) => id === reply)?.answer ?? this.#posts.find(({ key }) => key === reply)?.answer;
    return under?.buttons.map(({ line }) => line) ?? null;
  }

  understands(line: string): boolean {
    return !this.unreadable.has(line);
  }

  waiting(reader?: PersonId): readonly WaitingCar[] {
    this.readers.push(reader);
    return this.cars;
  }

  jobSheet(job: string): JobSheet | null {
    return this.jobs.find((sheet) => sheet.job === job) ?? null;
  }

  cureForm(): CureForm {
    return this.form;
  }

  home(): HomeBoard {
    return this.board;
  }

  postsAfter(seq: number, limit: number): readonly Post[] {
    return this.#posts.filter((post) => post.seq > seq).slice(0, limit);
  }

  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** How many are listening: nobody may be left behind. */
  get listeners(): number {
    return this.#listeners.size;
  }

  post(post: NewPost): Post {
    const numbered = { ...post, seq: (this.#posts.at(-1)?.seq ?? 0) + 1 };
    this.#posts.push(numbered);
    this.change();
    return numbered;
  }

  change(): void {
    for (const listener of this.#listeners) listener();
  }
}
