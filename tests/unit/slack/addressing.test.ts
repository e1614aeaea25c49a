import { describe, expect, it } from 'vitest';
import { slackAddressing } from '../../../src/chat/slack/addressing.js';
import { messageId } from '../../../src/clerk/message.js';
import type { Message, Post, ReturnPath } from '../../../src/clerk/message.js';
import type { NewPost } from '../../../src/clerk/ports.js';
import { instant } from '../../../src/cure/units.js';
import { jobNo, personId } from '../../../src/repair/ids.js';
import { answerOf, postOf } from '../../support/fake-desk.js';
import { slackShop } from '../../support/slack-shop.js';

const JOB = jobNo('501');
const NOW = instant(5_000);
const addressing = slackAddressing(slackShop());
const post = (change: Partial<NewPost> = {}): Post => ({ ...postOf('k', 'said', change), seq: 1 });
const delivered = (one: Post) => addressing.post(one, one.about);

function message(returnPath: ReturnPath, thread = jobNo('')): Message {
  return { id: messageId('m1'), from: { id: personId('anna'), name: 'Anna' }, text: 'x', thread: thread === '' ? null : thread, returnPath };
}

const SLASH: ReturnPath = { chat: 'slack', channel: 'C7', thread: null, user: 'U1', visible: 'to-asker' };
const MENTION: ReturnPath = { chat: 'slack', channel: 'C7', thread: '9.9', user: 'U1', visible: 'to-all' };

describe('posts of the clerk', () => {
  it('go into the job\'s thread and mention the person who must act', () => {
    const one = post({ to: personId('anna') });
    expect(delivered(one)).toEqual([
      { key: 'post:k', chat: 'slack', target: { kind: 'job-thread', job: JOB }, urgent: false, mention: 'U0ANNA1', answer: one.answer, createdAt: one.at },
    ]);
  });

  it.each(['open-limit', 'safety', 'decision'] as const)('about %s are urgent', (kind) => {
    const { about } = post();
    expect(delivered(post({ about: { ...about, kind } }))).toMatchObject([{ urgent: true }]);
  });

  it('for everybody, or about no job, go into the home channel', () => {
    const { about } = post();
    expect(delivered(post({ to: 'channel' }))).toMatchObject([{ target: { kind: 'home-channel' }, mention: null }]);
    expect(delivered(post({ to: personId('anna'), about: { ...about, job: null } }))).toMatchObject([{ target: { kind: 'home-channel' }, mention: 'U0ANNA1' }]);
  });

  it.each([
    ['walter', null],
    ['u0guest7', 'U0GUEST7'],
    ['wanda', null],
    ['nobody', null],
  ])('to %s mention %s', (person, mention) => {
    expect(delivered(post({ to: personId(person) }))).toMatchObject([{ mention }]);
  });
});

it('a post to somebody who cannot be mentioned begins with the name', () => {
  const [walter, anna] = ['walter', 'anna'].map((to) => addressing.post(post({ to: personId(to) }), post().about)[0]?.answer.lines[0]?.[0]?.text);
  expect([walter, anna]).toEqual(['Walter: ', 'said']);
});

describe('what takes the place of something', () => {
  it('names the post it stands for, and keeps its mention', () => {
    const [original] = delivered(post({ to: personId('anna') }));
    expect(addressing.answered(post({ to: personId('anna') }), answerOf('said\ndone'), NOW)).toMatchObject([{ key: 'done:post:k', target: { kind: 'edit', of: original?.key }, mention: 'U0ANNA1', urgent: false }]);
  });

  it('gives every change of a sheet a key of its own', () => {
    const keys = [1, 2].flatMap((change) => addressing.sheet(JOB, answerOf('x'), change, NOW).map(({ key }) => key));
    expect(new Set(keys).size).toBe(2);
  });
});

it('a form is answered in direct messages when something was stored, a home tab always', () => {
  const asked = (from: 'form' | 'home', isEntry: boolean) => addressing.reply(message({ chat: 'slack-direct', user: 'U1', from }), answerOf('x'), null, isEntry, NOW).map(({ target }) => target);
  const direct = [{ kind: 'direct', user: 'U1' }];
  expect([asked('form', false), asked('form', true), asked('home', false), asked('home', true)]).toEqual([[], direct, direct, direct]);
});

describe('replies', () => {
  const answer = answerOf('first line\nsecond line', [{ label: 'b', line: 'b' }]);
  const replied = (one: Message, job = jobNo(''), isEntry = false) => addressing.reply(one, answer, job === '' ? null : job, isEntry, NOW);

  it('to a slash command are for the asker alone', () => {
    expect(replied(message(SLASH))).toEqual([
      { key: 'reply:m1', chat: 'slack', target: { kind: 'only-for', channel: 'C7', thread: null, user: 'U1' }, urgent: false, mention: null, answer, createdAt: NOW },
    ]);
  });

  it('to a mention stand in its thread', () => {
    expect(replied(message(MENTION))).toMatchObject([{ target: { kind: 'channel', channel: 'C7', thread: '9.9' } }]);
  });

  it('of an entry leave one line in the job\'s thread as well', () => {
    const [reply, record, ...more] = replied(message(SLASH), JOB, true);
    expect(more).toEqual([]);
    expect(reply).toMatchObject({ key: 'reply:m1' });
    expect(record).toEqual({
      key: 'record:m1',
      chat: 'slack',
      target: { kind: 'job-thread', job: JOB },
      urgent: false,
      mention: null,
      answer: { tone: 'plain', lines: [[{ kind: 'text', text: 'Anna: ' }, { kind: 'text', text: 'first line' }]], buttons: [] },
      createdAt: NOW,
    });
  });

  it('given in the job\'s own thread leave no second line there', () => {
    expect(replied(message(MENTION, JOB), JOB, true)).toMatchObject([{ key: 'reply:m1', target: { kind: 'job-thread', job: JOB } }]);
  });

  it('about another job than the thread\'s leave the line with that job', () => {
    expect(replied(message(MENTION, jobNo('777')), JOB, true)).toMatchObject([{ target: { kind: 'job-thread', job: '777' } }, { key: 'record:m1', target: { kind: 'job-thread', job: JOB } }]);
  });

  it('seen by the asker alone leave the line even in the job\'s thread', () => {
    expect(replied(message({ ...SLASH, thread: '9.9' }, JOB), JOB, true)).toMatchObject([{ target: { kind: 'only-for' } }, { key: 'record:m1' }]);
  });

  it('to the local page are given there; an entry still leaves its line', () => {
    expect(replied(message({ chat: 'page' }), JOB, false)).toEqual([]);
    expect(replied(message({ chat: 'page' }), JOB, true)).toMatchObject([{ key: 'record:m1', target: { kind: 'job-thread', job: JOB } }]);
  });
});
