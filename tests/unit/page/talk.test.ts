import type { Hono } from 'hono';
import { beforeEach, expect, test } from 'vitest';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { answerOf, postOf } from '../../support/fake-desk.js';
import { pageRoom, type PageRoom } from '../../support/page-room.js';

let room: PageRoom;
let app: Hono;

beforeEach(() => {
  room = pageRoom();
  app = pageApp(room.ports);
});

const post = async (path: string, body: unknown, headers: Record<string, string> = {}): Promise<Response> =>
  app.request(path, { method: 'POST', headers: { 'content-type': 'application/json', ...headers }, body: JSON.stringify(body) });

const offered = (line: string): void => { room.desk.post(postOf('k1', 'asked', { answer: answerOf('asked', [{ label: 'x', line }]) })); };

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
  offered('check 501 hard');
  const response = await post('/api/press', { from: 'Wren', reply: 'k1', button: 'check 501 hard' });
  expect(await response.json()).toEqual({ reply: { id: 'reply-1', text: 'heard: check 501 hard', buttons: [] } });
  expect(room.desk.said.map((message) => [message.from.name, message.text])).toEqual([['Wren', 'check 501 hard']]);
});

test.each([
  ['en', 'No button of that answer says this: hard 502. Type the line instead. Nothing stored.', 'The answer above this button is not known here any more. Type the line instead: hard 502. Nothing stored.'],
  ['de', 'Kein Knopf dieser Antwort sagt das: hard 502. Tippe stattdessen die Zeile. Nichts gespeichert.', 'Die Antwort über diesem Knopf ist hier nicht mehr bekannt. Tippe stattdessen die Zeile: hard 502. Nichts gespeichert.'],
  ['es', 'Ningún botón de esa respuesta dice esto: hard 502. Escribe la línea. Nada guardado.', 'La respuesta de este botón ya no se conoce aquí. Escribe la línea: hard 502. Nada guardado.'],
] as const)('a line that stood under no such answer is refused in %s and said to nobody', async (language, noButton, noReply) => {
  room = pageRoom({ shop: { ...room.ports.shop, people: [], language } });
  app = pageApp(room.ports);
  offered('later 501');
  const refused = async (reply: string): Promise<unknown> => {
    const response = await post('/api/press', { from: 'Wren', reply, button: 'hard 502' });
    expect(response.headers.get('content-type')).toBe('application/problem+json');
    return response.json();
  };
  expect(await refused('k1')).toMatchObject({ status: 400, field: 'button', detail: noButton });
  expect(await refused('k2')).toMatchObject({ status: 409, field: 'reply', detail: noReply });
  expect(room.desk.said).toEqual([]);
});

test('a button under an answer to a line can be pressed like one under a post', async () => {
  room.desk.answer = () => answerOf('502 which joint?', [{ label: 'j2', line: 'closed 502 j2' }]);
  await post('/api/messages', { from: 'Wren', text: 'closed 502' });
  expect((await post('/api/press', { from: 'Wren', reply: 'reply-1', button: 'closed 502 j2' })).status).toBe(200);
});

test('a press repeated after its answer was forgotten gets its first answer again', async () => {
  offered('later 501');
  const press = async (): Promise<unknown> => (await post('/api/press', { from: 'Wren', reply: 'k1', button: 'later 501' }, { 'idempotency-key': 'a-1' })).json();
  const first = await press();
  room.desk.offeredUnder = () => null;
  expect(await press()).toEqual(first);
  expect(room.desk.said).toHaveLength(1);
});

test('the same Idempotency-Key twice is the same message, on both ways in', async () => {
  offered('later 501');
  const key = { 'idempotency-key': 'a-1' };
  const first: unknown = await (await post('/api/messages', { from: 'Wren', text: 'who waits' }, key)).json();
  const again: unknown = await (await post('/api/messages', { from: 'Wren', text: 'who waits' }, key)).json();
  expect(again).toEqual(first);
  await post('/api/press', { from: 'Wren', reply: 'k1', button: 'later 501' }, { 'idempotency-key': 'a-2' });
  await post('/api/press', { from: 'Wren', reply: 'k1', button: 'later 501' }, { 'idempotency-key': 'a-2' });
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
