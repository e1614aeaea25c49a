import type { Hono } from 'hono';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { personId } from '../../../src/repair/ids.js';
import { postOf } from '../../support/fake-desk.js';
import { EventReader } from '../../support/event-reader.js';
import { pageRoom, type PageRoom } from '../../support/page-room.js';

let room: PageRoom;
let app: Hono;
let closing: AbortController;
const readers: EventReader[] = [];

beforeEach(() => {
  closing = new AbortController();
  room = pageRoom({ closing: closing.signal });
  app = pageApp(room.ports);
});

afterEach(async () => {
  await Promise.all(readers.splice(0).map((reader) => reader.hangUp()));
  vi.useRealTimers();
});

const listen = async (path = '/api/feed/stream', headers: Record<string, string> = {}): Promise<EventReader> => {
  const response = await app.request(path, { headers });
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toBe('text/event-stream');
  const reader = new EventReader(response);
  readers.push(reader);
  return reader;
};

describe('GET /api/feed', () => {
  test('posts after a number, as programs read them', async () => {
    room.desk.post(postOf('k1', 'first'));
    room.desk.post(postOf('501/P1/handling/1/0', '501 handling time reached by clock.\nTry the witness bead.'));
    const response = await app.request('/api/feed?after=1');
    expect(await response.json()).toEqual({
      posts: [
        {
          seq: 2,
          at: '2026-03-02T10:00:00.000Z',
          dueAt: '2026-03-02T10:00:00.000Z',
          to: 'tomek',
          about: { job: '501', joint: null, card: 'P1', kind: 'handling' },
          reply: { id: '501/P1/handling/1/0', text: '501 handling time reached by clock.\nTry the witness bead.', buttons: [] },
        },
      ],
    });
  });

  test('all of them without a number, none beyond the end', async () => {
    room.desk.post(postOf('k1', 'first'));
    expect(await (await app.request('/api/feed')).json()).toMatchObject({ posts: [{ seq: 1 }] });
    expect(await (await app.request('/api/feed?after=1')).json()).toEqual({ posts: [] });
  });

  test.each(['x', '-1', '1.5', '', '9'.repeat(16)])('after=%s is refused', async (after) => {
    const response = await app.request(`/api/feed?after=${after}`);
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({ field: 'after' });
  });
});

describe('GET /api/feed/stream', () => {
  test('from now on: what stood before is not repeated, what comes is sent as it is in the feed', async () => {
    room.desk.post(postOf('k1', 'old'));
    const stream = await listen();
    room.desk.post(postOf('k2', 'new', { to: personId('wren') }));
    const event = await stream.next();
    expect(event).toMatchObject({ id: '2', event: null });
    const feed: unknown = await (await app.request('/api/feed?after=1')).json();
    expect({ posts: [JSON.parse(event.data)] }).toEqual(feed);
  });

  test('after=0 begins with the first post', async () => {
    room.desk.post(postOf('k1', 'one'));
    room.desk.post(postOf('k2', 'two'));
    const stream = await listen('/api/feed/stream?after=0');
    expect((await stream.next()).id).toBe('1');
    expect((await stream.next()).id).toBe('2');
  });

  test('a listener who was cut off resumes after the last number seen, missing nothing and hearing nothing twice', async () => {
    const first = await listen('/api/feed/stream?after=0');
    room.desk.post(postOf('k1', 'one'));
    expect((await first.nextPost()).id).toBe('1');
    await first.hangUp();
    room.desk.post(postOf('k2', 'two'));
    room.desk.post(postOf('k3', 'three'));
    const second = await listen('/api/feed/stream?after=0', { 'last-event-id': '1' });
    room.desk.post(postOf('k4', 'four'));
    expect([await second.nextPost(), await second.nextPost(), await second.nextPost()].map((event) => event.id)).toEqual(['2', '3', '4']);
  });

  test('a number from beyond the end is another book: it starts at the end of this one', async () => {
    room.desk.post(postOf('k1', 'one'));
    const stream = await listen('/api/feed/stream', { 'last-event-id': '700' });
    room.desk.post(postOf('k2', 'two'));
    expect((await stream.nextPost()).id).toBe('2');
  });

  test('a bad number is a problem, not a silent stream', async () => {
    const response = await app.request('/api/feed/stream', { headers: { 'last-event-id': 'one' } });
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({ field: 'Last-Event-ID' });
  });

  test('anything that changes the book is told, even when nothing was posted', async () => {
    const stream = await listen();
    room.desk.change();
    expect(await stream.next()).toMatchObject({ event: 'changed', id: null });
  });

  test('a line break in an answer stays inside its event', async () => {
    const stream = await listen();
    room.desk.post(postOf('k1', 'one\r\n\r\ndata: forged\nid: 9'));
    const event = await stream.next();
    expect(event.id).toBe('1');
    expect(JSON.parse(event.data)).toMatchObject({ reply: { text: 'one\r\n\r\ndata: forged\nid: 9' } });
  });

  test('when nothing happens a comment goes out every 20 seconds', async () => {
    vi.useFakeTimers();
    const stream = await listen();
    await stream.comments(0);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(await stream.comments(1)).toBe(1);
    await vi.advanceTimersByTimeAsync(40_000);
    expect(await stream.comments(3)).toBe(3);
  });

  test('nobody is left listening after hanging up, nor after the house closes', async () => {
    const one = await listen();
    const other = await listen();
    expect(room.desk.listeners).toBe(2);
    await one.hangUp();
    await vi.waitFor(() => { expect(room.desk.listeners).toBe(1); });
    closing.abort();
    expect(await other.end()).toBe('ended');
    await vi.waitFor(() => { expect(room.desk.listeners).toBe(0); });
  });

  test('a HEAD request leaves nobody listening either', async () => {
    expect((await app.request('/api/feed/stream', { method: 'HEAD' })).status).toBe(200);
    expect(room.desk.listeners).toBe(0);
  });

  test('a book that cannot be read ends the stream and is reported', async () => {
    const stream = await listen();
    room.desk.postsAfter = () => {
      throw new Error('unreadable');
    };
    room.desk.change();
    expect(await stream.end()).toBe('ended');
    expect(room.reported).toEqual([new Error('unreadable')]);
    expect(room.desk.listeners).toBe(0);
  });
});
