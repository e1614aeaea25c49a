import Database from 'better-sqlite3';
import { join } from 'node:path';
import { z } from 'zod';
import { keyIn } from '../../src/chat/slack/delivery-mark.js';
import type { Day } from './day.js';
import { CHAT_IDS, slackDay, type SlackDay } from './slack-day.js';
import { blockSchema } from './slack-stand-in/check-post.js';
import { commandPayload, pressPayload } from './slack-stand-in/payloads.js';
import type { StandingMessage } from './slack-stand-in/room.js';
import { until } from './slack-stand-in/until.js';
import type { Person, Told, ToldDay, ToldPost } from './told-day.js';

/** The platform takes one message a second, and the machine may be busy. */
const PATIENCE_MS = 60_000;
/** Edits change what stands there and post nothing. */
const ON_THEIR_WAY = "SELECT count(*) AS messages FROM outbox WHERE state IN ('waiting', 'sending') AND lane <> 'edits'";

/**
 * A day by signed requests of the platform: lines are typed as `/cure LINE`, answers to them are what is shown to that person alone, and
 * posts are what then stands in the room. What the room shows is looked at after every moment at which something is planned, so that a
 * post's time is when it stood there.
 */
export async function toldOnSlack(begins: string, shop: string): Promise<ToldDay> {
  return new SlackTelling(await slackDay('http', begins, shop), Date.parse(`${begins}Z`));
}

type Place = { readonly channel: string; readonly ephemeral: true } | { readonly ephemeral: false; readonly message: StandingMessage };

class SlackTelling implements ToldDay {
  readonly #slack: SlackDay;
  readonly #day: Day;
  readonly #answers: string[] = [];
  readonly #posts = new Map<string, ToldPost>();
  #now: number;
  #requests = 0;

  constructor(slack: SlackDay, now: number) {
    this.#slack = slack;
    this.#day = slack.day;
    this.#now = now;
  }

  async at(time: string): Promise<void> {
    const target = Date.parse(this.#day.iso(time));
    await this.#look();
    while (this.#now < target) {
      this.#now = await this.#day.stepTowards(time);
      await this.#look();
    }
  }

  /** Everybody types where nobody else does, so that an answer is known by its place and waits for no other. */
  async says(person: Person, line: string): Promise<Told> {
    const channel = `C0TYPED${(this.#requests += 1)}`;
    const user = CHAT_IDS[person];
    acknowledged(await this.#slack.http().command(commandPayload({ text: line, user, userName: person, channel })));
    return this.#shown(channel, user, 0, line);
  }

  async posts(kind?: string): Promise<ToldPost[]> {
    await this.#look();
    return [...this.#posts.values()].filter((post) => kind === undefined || post.kind === kind);
  }

  milestone(job: string, kind: string, joint?: string): Promise<string> {
    return this.#day.milestone(job, kind, joint);
  }

  share(job: string, kind: string): Promise<number> {
    return this.#day.share(job, kind);
  }

  cures(job: string): Promise<string[]> {
    return this.#day.cures(job);
  }

  async killedUntil(time: string): Promise<void> {
    await this.#look();
    await this.#day.killedUntil(time);
    this.#now = Date.parse(this.#day.iso(time));
    await this.#look();
  }

  async everything(): Promise<string[]> {
    await this.#look();
    return [...this.#answers, ...this.#slack.platform.room.messages.map(({ text }) => plain(text))];
  }

  /** Waits until all that is said is there, and notes which posts are new. */
  async #look(): Promise<void> {
    const db = new Database(join(this.#day.folder, 'book.sqlite'), { readonly: true });
    try {
      const onTheirWay = db.prepare<[], { messages: number }>(ON_THEIR_WAY);
      await until('everything that is to be said', () => onTheirWay.get()?.messages === 0, PATIENCE_MS);
    } finally {
      db.close();
    }
    for (const message of this.#slack.platform.room.messages) this.#note(message);
  }

  #note(message: StandingMessage): void {
    const key = keyIn(message.metadata);
    const place = `${message.channel} ${message.ts}`;
    if (key === null) throw new Error(`A message without a mark: ${message.text}`);
    if (!key.startsWith('post:') || this.#posts.has(place)) return;
    this.#posts.set(place, { ...this.#told(message, { ephemeral: false, message }), at: this.#day.shortTime(new Date(this.#now).toISOString()), kind: kindIn(key), to: mentionedIn(message.text) });
  }

  #told({ text, blocks }: Pick<StandingMessage, 'text' | 'blocks'>, place: Place): Told {
    const buttons = buttonsOf(blocks);
    return {
      text: plain(text),
      labels: buttons.map(({ label }) => label),
      press: async (person, label) => {
        const button = buttons.find((one) => one.label === label);
        if (button === undefined) throw new Error(`No button ${label} under: ${text}`);
        return place.ephemeral ? this.#pressShown(person, place.channel, button.line) : this.#pressStanding(person, place.message, button.line);
      },
    };
  }

  async #pressShown(person: Person, channel: string, line: string): Promise<Told> {
    const user = CHAT_IDS[person];
    const before = this.#shownIn(channel, user).length;
    if (before === 0) throw new Error(`${person} does not see what is in ${channel}.`);
    acknowledged(await this.#slack.http().action(pressPayload({ line, user, userName: person, channel, ephemeral: true })));
    return this.#shown(channel, user, before, line);
  }

  async #pressStanding(person: Person, { channel, ts, thread }: StandingMessage, line: string): Promise<Told> {
    const user = CHAT_IDS[person];
    const actionTs = `1700000200.${String((this.#requests += 1)).padStart(6, '0')}`;
    acknowledged(await this.#slack.http().action(pressPayload({ line, user, userName: person, channel, messageTs: ts, actionTs, ...(thread === null ? {} : { threadTs: thread }) })));
    const key = `reply:slack:act:${channel}:${ts}:${actionTs}:${user}`;
    const answer = await until(`the answer to ${line}`, () => this.#slack.platform.room.messages.find(({ metadata }) => keyIn(metadata) === key), PATIENCE_MS);
    return this.#told(answer, { ephemeral: false, message: answer });
  }

  async #shown(channel: string, user: string, before: number, line: string): Promise<Told> {
    const shown = await until(`the answer to ${line}`, () => this.#shownIn(channel, user)[before], PATIENCE_MS);
    this.#answers.push(plain(shown.text));
    return this.#told(shown, { ephemeral: true, channel });
  }

  #shownIn(channel: string, user: string) {
    return this.#slack.platform.room.shown.filter((one) => one.channel === channel && one.user === user);
  }
}

function acknowledged({ status }: { readonly status: number }): void {
  if (status !== 200) throw new Error(`answered ${status}`);
}

/** `post:JOB/JOINT/CARD#RUN/KIND/…`, or the word that a post about no single cure begins with. */
function kindIn(key: string): string {
  const [first = '', , , kind = ''] = key.slice('post:'.length).split('/');
  return first === 'bundle' || first === 'together' ? 'bundle' : first === 'notice' ? 'handover' : kind;
}

const MENTION = /^<@(\w+)> /;

function mentionedIn(text: string): string {
  const id = MENTION.exec(text)?.[1];
  if (id === undefined) return 'channel';
  return Object.entries(CHAT_IDS).find(([, chatId]) => chatId === id)?.[0] ?? id;
}

const plain = (text: string): string => text.replace(MENTION, '').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');

function buttonsOf(blocks: readonly unknown[]): { readonly label: string; readonly line: string }[] {
  return z.array(blockSchema).parse(blocks).flatMap((block) => (block.type === 'actions' ? block.elements.map(({ text, value }) => ({ label: text.text, line: value })) : []));
}
