import { expect, test } from 'vitest';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { pageRoom } from '../../support/page-room.js';

const matching = (pattern: RegExp): unknown => expect.stringMatching(pattern);

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const ask = async (host: string, allowedHosts: readonly string[] = []): Promise<Response> =>
  pageApp(pageRoom({ allowedHosts }).ports).request('/healthz', { headers: { host } });

test.each(['127.0.0.1', '127.0.0.1:8080', 'localhost', 'LOCALHOST:3000', '[::1]', '[::1]:8080'])('%s is this machine', async (host) => {
  expect((await ask(host)).status).toBe(200);
});

test.each(['example.org', 'localhost.example.org', '127.0.0.1.example.org:8080', '192.168.1.20', ''])('%j is not', async (host) => {
  const response = await ask(host);
  expect(response.status).toBe(403);
  expect(await response.json()).toMatchObject({ status: 403, field: 'Host', detail: matching(/allowed hosts/) });
});

test('further names may be allowed, and this machine stays', async () => {
  expect((await ask('Office-PC:8080', ['office-pc'])).status).toBe(200);
  expect((await ask('localhost:8080', ['office-pc'])).status).toBe(200);
  expect((await ask('other-pc:8080', ['office-pc'])).status).toBe(403);
});

test.each([
  ['http://localhost:8080', 200],
  [undefined, 200],
  ['http://localhost:9999', 403],
  ['http://example.org', 403],
  ['null', 403],
])('a post from the origin %s', async (origin, status) => {
  const room = pageRoom();
  const response = await pageApp(room.ports).request('/api/messages', {
    method: 'POST',
    headers: { host: 'localhost:8080', 'content-type': 'application/json', ...(origin === undefined ? {} : { origin }) },
    body: JSON.stringify({ from: 'Wren', text: 'who waits' }),
  });
  expect(response.status).toBe(status);
  expect(room.desk.said).toHaveLength(status === 200 ? 1 : 0);
});

test('looking is not posting: it needs no origin of its own', async () => {
  const response = await pageApp(pageRoom().ports).request('/api/waiting', { headers: { host: 'localhost:8080', origin: 'http://example.org' } });
  expect(response.status).toBe(200);
  expect(response.headers.get('access-control-allow-origin')).toBeNull();
});

test.each(['/', '/page.css', '/api/desk', '/healthz', '/api/nothing', '/api/feed?after=x'])('%s carries the strict policy', async (path) => {
  const { headers } = await pageApp(pageRoom().ports).request(path);
  expect(headers.get('content-security-policy')).toBe(POLICY);
  expect(headers.get('x-content-type-options')).toBe('nosniff');
  expect(headers.get('referrer-policy')).toBe('no-referrer');
});
