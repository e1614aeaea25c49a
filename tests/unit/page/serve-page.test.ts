import { request } from 'node:http';
import { expect, test, vi } from 'vitest';
import { servePage } from '../../../src/chat/page/serve-page.js';
import { EventReader } from '../../support/event-reader.js';
import { postOf } from '../../support/fake-desk.js';
import { pageRoom } from '../../support/page-room.js';

const HERE = { host: '127.0.0.1', port: 0 };

test('the page is served over http, and after closing nobody answers', async () => {
  const room = pageRoom();
  const served = await servePage(room.ports, HERE);
  expect(served.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  expect((await fetch(`${served.url}/healthz`)).status).toBe(200);
  await served[Symbol.asyncDispose]();
  await expect(fetch(`${served.url}/healthz`)).rejects.toThrow();
});

test('a place that is taken is an error, not a second page', async () => {
  const room = pageRoom();
  const served = await servePage(room.ports, HERE);
  await expect(servePage(room.ports, { host: '127.0.0.1', port: Number(new URL(served.url).port) })).rejects.toThrow(/EADDRINUSE/);
  await served[Symbol.asyncDispose]();
});

test('closing ends open event streams in order', async () => {
  const room = pageRoom();
  const served = await servePage(room.ports, HERE);
  const stream = new EventReader(await fetch(`${served.url}/api/feed/stream`));
  room.desk.post(postOf('k1', 'one'));
  expect((await stream.nextPost()).id).toBe('1');
  const [end] = await Promise.all([stream.end(), served[Symbol.asyncDispose]()]);
  expect(end).toBe('ended');
  expect(room.desk.listeners).toBe(0);
  expect(room.reported).toEqual([]);
});

test('a listener that hangs up over the network is let go', async () => {
  const room = pageRoom();
  const served = await servePage(room.ports, HERE);
  const hangUp = new AbortController();
  await fetch(`${served.url}/api/feed/stream`, { signal: hangUp.signal });
  expect(room.desk.listeners).toBe(1);
  hangUp.abort();
  await vi.waitFor(() => { expect(room.desk.listeners).toBe(0); });
  await served[Symbol.asyncDispose]();
});

test('a body that is sent in pieces and grows too large is refused as well', async () => {
  const room = pageRoom();
  const served = await servePage(room.ports, HERE);
  const status = await new Promise((resolve, reject) => {
    const sending = request(`${served.url}/api/messages`, { method: 'POST', headers: { 'content-type': 'application/json' } }, (response) => { resolve(response.statusCode); });
    sending.on('error', reject);
    for (let piece = 0; piece < 5; piece += 1) sending.write(' '.repeat(4096));
    sending.end();
  });
  expect(status).toBe(413);
  await served[Symbol.asyncDispose]();
});
