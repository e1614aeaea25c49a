import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { pageRoom } from '../../support/page-room.js';

const STATIC = new URL('../../../src/chat/page/static/', import.meta.url);
const CLIENT = new URL('../../../src/chat/page/client/', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, STATIC), 'utf8');
const styles = `${read('paper.css')}${read('page.css')}`;

test.each([
  ['/', 'text/html; charset=utf-8', 'index.html'],
  ['/page.css', 'text/css; charset=utf-8', 'page.css'],
  ['/mark.svg', 'image/svg+xml', 'mark.svg'],
])('%s is served as %s', async (path, kind, file) => {
  const response = await pageApp(pageRoom().ports).request(path);
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toBe(kind);
  expect(await response.text()).toBe(read(file));
});

test('what the browser has already is not sent again', async () => {
  const app = pageApp(pageRoom().ports);
  const etag = (await app.request('/')).headers.get('etag') ?? '';
  const again = await app.request('/', { headers: { 'if-none-match': etag } });
  expect(again.status).toBe(304);
  expect(await again.text()).toBe('');
  expect((await app.request('/', { headers: { 'if-none-match': '"other"' } })).status).toBe(200);
});

test.each(['/index.html.map', '/../page-app.ts', '/%2e%2e/page-app.ts', '/client/main.ts', '/.env'])('%s is not served', async (path) => {
  expect((await pageApp(pageRoom().ports).request(path)).status).toBe(404);
});

test('the page has no script or style in the line, and nothing from outside', () => {
  const page = read('index.html');
  expect(page).not.toMatch(/<style|\sstyle=|\son\w+=|javascript:/);
  expect(page.match(/<script\b[^>]*>[^<]/)).toBeNull();
  expect([...page.matchAll(/(?:src|href)="([^"]*)"/g)].map((match) => match[1]).filter((address) => address === undefined || !/^[/#][^/]*$/.test(address))).toEqual([]);
  expect(styles).not.toMatch(/url\(|@import|@font-face/);
});

test('the client never writes markup', () => {
  const source = readdirSync(CLIENT).filter((name) => name.endsWith('.ts')).map((name) => readFileSync(new URL(name, CLIENT), 'utf8')).join('\n');
  expect(source).not.toMatch(/innerHTML|insertAdjacentHTML|document\.write|outerHTML\s*=|DOMParser|eval\(|new Function/);
});

/** WCAG 2.2, definition of relative luminance. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((from) => {
    const share = Number.parseInt(colour.slice(from, from + 2), 16) / 255;
    return share <= 0.040_45 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** WCAG 2.2, definition of contrast ratio. */
function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

const [light = new Map<string, string>(), dark = new Map<string, string>()] = [...styles.matchAll(/:root \{([^}]*)\}/g)].map(
  (block) => new Map([...(block[1] ?? '').matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map((pair) => [pair[1] ?? '', pair[2] ?? ''] as const)),
);

const WRITTEN = ['ink', 'ink-soft', 'pen', 'running', 'due', 'held', 'asleep', 'confirmed'].flatMap((text) => ['paper', 'paper-low'].map((ground) => [text, ground] as const));
const PLATES = [['on-state', 'due'], ['on-state', 'held'], ['paper', 'ink'], ['paper', 'rule'], ['clip-text', 'clip']] as const;

test.each([...WRITTEN, ...PLATES])('%s on %s can be read by light and by dark (at least 4.5:1, WCAG 2.2, 1.4.3)', (text, ground) => {
  for (const scheme of [light, dark]) expect(contrast(scheme.get(text) ?? '', scheme.get(ground) ?? '')).toBeGreaterThanOrEqual(4.5);
});
