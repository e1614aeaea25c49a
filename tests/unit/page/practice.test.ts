import { beforeEach, expect, test } from 'vitest';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { pageRoom, standingClock, type PageRoom } from '../../support/page-room.js';

const matching = (pattern: RegExp): unknown => expect.stringMatching(pattern);

let room: PageRoom;

beforeEach(() => {
  room = pageRoom();
});

const post = async (at: PageRoom, path: string, body: object, headers: Readonly<Record<string, string>> = {}): Promise<Response> =>
  pageApp(at.ports).request(path, { method: 'POST', headers: { 'content-type': 'application/json', ...headers }, body: JSON.stringify(body) });

const advance = async (text: string): Promise<Response> =>
  pageApp(room.ports).request('/api/clock', { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ advance: text }) });

test.each([
  ['PT45M', '2026-03-03T12:45:00.000Z'],
  ['PT30S', '2026-03-03T12:00:30.000Z'],
  ['PT1H30M', '2026-03-03T13:30:00.000Z'],
  ['P1D', '2026-03-04T12:00:00.000Z'],
  ['P2W', '2026-03-17T12:00:00.000Z'],
  ['P60D', '2026-05-02T12:00:00.000Z'],
])('a standing clock moves by %s', async (text, now) => {
  room.practice = standingClock(room);
  const response = await advance(text);
  expect(response.status).toBe(200);
  expect(await response.json()).toEqual({ now });
});

test.each(['', 'PT0S', 'PT-5M', '-PT5M', '45', '45M', 'P60DT1S', 'P1M', 'P1Y', 'PT', 'P', 'soon'])('%j is refused and the clock stays', async (text) => {
  room.practice = standingClock(room);
  const before = room.now;
  const response = await advance(text);
  expect(response.status).toBe(400);
  expect(await response.json()).toMatchObject({ status: 400, field: 'advance' });
  expect(room.now).toBe(before);
});

test('real time cannot be moved: nothing is there to do it with', async () => {
  const response = await advance('PT45M');
  expect(response.status).toBe(404);
  expect(await response.json()).toMatchObject({ status: 404, detail: matching(/real time/) });
});

test('it moves to the next moment at which something is planned, at most to the moment named', async () => {
  room.practice = standingClock(room);
  const until = new Date(room.now + 300_000).toISOString();
  expect(await (await post(room, '/api/clock', { to: 'next', until })).json()).toEqual({ now: until });
  expect((await post(room, '/api/clock', { to: 'next' })).status).toBe(409);
  expect((await post(room, '/api/clock', { to: 'next', until: 'soon' })).status).toBe(400);
});

test('a practice shop tells what its people will say, and what of it stands in the book', async () => {
  room = pageRoom({ practiceDay: [{ at: room.now, from: 'tomek', say: 'cure 501 P1' }, { at: room.now, from: 'ines', say: 'who waits' }] });
  await post(room, '/api/messages', { from: 'tomek', text: 'cure 501 P1' }, { 'idempotency-key': 'practice-line-0' });
  const response = await pageApp(room.ports).request('/api/practice');
  expect(await response.json()).toEqual({ lines: [
    { key: 'practice-line-0', at: new Date(room.now).toISOString(), from: 'tomek', text: 'cure 501 P1', said: true },
    { key: 'practice-line-1', at: new Date(room.now).toISOString(), from: 'ines', text: 'who waits', said: false },
  ] });
});

test('elsewhere nobody says anything by themselves', async () => {
  expect((await pageApp(room.ports).request('/api/practice')).status).toBe(404);
});

test('a running practice clock cannot be moved', async () => {
  let moved = false;
  room.practice = { standing: false, advance: () => (moved = true), advanceToNext: () => (moved = true) };
  const response = await advance('PT45M');
  expect(response.status).toBe(409);
  expect(await response.json()).toMatchObject({ title: 'Conflict', status: 409 });
  expect(moved).toBe(false);
});
