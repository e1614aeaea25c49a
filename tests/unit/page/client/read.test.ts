import { expect, test } from 'vitest';
import { readDesk, readJob, readPosts, readReplyBody } from '../../../../src/chat/page/client/read.js';
import { pageApp } from '../../../../src/chat/page/page-app.js';
import { answerOf, postOf } from '../../../support/fake-desk.js';
import { NOON, pageRoom } from '../../../support/page-room.js';

const room = pageRoom();
const app = pageApp(room.ports);
const get = async (path: string): Promise<unknown> => (await app.request(path)).json();

test('the client reads what the server sends', async () => {
  room.desk.cars = [{ job: '501', joint: 'j1', card: 'P1', waitsFor: 'handling', state: 'due', dueAt: NOON, owner: 'tomek', heat: 'air 20' }];
  room.desk.jobs = [{ job: '501', cures: [{ joint: 'j1', card: 'P1', milestones: [{ kind: 'handling', dueAt: NOON, state: 'due', share: 1 }] }] }];
  room.desk.post(postOf('k1', 'one', { at: NOON, answer: answerOf('one', [{ label: 'Hard', line: 'check 501 hard' }, { label: 'Go on', line: 'release 501', asks: 'reason' }]) }));
  expect(readDesk(await get('/api/desk'))).toMatchObject({ shop: 'Brackenholt Body & Frame', now: NOON, lastPost: 1, board: [{ job: '501', dueAt: NOON, share: 1 }] });
  expect(readJob(await get('/api/jobs/501'))).toEqual([{ joint: 'j1', card: 'P1', milestones: [{ kind: 'handling', dueAt: NOON, state: 'due', share: 1 }] }]);
  expect(readPosts(await get('/api/feed'))).toEqual([{ seq: 1, at: NOON, to: 'tomek', about: { job: '501', joint: null, card: 'P1' }, kind: 'handling', reply: { id: 'k1', text: 'one', buttons: [{ id: 'check 501 hard', label: 'Hard', asks: false }, { id: 'release 501', label: 'Go on', asks: true }] } }]);
});

test.each([
  [readReplyBody, null, /object/],
  [readReplyBody, { reply: { id: 1 } }, /no text in id/],
  [readReplyBody, { reply: { id: 'r', text: 't', buttons: {} } }, /no list in buttons/],
  [readPosts, { posts: [{ seq: '1' }] }, /no number in seq/],
  [readPosts, { posts: [{ seq: 1, at: 'noon' }] }, /no moment in at/],
])('a wrong shape throws and names the field', (read, value, message) => {
  expect(() => read(value)).toThrow(message);
});
