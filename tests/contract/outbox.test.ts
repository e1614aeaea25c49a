import { webApi } from '@slack/bolt';
import { describe, expect, it, onTestFinished } from 'vitest';
import { boltLogger } from '../../src/chat/slack/bolt-logger.js';
import { headKey, markOf } from '../../src/chat/slack/delivery-mark.js';
import { SlackSender } from '../../src/chat/slack/sender.js';
import type { Delivery, DeliveryTarget } from '../../src/clerk/message.js';
import { instant } from '../../src/cure/units.js';
import { Dispatcher } from '../../src/outbox/dispatcher.js';
import { jobNo } from '../../src/repair/ids.js';
import type { Book } from '../../src/store/book.js';
import { answerOf } from '../support/fake-desk.js';
import { quietLog } from '../support/quiet-log.js';
import { SlackStandIn, STAND_IN_BOT_TOKEN } from '../support/slack-stand-in.js';
import type { Fault } from '../support/slack-stand-in.js';
import { until } from '../support/slack-stand-in/until.js';
import { EVERY_BOOK } from './every-book.js';

const HOME = 'C0HOME';
const JOB = jobNo('501');
const IN_THREAD: DeliveryTarget = { kind: 'job-thread', job: JOB };
const AT_HOME: DeliveryTarget = { kind: 'home-channel' };
const ELSEWHERE: DeliveryTarget = { kind: 'channel', channel: 'C7', thread: null };
const ALONE: DeliveryTarget = { kind: 'only-for', channel: 'C7', thread: null, user: 'U1' };
/** Shorter than any hang of the stand-in, longer than any answer. */
const CALL_MS = 400;

function delivery(key: string, target: DeliveryTarget = IN_THREAD, change: Partial<Delivery> = {}): Delivery {
  return { key, chat: 'slack', target, urgent: false, mention: null, answer: answerOf(`said ${key}`), createdAt: instant(0), ...change };
}

interface Post {
  readonly standIn: SlackStandIn;
  readonly book: Book;
  readonly troubles: Map<string, string | null>;
  readonly queue: (...deliveries: Delivery[]) => void;
  /** A process that carries the outbox; a second one takes over after the first was closed or "killed". */
  readonly begin: () => Dispatcher;
  /** Until nothing waits and nothing is on its way. */
  readonly settled: () => Promise<unknown>;
  readonly texts: () => string[];
}

async function post(book: Book): Promise<Post> {
  const standIn = await SlackStandIn.open();
  onTestFinished(() => standIn.close());
  const log = quietLog();
  const client = new webApi.WebClient(STAND_IN_BOT_TOKEN, { slackApiUrl: standIn.apiUrl, timeout: CALL_MS, retryConfig: { retries: 0 }, rejectRateLimitedCalls: true, logger: boltLogger(log) });
  const troubles = new Map<string, string | null>();
  const realNow = () => instant(Date.now());
  const sender = new SlackSender({ client, outbox: book, home: HOME, realNow, report: (part, trouble) => troubles.set(part, trouble) });
  return {
    standIn,
    book,
    troubles,
    queue: (...deliveries) => { book.transact((tx) => { tx.queue(deliveries); }); },
    begin: () => {
      const dispatcher = new Dispatcher({ store: book, sender, realNow, log, pacing: { spacingMs: 5, settleMs: 30, drainMs: 1_000, pollMs: 20, backoff: () => 25 } });
      onTestFinished(() => dispatcher.close());
      dispatcher.kick();
      return dispatcher;
    },
    settled: () => until('an empty outbox', () => book.earliestNotBefore() === null && book.unknown().length === 0),
    texts: () => standIn.room.messages.map((message) => message.text),
  };
}

describe.each(EVERY_BOOK)('the outbox on the platform, from the $name', ({ open }) => {
  it('opens one thread per job and puts everything about the job into it', async () => {
    const { standIn, queue, begin, settled, book } = await post(open());
    queue(delivery('a'), delivery('b', IN_THREAD, { mention: 'U0ANNA1' }), delivery('c', AT_HOME), delivery('d', { kind: 'job-thread', job: jobNo('502') }));
    begin();
    await settled();
    const [head, first, second, home, otherHead, other] = standIn.room.messages;
    expect(head).toMatchObject({ channel: HOME, thread: null, metadata: markOf(headKey(JOB)) });
    expect(head?.text.startsWith('Job 501')).toBe(true);
    expect(first).toMatchObject({ channel: HOME, thread: head?.ts, text: 'said a', metadata: markOf('a') });
    expect(second).toMatchObject({ thread: head?.ts, text: '<@U0ANNA1> said b' });
    expect(home).toMatchObject({ thread: null, text: 'said c' });
    expect(other?.thread).toBe(otherHead?.ts);
    expect(book.jobOfThread(HOME, head?.ts ?? '')).toBe(JOB);
    expect(standIn.room.messages.length).toBe(6);
  });

  it('says everything in the text, shows no link previews and lets nothing ping', async () => {
    const { standIn, queue, begin, settled } = await post(open());
    queue(delivery('a', ELSEWHERE, { answer: answerOf('<!channel> look\nat 501', [{ label: 'Hard', line: 'hard 501' }]) }));
    begin();
    await settled();
    const [call] = standIn.callsOf('chat.postMessage');
    expect(call?.args).toMatchObject({ text: '&lt;!channel&gt; look\nat 501', unfurl_links: 'false', unfurl_media: 'false' });
    expect(Object.keys(call?.args ?? {})).not.toContain('link_names');
    expect(Object.keys(call?.args ?? {})).not.toContain('parse');
  });

  it.each<readonly [string, Fault]>([
    ['whose answer was lost', { kind: 'lost' }],
    ['whose answer never came', { kind: 'lost-hanging' }],
    ['that was posted and answered with an error', { kind: 'done-then-http', status: 502 }],
    ['that met a server error', { kind: 'http', status: 500 }],
    ['whose connection was reset', { kind: 'reset' }],
    ['that hung', { kind: 'hang' }],
    ['that was half refused', { kind: 'error', word: 'internal_error' }],
    ['that met a limit', { kind: 'limited', seconds: 1 }],
    ['that came at a bad moment', { kind: 'error', word: 'service_unavailable' }],
  ])('delivers exactly once a message %s', async (_name, fault) => {
    const { standIn, queue, begin, settled, texts } = await post(open());
    standIn.fault('chat.postMessage', fault);
    queue(delivery('a', AT_HOME));
    begin();
    await settled();
    expect(texts()).toEqual(['said a']);
  });

  it.each<readonly [string, Fault]>([
    ['the answer was lost', { kind: 'lost' }],
    ['the answer never came', { kind: 'lost-hanging' }],
    ['nothing was posted', { kind: 'reset' }],
  ])('makes exactly one head when %s', async (_name, fault) => {
    const { standIn, queue, begin, settled, texts } = await post(open());
    standIn.fault('chat.postMessage', fault);
    queue(delivery('a'), delivery('b'));
    begin();
    await settled();
    expect(texts().filter((text) => text.startsWith('Job 501')).length).toBe(1);
    expect(texts().slice(1).sort()).toEqual(['said a', 'said b']);
    expect(new Set(standIn.room.messages.slice(1).map((message) => message.thread))).toEqual(new Set([standIn.room.messages[0]?.ts]));
  });

  it('makes exactly one head and one reply when first one answer and then the other is lost', async () => {
    const { standIn, queue, begin, settled, texts } = await post(open());
    standIn.fault('chat.postMessage', { kind: 'lost' }, { kind: 'lost' });
    queue(delivery('a'));
    begin();
    await settled();
    expect(texts().length).toBe(2);
    expect(texts()[1]).toBe('said a');
  });

  it('does not send again as long as nobody can look it up', async () => {
    const { standIn, queue, begin, settled, texts } = await post(open());
    standIn.fault('chat.postMessage', { kind: 'lost' });
    standIn.fault('conversations.history', { kind: 'http', status: 500 }, { kind: 'limited', seconds: 1 }, { kind: 'hang' }, { kind: 'error', word: 'missing_scope' });
    queue(delivery('a', AT_HOME), delivery('b', AT_HOME));
    begin();
    await until('five look-ups', () => standIn.callsOf('conversations.history').length >= 5);
    await settled();
    expect(texts()).toEqual(['said a', 'said b']);
    expect(standIn.callsOf('chat.postMessage').length).toBe(2);
  });

  it('finds a message far down in a channel', async () => {
    const { standIn, queue, begin, settled, book } = await post(open());
    queue(delivery('a', AT_HOME));
    book.claim('a', instant(Date.now()));
    standIn.room.answer('chat.postMessage', { channel: HOME, text: 'said a', metadata: JSON.stringify(markOf('a')) });
    for (let n = 0; n < 450; n += 1) standIn.room.answer('chat.postMessage', { channel: HOME, text: `chatter ${n}` });
    begin();
    await settled();
    expect(standIn.callsOf('conversations.history').length).toBe(3);
    expect(standIn.callsOf('chat.postMessage')).toEqual([]);
  });

  it.each([
    ['before anything was sent', [], ['Job 501', 'said a']],
    ['after the head', [headKey(JOB)], ['said a']],
    ['after the message', [headKey(JOB), 'a'], []],
  ])('takes over from a process killed %s', async (_name, standing, sentNow) => {
    const { standIn, queue, begin, settled, book } = await post(open());
    queue(delivery('a'), delivery('b'));
    book.claim('a', instant(Date.now()));
    let head: string | null = null;
    for (const key of standing) {
      const posted = standIn.room.answer('chat.postMessage', { channel: HOME, text: key, metadata: JSON.stringify(markOf(key)), ...(head === null ? {} : { thread_ts: head }) });
      head ??= String(posted['ts']);
    }
    begin();
    await settled();
    const sent = standIn.callsOf('chat.postMessage').map((call) => call.args['text']?.split('\n')[0]).filter((text) => text !== 'said b');
    expect(sent).toEqual(sentNow);
    expect(standIn.room.messages.filter((message) => message.thread !== null).length).toBe(2);
    expect(standIn.room.messages.filter((message) => message.thread === null).length).toBe(1);
  });

  it('lets one limited channel hold back no other', async () => {
    const { standIn, queue, begin, settled, texts } = await post(open());
    standIn.fault('chat.postMessage', { kind: 'limited', seconds: 1 });
    queue(delivery('a', ELSEWHERE));
    begin();
    await until('the limit', () => standIn.callsOf('chat.postMessage')[0]);
    queue(delivery('b', AT_HOME));
    const again = begin();
    await until('the other channel', () => texts().includes('said b'));
    expect(texts()).toEqual(['said b']);
    await settled();
    expect(texts()).toEqual(['said b', 'said a']);
    await again.close();
  });

  it('keeps what a home channel does not take until somebody invites the bot, and says so', async () => {
    const { standIn, queue, begin, settled, texts, troubles } = await post(open());
    standIn.room.barred.add(HOME);
    queue(delivery('a'));
    begin();
    await until('the trouble', () => troubles.get('home')?.includes('invite the bot'));
    standIn.room.barred.delete(HOME);
    await settled();
    expect(texts().slice(1)).toEqual(['said a']);
    expect(troubles.get('home')).toBeNull();
  });

  it('keeps what a bad token holds back, and says so', async () => {
    const { standIn, queue, begin, settled, texts, troubles } = await post(open());
    standIn.botTokenValid = false;
    queue(delivery('a', ELSEWHERE));
    begin();
    await until('the trouble', () => troubles.get('sending')?.includes('invalid_auth'));
    standIn.botTokenValid = true;
    await settled();
    expect(texts()).toEqual(['said a']);
  });

  it('gives up what another channel refuses, and goes on with the next', async () => {
    const { standIn, queue, begin, settled, texts } = await post(open());
    standIn.fault('chat.postMessage', { kind: 'error', word: 'is_archived' });
    queue(delivery('a', ELSEWHERE), delivery('b', ELSEWHERE));
    begin();
    await settled();
    expect(texts()).toEqual(['said b']);
  });

  it('says it in plain text when the platform does not like the blocks', async () => {
    const { standIn, queue, begin, settled } = await post(open());
    standIn.fault('chat.postMessage', { kind: 'error', word: 'invalid_blocks' });
    queue(delivery('a', ELSEWHERE));
    begin();
    await settled();
    expect(standIn.room.messages).toMatchObject([{ text: 'said a', blocks: [] }]);
  });

  it('says it at the top of the channel when somebody deleted the thread', async () => {
    const { standIn, queue, begin, settled, book } = await post(open());
    book.saveThread(JOB, instant(0), { channel: HOME, ts: '1.1' });
    standIn.fault('chat.postMessage', { kind: 'error', word: 'thread_not_found' }, { kind: 'lost' });
    queue(delivery('a'));
    begin();
    await settled();
    expect(standIn.room.messages).toMatchObject([{ channel: HOME, thread: null, text: 'said a' }]);
  });

  describe('for one person only', () => {
    it('shows it to that person', async () => {
      const { standIn, queue, begin, settled } = await post(open());
      queue(delivery('a', ALONE));
      begin();
      await settled();
      expect(standIn.room.shown).toMatchObject([{ channel: 'C7', user: 'U1', text: 'said a' }]);
    });

    it('never shows it twice: an unknown outcome is given up', async () => {
      const { standIn, queue, begin, settled } = await post(open());
      standIn.fault('chat.postEphemeral', { kind: 'lost' });
      queue(delivery('a', ALONE));
      begin();
      await settled();
      expect(standIn.room.shown.length).toBe(1);
      expect(standIn.callsOf('chat.postEphemeral').length).toBe(1);
    });

    it('gives up what a killed process left on its way', async () => {
      const { standIn, queue, begin, settled, book } = await post(open());
      queue(delivery('a', ALONE));
      book.claim('a', instant(Date.now()));
      begin();
      await settled();
      expect(standIn.callsOf('chat.postEphemeral')).toEqual([]);
    });

    it('tries again what certainly was not shown', async () => {
      const { standIn, queue, begin, settled } = await post(open());
      standIn.fault('chat.postEphemeral', { kind: 'error', word: 'service_unavailable' });
      queue(delivery('a', ALONE));
      begin();
      await settled();
      expect(standIn.room.shown.length).toBe(1);
    });

    it('writes to them directly where the bot is no member', async () => {
      const { standIn, queue, begin, settled } = await post(open());
      standIn.room.barred.add('C7');
      queue(delivery('a', ALONE));
      begin();
      await settled();
      expect(standIn.room.messages).toMatchObject([{ channel: 'D1', text: 'said a' }]);
    });
  });
});
