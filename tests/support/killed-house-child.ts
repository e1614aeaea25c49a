import { appendFileSync, existsSync, readFileSync, writeSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { Clerk } from '../../src/clerk/clerk.js';
import { messageId } from '../../src/clerk/message.js';
import type { OutboxRow } from '../../src/clerk/ports.js';
import { slackAddressing } from '../../src/chat/slack/addressing.js';
import { openHouseClock } from '../../src/clock/house-clock.js';
import { readConfig } from '../../src/config.js';
import { readCards } from '../../src/config/cards-file.js';
import { readShop } from '../../src/config/shop-file.js';
import { instant, later, minutes, minutesBetween } from '../../src/cure/units.js';
import type { ChatSender, Finding, Outcome } from '../../src/outbox/chat-sender.js';
import { Dispatcher } from '../../src/outbox/dispatcher.js';
import { personId } from '../../src/repair/ids.js';
import { openBook } from '../../src/store/open.js';

/**
 * One working day of a house with its outbox, told from the line `from` on, that kills itself at the `dieAt`-th point at which a
 * kill could do harm (0: never): around and inside every transaction, around every claim, send and receipt.
 * Arguments: folder, file with the lines, file that stands for the platform, from, dieAt. Prints `told <index>` once a line is answered, and `done` at the end.
 */
const [folder = '', linesFile = '', platformFile = '', fromText = '', dieText = ''] = process.argv.slice(1);
const START = Date.parse('2026-03-02T08:00:00Z');
const END = instant(Date.parse('2026-03-03T12:00:00Z'));

let points = 0;
const point = (): void => {
  points += 1;
  if (points === Number(dieText)) process.kill(process.pid, 'SIGKILL');
};

const around = <T>(work: () => T): T => {
  point();
  const done = work();
  point();
  return done;
};

/** Takes messages as the platform does: they stand there before anybody is told; every third answer gets lost. */
class Platform implements ChatSender {
  #sends = 0;

  send({ delivery: { key, target } }: OutboxRow): Promise<Outcome> {
    this.#sends += 1;
    around(() => { appendFileSync(platformFile, `${target.kind} ${key}\n`); });
    return Promise.resolve(this.#sends % 3 === 0 ? { kind: 'unknown', reason: 'the answer got lost' } : { kind: 'sent', channel: 'C1', ts: key });
  }

  find({ delivery: { key, target } }: OutboxRow): Promise<Finding> {
    point();
    if (target.kind === 'edit' || target.kind === 'thread-head') return Promise.resolve({ kind: 'absent' });
    const there = existsSync(platformFile) && readFileSync(platformFile, 'utf8').split('\n').includes(`${target.kind} ${key}`);
    return Promise.resolve(there ? { kind: 'found', channel: 'C1', ts: key } : { kind: 'absent' });
  }
}

const log = { info: () => undefined, warn: () => undefined, error: (facts: object, words: string) => { writeSync(2, `${words} ${JSON.stringify(facts)}\n`); } };
const settings = readConfig({});
if (!settings.ok) throw new Error('no settings');
const shop = readShop(settings.config.shop.path);
const cards = readCards(settings.config.cards.path);
if (!shop.ok || !cards.ok) throw new Error('no shop');

const book = openBook(folder);
const store = {
  ...book,
  transact: <T>(work: (tx: Parameters<Parameters<typeof book.transact>[0]>[0]) => T): T => around(() => book.transact((tx) => { const done = work(tx); point(); return done; })),
  claim: (...rest: Parameters<typeof book.claim>) => { around(() => { book.claim(...rest); }); },
  sent: (...rest: Parameters<typeof book.sent>) => { around(() => { book.sent(...rest); }); },
  retry: (...rest: Parameters<typeof book.retry>) => { around(() => { book.retry(...rest); }); },
};
const clock = openHouseClock('2026-03-02T08:00', shop.shop.zone, store, (error) => { throw error; });
const clerk = new Clerk({ store, clock: clock.clock, shop: shop.shop, cards: cards.cards, procedures: [], addressing: slackAddressing(shop.shop), log, clockRingsBells: true });
clerk.resume();
const dispatcher = new Dispatcher({ store, sender: new Platform(), realNow: () => instant(Date.now()), log, pacing: { spacingMs: 0, settleMs: 0, pollMs: 5, backoff: () => 1 } });
clerk.onChange(() => { dispatcher.kick(); });
dispatcher.kick();

/** Lets the outbox work until nothing waits. */
async function drained(): Promise<void> {
  while (store.unknown().length > 0 || store.earliestNotBefore() !== null) await wait(2);
}

const moveTo = (at: typeof END): void => { clock.practice?.advance(minutes(minutesBetween(clock.clock.now(), later(at, clock.clock.now())))); };

for (const [index, line] of readFileSync(linesFile, 'utf8').trim().split('\n').entries()) {
  const [minute = '', who = '', ...words] = line.split(' ');
  if (index < Number(fromText)) continue;
  moveTo(instant(START + Number(minute) * 60_000));
  clerk.say({ id: messageId(`line-${index}`), from: { id: personId(who), name: who }, text: words.join(' '), thread: null, returnPath: { chat: 'page' }, mayRepeat: true });
  writeSync(1, `told ${index}\n`);
  await drained();
}
moveTo(END);
await drained();
writeSync(1, 'done\n');
process.exit(0);
