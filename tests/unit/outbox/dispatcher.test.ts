import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Delivery, DeliveryTarget } from '../../../src/clerk/message.js';
import type { OutboxRow } from '../../../src/clerk/ports.js';
import { instant } from '../../../src/cure/units.js';
import type { ChatSender, Finding, Outcome } from '../../../src/outbox/chat-sender.js';
import { Dispatcher } from '../../../src/outbox/dispatcher.js';
import type { Pacing } from '../../../src/outbox/pacing.js';
import { jobNo } from '../../../src/repair/ids.js';
import { memoryBook } from '../../../src/store/memory-book.js';
import type { Book } from '../../../src/store/book.js';
import { answerOf } from '../../support/fake-desk.js';
import { quietLog } from '../../support/quiet-log.js';
import { until } from '../../support/slack-stand-in/until.js';

const HOME: DeliveryTarget = { kind: 'home-channel' };
const QUICK: Pacing = { spacingMs: 5, settleMs: 5, drainMs: 500, pollMs: 20, backoff: () => 10 };
const SENT: Outcome = { kind: 'sent', channel: 'C1', ts: '1.1' };

function delivery(key: string, change: Partial<Delivery> = {}): Delivery {
  return { key, chat: 'slack', target: HOME, urgent: false, mention: null, answer: answerOf(key), createdAt: instant(0), ...change };
}

/** A chat that does what the test says; the last word of a script is repeated. */
class ScriptedSender implements ChatSender {
  readonly sent: string[] = [];
  readonly found: string[] = [];
  /** Both, in order. */
  readonly acts: string[] = [];
  atOnce = 0;
  most = 0;
  outcomes: (Outcome | Error)[] = [SENT];
  findings: (Finding | Error)[] = [{ kind: 'absent' }];
  tookMs = 1;

  async send({ delivery: { key } }: OutboxRow): Promise<Outcome> {
    this.sent.push(key);
    this.acts.push(`send ${key}`);
    this.atOnce += 1;
    this.most = Math.max(this.most, this.atOnce);
    await wait(this.tookMs);
    this.atOnce -= 1;
    return next(this.outcomes);
  }

  find({ delivery: { key } }: OutboxRow): Promise<Finding> {
    this.found.push(key);
    this.acts.push(`find ${key}`);
    return new Promise((resolve) => {
      resolve(next(this.findings));
    });
  }
}

function next<T>(script: (T | Error)[]): T {
  const step = script.length > 1 ? script.shift() : script[0];
  if (step === undefined) throw new Error('nothing scripted');
  if (step instanceof Error) throw step;
  return step;
}

interface Setting {
  readonly book: Book;
  readonly sender: ScriptedSender;
  readonly log: ReturnType<typeof quietLog>;
  readonly dispatcher: Dispatcher;
  readonly queue: (...deliveries: Delivery[]) => void;
}

function setting(pacing: Partial<Pacing> = {}, book: Book = memoryBook(), realNow = () => instant(Date.now())): Setting {
  const sender = new ScriptedSender();
  const log = quietLog();
  const dispatcher = new Dispatcher({ store: book, sender, realNow, log, pacing: { ...QUICK, ...pacing } });
  onTestFinished(() => dispatcher.close());
  return { book, sender, log, dispatcher, queue: (...deliveries) => { book.transact((tx) => { tx.queue(deliveries); }); } };
}

const settled = (book: Book): Promise<true> => until('an empty outbox', () => book.earliestNotBefore() === null && book.unknown().length === 0);

describe('Dispatcher', () => {
  it('comes back to what belongs to something that is not sent yet, and warns nobody of it', async () => {
    const { book, sender, log, dispatcher, queue } = setting();
    sender.outcomes = [{ kind: 'not-yet' }, { kind: 'not-yet' }, SENT];
    queue(delivery('sheet', { target: { kind: 'edit', of: 'a' } }));
    dispatcher.kick();
    await settled(book);
    expect(sender.acts).toEqual(['send sheet', 'send sheet', 'send sheet']);
    expect(log.lines).toEqual([]);
  });

  it('lets no edit hold up a message', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.tookMs = 30;
    queue(delivery('sheet', { target: { kind: 'thread-head', job: jobNo('501') } }), delivery('alarm', { urgent: true }));
    dispatcher.kick();
    await settled(book);
    expect(sender.most).toBe(2);
  });

  it('sends what waits, urgent first, one after the other, and marks it', async () => {
    const { book, sender, dispatcher, queue } = setting();
    queue(delivery('a'), delivery('b'), delivery('c', { urgent: true }));
    dispatcher.kick();
    await settled(book);
    expect(sender.sent).toEqual(['c', 'a', 'b']);
    expect(sender.most).toBe(1);
    expect(sender.found).toEqual([]);
  });

  it('claims in the database before it sends', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.tookMs = 50;
    queue(delivery('a'));
    dispatcher.kick();
    await until('the send', () => sender.sent.length === 1);
    expect(book.unknown()).toMatchObject([{ delivery: { key: 'a' }, attempts: 1 }]);
    await settled(book);
  });

  it('lets lanes run beside each other', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.tookMs = 60;
    queue(delivery('a'), delivery('b', { target: { kind: 'channel', channel: 'C1', thread: null } }));
    dispatcher.kick();
    await settled(book);
    expect(sender.most).toBe(2);
  });

  it('rests between two sends of one lane', async () => {
    const { book, sender, dispatcher, queue } = setting({ spacingMs: 120 });
    queue(delivery('a'), delivery('b'));
    const began = Date.now();
    dispatcher.kick();
    await settled(book);
    expect(sender.sent).toEqual(['a', 'b']);
    expect(Date.now() - began).toBeGreaterThanOrEqual(115);
  });

  it('honours Retry-After in that lane only', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.outcomes = [{ kind: 'limited', retryAfterSeconds: 0.3 }, SENT];
    queue(delivery('a'));
    dispatcher.kick();
    await until('the first try', () => sender.sent.length === 1);
    queue(delivery('urgent', { urgent: true }), delivery('other', { target: { kind: 'channel', channel: 'C1', thread: null } }));
    dispatcher.kick();
    await until('the other lane', () => sender.sent.includes('other'));
    expect(sender.sent).toEqual(['a', 'other']);
    await settled(book);
    expect(sender.sent).toEqual(['a', 'other', 'urgent', 'a']);
    expect(sender.found).toEqual([]);
  });

  it('tries again what certainly was not sent, and gives up what was refused', async () => {
    const { book, sender, dispatcher, queue, log } = setting();
    sender.outcomes = [{ kind: 'failed', reason: 'service_unavailable' }, { kind: 'refused', reason: 'no_text' }];
    queue(delivery('a'));
    dispatcher.kick();
    await settled(book);
    expect(sender.sent).toEqual(['a', 'a']);
    expect(sender.found).toEqual([]);
    expect(log.lines.filter((line) => line.startsWith('error')).length).toBe(1);
  });

  it('looks up an unknown outcome and marks it sent when it stands there', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.outcomes = [{ kind: 'unknown', reason: 'reset' }];
    sender.findings = [{ kind: 'found', channel: 'C1', ts: '2.2' }];
    queue(delivery('a'));
    dispatcher.kick();
    await settled(book);
    expect([sender.sent, sender.found]).toEqual([['a'], ['a']]);
  });

  it('sends an unknown one again only after it was looked for and not found; meanwhile its lane waits', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.outcomes = [new Error('a defect in the sender'), SENT];
    sender.findings = [{ kind: 'cannot-tell', reason: 'down' }, new Error('a defect in the look-up'), { kind: 'absent' }];
    queue(delivery('a'), delivery('b'));
    dispatcher.kick();
    await settled(book);
    expect(sender.acts.slice(0, 4)).toEqual(['send a', 'find a', 'find a', 'find a']);
    expect(sender.acts.slice(4).sort()).toEqual(['send a', 'send b']);
  });

  it('gives up a message of which no trace is kept', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.outcomes = [{ kind: 'unknown', reason: 'reset' }];
    sender.findings = [{ kind: 'never-told', reason: 'unknown, ephemeral' }];
    queue(delivery('a'));
    dispatcher.kick();
    await settled(book);
    expect(sender.sent).toEqual(['a']);
  });

  it.each([
    ['found', { kind: 'found', channel: 'C1', ts: '1.1' }, []],
    ['absent', { kind: 'absent' }, ['a']],
  ] as const)('looks up what a killed process left on its way: %s', async (_name, finding, sentAgain) => {
    const { book, sender, dispatcher, queue } = setting();
    sender.findings = [finding];
    queue(delivery('a'));
    book.claim('a', instant(Date.now()));
    dispatcher.kick();
    await settled(book);
    expect([sender.found, sender.sent]).toEqual([['a'], sentAgain]);
  });

  it('looks up a message whose receipt could not be written, and does not send it twice', async () => {
    const book = memoryBook();
    let full = true;
    const failing: Book = { ...book, sent: (...receipt) => {
      if (full) {
        full = false;
        throw new Error('disk full');
      }
      book.sent(...receipt);
    } };
    const { sender, dispatcher, queue } = setting({}, failing);
    sender.findings = [{ kind: 'found', channel: 'C1', ts: '1.1' }];
    queue(delivery('a'));
    dispatcher.kick();
    await settled(book);
    expect([sender.sent, sender.found]).toEqual([['a'], ['a']]);
  });

  it('survives a database that cannot be read or written for a while', async () => {
    const book = memoryBook();
    let broken = 4;
    const fail = (): void => {
      broken -= 1;
      if (broken >= 0) throw new Error('disk I/O error');
    };
    const failing: Book = { ...book, unknown: () => { fail(); return book.unknown(); }, nextWaiting: (now) => { fail(); return book.nextWaiting(now); }, claim: (key, at) => { fail(); book.claim(key, at); } };
    const { sender, dispatcher, queue, log } = setting({}, failing);
    queue(delivery('a'));
    dispatcher.kick();
    await until('the send', () => sender.sent.length === 1);
    await settled(book);
    expect(log.lines.filter((line) => line.startsWith('error')).length).toBe(4);
  });

  it.each([-3_600_000, 3_600_000])('is not stopped by a computer clock that is put right by %s ms', async (correction) => {
    let off = 0;
    const { book, sender, dispatcher, queue } = setting({ spacingMs: 50 }, memoryBook(), () => instant(Date.now() + off));
    sender.outcomes = [SENT, { kind: 'failed', reason: 'service_unavailable' }, SENT];
    queue(delivery('a'), delivery('b'));
    dispatcher.kick();
    await until('the second send', () => sender.sent.length === 2);
    off = correction;
    queue(delivery('c'));
    dispatcher.kick();
    await settled(book);
    expect([...sender.sent].sort()).toEqual(['a', 'b', 'b', 'c']);
  });

  it('finishes what is in flight when it closes, and begins nothing new', async () => {
    const { book, sender, dispatcher, queue } = setting();
    sender.tookMs = 80;
    queue(delivery('a'), delivery('b'));
    dispatcher.kick();
    await until('the first send', () => sender.sent.length === 1);
    await dispatcher.close();
    expect(book.unknown()).toEqual([]);
    dispatcher.kick();
    await wait(50);
    expect(sender.sent).toEqual(['a']);
    expect(book.nextWaiting(instant(Date.now())).map((row) => row.delivery.key)).toEqual(['b']);
  });

  it('does not wait for ever when it closes, and leaves the rest to be looked up', async () => {
    const { book, sender, dispatcher, queue } = setting({ drainMs: 30 });
    sender.tookMs = 300;
    queue(delivery('a'));
    dispatcher.kick();
    await until('the send', () => sender.sent.length === 1);
    await dispatcher.close();
    await wait(350);
    expect(book.unknown().map((row) => row.delivery.key)).toEqual(['a']);
  });

  it('stops looking up when it closes', async () => {
    const { book, sender, dispatcher, queue } = setting({ backoff: () => 60_000 });
    sender.findings = [{ kind: 'cannot-tell', reason: 'down' }];
    queue(delivery('a'));
    book.claim('a', instant(Date.now()));
    dispatcher.kick();
    await until('the look-up', () => sender.found.length === 1);
    await dispatcher.close();
    expect(book.unknown().length).toBe(1);
  });
});
