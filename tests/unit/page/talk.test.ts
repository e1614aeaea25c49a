import type { Hono } from 'hono';
import { beforeEach, expect, test } from 'vitest';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { answerOf } from '../../support/fake-desk.js';
import { pageRoom, type PageRoom } from '../../support/page-room.js';

let room: PageRoom;
let app: Hono;

beforeEach(() => {
  room = pageRoom();
  app = pageApp(room.ports);
});

const post = async (path: string, body: unknown, headers: Record<string, string> = {}): Promise<Response> =>
  app.request(path, { method: 'POST', headers: { 'content-type': 'application/json', ...headers }, body: JSON.stringify(body) });

test('a typed line goes to the desk and the answer comes back as complete text with its buttons', async () => {
  room.desk.answer = () => answerOf('501 P2 lamp 35 since 12:00.\nHandling 13:20.', [{ label: 'Lamp off', line: 'off 501' }]);
  const response = await post('/api/messages', { from: ' tomek ', text: '  cure 501 P2 lamp 35 ' });
  expect(response.status).toBe(200);
  expect(await response.json()).toEqual({
    reply: { id: 'reply-1', text: '501 P2 lamp 35 since 12:00.\nHandling 13:20.', buttons: [{ id: 'off 501', label: 'Lamp off' }] },
  });
  expect(room.desk.said).toEqual([
    { id: 'page:made-1', from: { id: 'tomek', name: 'tomek' }, text: 'cure 501 P2 lamp 35', thread: null, returnPath: { chat: 'page' }, mayRepeat: false },
  ]);
});

test('pressing a button says its line', async () => {
  const response = await post('/api/press', { from: 'Wren', reply: 'reply-1', button: 'check 501 hard' });
  expect(await response.json()).toEqual({ reply: { id: 'reply-1', text: 'heard: check 501 hard', buttons: [] } });
  expect(room.desk.said.map((message) => [message.from.name, message.text])).toEqual([['Wren', 'check 501 hard']]);
});

test('a button that is no readable line is refused by name and said to nobody', async () => {
  room.desk.unreadable.add('hard');
  const response = await post('/api/press', { from: 'Wren', reply: 'reply-1', button: 'hard' });
  expect(response.status).toBe(400);
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  expect(await response.json()).toMatchObject({ status: 400, field: 'button' });
  expect(room.desk.said).toEqual([]);
  expect((await post('/api/messages', { from: 'Wren', text: 'hard' })).status).toBe(200);
});

test('a press repeated after its line has become unreadable gets its first answer again', async () => {
  const press = async (): Promise<unknown> => (await post('/api/press', { from: 'Wren', reply: 'r', button: 'later 501' }, { 'idempotency-key': 'a-1' })).json();
  const first = await press();
  room.desk.unreadable.add('later 501');
  expect(await press()).toEqual(first);
  expect(room.desk.said).toHaveLength(1);
});

test('the same Idempotency-Key twice is the same message, on both ways in', async () => {
  const key = { 'idempotency-key': 'a-1' };
  const first: unknown = await (await post('/api/messages', { from: 'Wren', text: 'who waits' }, key)).json();
  const again: unknown = await (await post('/api/messages', { from: 'Wren', text: 'who waits' }, key)).json();
  expect(again).toEqual(first);
  await post('/api/press', { from: 'Wren', reply: 'r', button: 'later 501' }, { 'idempotency-key': 'a-2' });
  await post('/api/press', { from: 'Wren', reply: 'r', button: 'later 501' }, { 'idempotency-key': 'a-2' });
  expect(room.desk.said.map((message) => message.id)).toEqual(['page:a-1', 'page:a-2']);
});

test('a sender who heard no answer can ask whether the line arrived', async () => {
  await post('/api/messages', { from: 'Wren', text: 'who waits' }, { 'idempotency-key': 'a-1' });
  expect(await (await app.request('/api/messages/a-1')).json()).toEqual({ known: true });
  expect(await (await app.request('/api/messages/a-2')).json()).toEqual({ known: false });
});

test('without a key every request is a message of its own', async () => {
  await post('/api/messages', { from: 'Wren', text: 'who waits' });
  await post('/api/messages', { from: 'Wren', text: 'who waits' });
  expect(room.desk.said.map((message) => message.id)).toEqual(['page:made-1', 'page:made-2']);
});

test.each(['', 'with space', 'é', 'x'.repeat(101)])('the key %j is refused', async (key) => {
  const response = await post('/api/messages', { from: 'Wren', text: 'who waits' }, { 'idempotency-key': key });
  expect(response.status).toBe(400);
  expect(await response.json()).toMatchObject({ status: 400, field: 'Idempotency-Key' });
  expect(room.desk.said).toEqual([]);
});

test.each(['Zoë', 'Ana-Maria', 'bay_3 tablet', 'Mo 2', 'J. R.', '\u00df'.repeat(40)])('%s may write', async (from) => {
  expect((await post('/api/messages', { from, text: 'who waits' })).status).toBe(200);
  expect(room.desk.said[0]?.from.name).toBe(from);
});

test('a name typed with a separate accent is the same name', async () => {
  await post('/api/messages', { from: 'Zoe\u0308', text: 'who waits' });
  expect(room.desk.said[0]?.from.name).toBe('Zo\u00eb');
});

test('what the desk throws is reported, and the sender hears nothing of its inside', async () => {
  room.desk.answer = () => {
    throw new Error('disk I/O error in /somewhere/book.db');
  };
  const response = await post('/api/messages', { from: 'Wren', text: 'who waits' });
  expect(response.status).toBe(500);
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  expect(await response.text()).not.toContain('disk');
  expect(room.reported).toEqual([new Error('disk I/O error in /somewhere/book.db')]);
});
