import { expect, it } from 'vitest';
import { Day } from './day.js';
import type { ReplyJson } from './program.js';
import { shopWithChatIds, type CHAT_IDS } from './slack-day.js';
import { toldOnSlack } from './told-on-slack.js';

/** Whoever is on the list of the example shop, or of a shop that a test makes out of it. */
export type Person = keyof typeof CHAT_IDS;

/** Something the clerk said, as a person sees it. */
export interface Told {
  /** Its lines, without the name it is addressed to. */
  readonly text: string;
  readonly labels: readonly string[];
  /** Presses one of its buttons; gives the answer to that. */
  press(person: Person, label: string): Promise<Told>;
}

/** What it said by itself. `at` is the time of the day it began on, `HH:MM`, or a full local time. `to` is a person, or `channel`. */
export interface ToldPost extends Told {
  readonly at: string;
  readonly kind: string;
  readonly to: string;
}

/** A day in the example shop, with the same words for whichever way the people talk to the built program. */
export interface ToldDay {
  at(time: string): Promise<void>;
  says(person: Person, line: string): Promise<Told>;
  /** All that was posted since the beginning, in order, or of one kind. */
  posts(kind?: string): Promise<ToldPost[]>;
  /** `due time state` of one milestone; see `Day`. */
  milestone(job: string, kind: string, joint?: string): Promise<string>;
  share(job: string, kind: string): Promise<number>;
  /** The cures that stand on a job. */
  cures(job: string): Promise<string[]>;
  /** `kill -9` now; starts again with the clock at `time`. */
  killedUntil(time: string): Promise<void>;
  /** Everything said so far, answers and posts. */
  everything(): Promise<string[]>;
}

export const WAYS = ['page', 'slack'] as const;

/** Words that would be leave to do something, or a promise about the joint. */
const LEAVE = /\b(?:safe|cured|guaranteed?|ok to|okay to|you may|you can|go ahead|fine to|allowed)\b/i;

/** Our own longest wait: the platform takes about one message a second. */
const LONGEST_MS = 110_000;

/**
 * Plays one scenario through the page's JSON interface and, as a test of its own, through signed requests of the chat platform.
 * Whatever is said on the way, nothing of it may be leave. `change` makes the shop out of the example shop's file.
 */
export function scenario(name: string, begins: string, play: (day: ToldDay) => Promise<void>, change: (shop: string) => string = (shop) => shop): void {
  it.each(WAYS)(`${name}, by %s`, async (way) => {
    const shop = shopWithChatIds(change);
    const day = way === 'page' ? toldOnPage(await Day.begin(begins, { CURECLERK_SHOP: shop })) : await toldOnSlack(begins, shop);
    await play(day);
    expect((await day.everything()).filter((text) => LEAVE.test(text))).toEqual([]);
  }, LONGEST_MS);
}

/** Posts as `HH:MM kind person`. */
export async function posted(day: ToldDay, kind?: string): Promise<string[]> {
  return (await day.posts(kind)).map((post) => `${post.at} ${post.kind} ${post.to}`);
}

/** The only post of a kind. */
export async function theOnly(day: ToldDay, kind: string): Promise<ToldPost> {
  const [only, ...others] = await day.posts(kind);
  if (only === undefined || others.length > 0) throw new Error(`Not one ${kind} post: ${(await posted(day)).join(', ')}`);
  return only;
}

function toldOnPage(day: Day): ToldDay {
  const answers: string[] = [];
  const toldOf = (reply: ReplyJson): Told => ({
    text: reply.text,
    labels: reply.buttons.map(({ label }) => label),
    press: async (person, label) => answered(await day.program.press(person, reply, label)),
  });
  const answered = (reply: ReplyJson): Told => {
    answers.push(reply.text);
    return toldOf(reply);
  };
  const posts = async (kind?: string): Promise<ToldPost[]> => (await day.posts(kind)).map(({ at, to, about, reply }) => ({ ...toldOf(reply), at: day.shortTime(at), kind: about.kind, to }));
  return {
    at: (time) => day.at(time),
    says: async (person, line) => answered(await day.says(person, line)),
    posts,
    milestone: (job, kind, joint) => day.milestone(job, kind, joint),
    share: (job, kind) => day.share(job, kind),
    cures: (job) => day.cures(job),
    killedUntil: (time) => day.killedUntil(time),
    everything: async () => [...answers, ...(await posts()).map(({ text }) => text)],
  };
}
