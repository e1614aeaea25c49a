import type { Press } from './answer-boxes.js';
import { ask } from './ask.js';
import { Below } from './below.js';
import { Board } from './board.js';
import { coalesce } from './coalesce.js';
import { part, tab } from './element.js';
import { showEmptiness, showHead, showTime } from './head.js';
import { Log } from './log.js';
import { newKey } from './new-key.js';
import { Outage } from './outage.js';
import { Phrases } from './phrases.js';
import { PracticeDay } from './practice-day.js';
import { readDesk, readPosts, readReplyBody, type DeskSheet, type PostNote, type ReplyNote } from './read.js';
import { SaidBefore } from './said-before.js';
import { SayForm } from './say-form.js';
import { ShopClock } from './shop-clock.js';
import { Stream } from './stream.js';
import { Writer } from './writer.js';

const EARLIER_POSTS = 40;
const LOOK_AGAIN_MILLISECONDS = 3_000;
const EXAMPLES = ['cure 501 P1 lamp 30', 'paste 502 P1', 'who waits'] as const;
const STEPS = [['+10 min', 'PT10M'], ['+1 h', 'PT1H']] as const;

/** The whole page: what its parts tell each other. */
export class Room {
  /** Looks at the desk again. */
  readonly look = coalesce(() => this.#look());
  readonly #phrases = new Phrases();
  readonly #clock = new ShopClock(this.#phrases);
  readonly #writer = new Writer(this.#phrases, () => {
    this.#log.addressedTo(this.#writer.id);
    this.look();
  });
  readonly #outage = new Outage(this.#phrases);
  readonly #below = new Below(this.#phrases);
  readonly #before = new SaidBefore();
  readonly #log = new Log(this.#clock, this.#phrases, (press) => void this.#press(press));
  readonly #form = new SayForm(this.#writer, this.#phrases, {
    said: (message, reply) => { this.#said(message.from, message.text, reply); },
    unreachable: () => { this.cutOff(); },
    time: () => this.#clock.time(this.#clock.now()),
  });
  readonly #board = new Board(this.#clock, this.#phrases, (line) => { this.#form.fill(line); });
  readonly #day = new PracticeDay({
    now: () => this.#clock.now(),
    posted: () => this.#posts(),
    said: (line, reply) => { this.#said(this.#writer.nameOf(line.from), line.text, reply); },
    refused: (detail) => { this.#refused(detail); },
    unreachable: () => { this.cutOff(); },
  });
  #lastPost = 0;
  /** Ids of presses whose outcome is unknown: pressed again, they are the same message. */
  readonly #pressKeys = new Map<string, string>();
  #stream: Stream | null = null;
  #timeShown = '';
  #retry: number | undefined;

  constructor() {
    part('example-lines', HTMLElement).append(...EXAMPLES.map((line) => tab(line, () => { this.#form.fill(line); })));
    part('practice-tabs', HTMLElement).append(...STEPS.map(([label, step]) => tab(label, () => void this.#advance(step))));
    part('day-tabs', HTMLElement).append(this.#tab('to-next', () => void this.#day.toNextReminder()), this.#tab('quarter-on', () => void this.#day.on(15)));
    this.#phrases.print();
  }

  /** Every second; what is shown changes with the minute. */
  tick(): void {
    const now = this.#clock.now();
    const time = this.#clock.time(now);
    if (time === this.#timeShown) return;
    this.#timeShown = time;
    const day = this.#clock.day(now);
    showTime(time, this.#clock.practice ? this.#phrases.say('practice-date', { day }) : day);
    this.#board.draw();
  }

  /** There is no connection; it is tried again until there is one. */
  cutOff(): void {
    this.#outage.lost(this.#clock.time(this.#clock.now()));
    clearTimeout(this.#retry);
    this.#retry = setTimeout(this.look, LOOK_AGAIN_MILLISECONDS);
  }

  async #look(): Promise<void> {
    // What the stream brings while the desk is being asked is newer than the answer.
    const heardBefore = this.#stream?.last ?? 0;
    const desk = await ask(this.#deskPath, readDesk);
    if (desk.kind !== 'done') {
      this.cutOff();
      return;
    }
    this.#show(desk.value);
    if (this.#stream === null) await this.#begin(desk.value.lastPost);
    else this.#check(this.#stream, heardBefore, desk.value.lastPost);
  }

  /** In the words of whoever writes here. */
  get #deskPath(): string {
    const { name } = this.#writer;
    return name === null ? '/api/desk' : `/api/desk?from=${encodeURIComponent(name)}`;
  }

  #show(desk: DeskSheet): void {
    this.#lastPost = desk.lastPost;
    const reworded = this.#phrases.hear(desk);
    this.#clock.hear(desk);
    if (reworded) {
      this.#writer.reworded();
      this.#log.renameDays();
    }
    this.#writer.people(desk.people);
    this.#board.show(desk.board);
    this.#log.settle(desk);
    showHead(desk, this.#phrases, this.#board.tally, this.#board.count('due'));
    showEmptiness(desk);
    this.#timeShown = '';
    this.tick();
  }

  /** Draws what was said and posted before, then follows the posts. */
  async #begin(lastPost: number): Promise<void> {
    const earlier = await ask(`/api/feed?after=${Math.max(0, lastPost - EARLIER_POSTS)}`, readPosts);
    if (earlier.kind !== 'done') {
      this.cutOff();
      return;
    }
    const entries = [
      ...earlier.value.map((post) => ({ at: post.at, draw: () => this.#posted(post) })),
      ...this.#before.entries.map((entry) => ({ at: entry.at, draw: () => this.#log.said(entry) })),
    ];
    for (const entry of entries.sort((one, other) => one.at - other.at)) entry.draw();
    this.#log.announce();
    this.#below.begin();
    this.#stream = new Stream(earlier.value.at(-1)?.seq ?? lastPost, {
      post: (post) => { this.#below.add(() => this.#posted(post), this.#forMe(post)); },
      changed: this.look,
      opened: () => { this.#outage.over(); this.look(); },
      lost: () => { this.#outage.lost(this.#clock.time(this.#clock.now())); },
    });
    this.#stream.open();
  }

  /** The desk was reached: is the stream, and does it tell the same story? */
  #check(stream: Stream, heardBefore: number, lastPost: number): void {
    if (lastPost < heardBefore) {
      // Another book lies on the desk; nothing on this sheet belongs to it.
      this.#before.forget();
      location.reload();
    } else if (lastPost > stream.last || !stream.isOpen) stream.open();
    else this.#outage.over();
  }

  /** Whether something was posted since the last time this was asked. */
  async #posts(): Promise<boolean> {
    const before = this.#lastPost;
    await this.#look();
    return this.#lastPost > before;
  }

  #forMe(post: PostNote): boolean {
    return post.to === this.#writer.id;
  }

  #posted(post: PostNote): HTMLElement {
    return this.#log.post(post, post.to === 'channel' ? null : this.#writer.nameOf(post.to), this.#writer.id);
  }

  #said(who: string, line: string, reply: ReplyNote): void {
    const entry = { at: this.#clock.now(), who, line, reply };
    this.#before.add(entry);
    this.#log.said(entry).scrollIntoView({ block: 'end' });
    this.look();
  }

  async #press({ reply, button, asks, taken }: Press): Promise<void> {
    if (asks) {
      this.#form.begin(`${button} `, 'Write why, then send.');
      return;
    }
    const from = this.#writer.name;
    if (from === null) {
      this.#form.askForName();
      return;
    }
    const which = JSON.stringify([from, reply, button]);
    const key = this.#pressKeys.get(which) ?? newKey();
    this.#pressKeys.set(which, key);
    const outcome = await ask('/api/press', readReplyBody, { body: { from, reply, button }, key });
    if (outcome.kind === 'unreachable') {
      this.#form.tell(this.#phrases.say('not-pressed', { button }));
      this.cutOff();
      return;
    }
    this.#pressKeys.delete(which);
    this.#form.tell('');
    if (outcome.kind === 'refused') {
      this.#refused(outcome.detail);
      return;
    }
    taken();
    this.#said(from, button, outcome.value);
  }

  #refused(detail: string | null): void {
    this.#form.tell(detail ?? this.#phrases.say('was-refused'));
  }

  #tab(key: string, press: () => void): HTMLButtonElement {
    const made = tab('', press);
    this.#phrases.put(made, key);
    return made;
  }

  async #advance(step: string): Promise<void> {
    const outcome = await ask('/api/clock', () => null, { body: { advance: step }, key: null });
    if (outcome.kind === 'refused') this.#refused(outcome.detail);
    if (outcome.kind === 'unreachable') this.cutOff();
    this.look();
  }
}
