import type { Hono } from 'hono';
import { beforeEach, describe, expect, test } from 'vitest';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { pageRoom, standingClock, type PageRoom } from '../../support/page-room.js';

const matching = (pattern: RegExp): unknown => expect.stringMatching(pattern);

let room: PageRoom;
let app: Hono;

beforeEach(() => {
  room = pageRoom();
  room.practice = standingClock(room);
  app = pageApp(room.ports);
});

const send = async (path: string, body: string, type: string | null = 'application/json'): Promise<Response> =>
  app.request(path, { method: 'POST', headers: type === null ? {} : { 'content-type': type }, body });

const problemOf = async (response: Response): Promise<unknown> => {
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  expect(room.desk.said).toEqual([]);
  return response.json();
};

const GOOD = { from: 'Wren', text: 'who waits' };
const PRESS = { from: 'Wren', reply: 'r1', button: 'on 501' };

const BAD_FIELDS: readonly (readonly [string, string, unknown, string, RegExp])[] = [
  ['no from', '/api/messages', { text: 'who waits' }, 'from', /1 to 40/],
  ['empty from', '/api/messages', { ...GOOD, from: '  ' }, 'from', /1 to 40/],
  ['long from', '/api/messages', { ...GOOD, from: 'x'.repeat(41) }, 'from', /1 to 40/],
  ['from with a sign', '/api/messages', { ...GOOD, from: 'Wren <b>' }, 'from', /letters/],
  ['from with a line break', '/api/messages', { ...GOOD, from: 'Wren\nTomek' }, 'from', /letters/],
  ['from of the wrong kind', '/api/messages', { ...GOOD, from: 7 }, 'from', /letters/],
  ['no text', '/api/messages', { from: 'Wren' }, 'text', /1 to 300/],
  ['empty text', '/api/messages', { ...GOOD, text: '' }, 'text', /1 to 300/],
  ['blank text', '/api/messages', { ...GOOD, text: ' \t ' }, 'text', /1 to 300/],
  ['long text', '/api/messages', { ...GOOD, text: 'x'.repeat(301) }, 'text', /1 to 300/],
  ['text of the wrong kind', '/api/messages', { ...GOOD, text: null }, 'text', /1 to 300/],
  ['an unknown field', '/api/messages', { ...GOOD, colour: 'red' }, 'colour', /unknown field colour/],
  ['a misspelt field', '/api/messages', { form: 'Wren', text: 'who waits' }, 'form', /unknown field form; from must/],
  ['two unknown fields', '/api/messages', { ...GOOD, a: 1, b: 2 }, 'a', /unknown fields a, b/],
  ['a list', '/api/messages', [GOOD], 'body', /JSON object/],
  ['null', '/api/messages', null, 'body', /JSON object/],
  ['press without a reply', '/api/press', { from: 'Wren', button: 'on 501' }, 'reply', /id of the reply/],
  ['press with an empty reply', '/api/press', { ...PRESS, reply: '' }, 'reply', /id of the reply/],
  ['press without a button', '/api/press', { from: 'Wren', reply: 'r1' }, 'button', /1 to 300/],
  ['press with an unknown field', '/api/press', { ...PRESS, text: 'x' }, 'text', /unknown field text/],
  ['clock without a duration', '/api/clock', {}, 'advance', /ISO 8601/],
  ['clock with a number', '/api/clock', { advance: 45 }, 'advance', /ISO 8601/],
];

describe('a bad body changes nothing and names the field', () => {
  test.each(BAD_FIELDS)('%s', async (_name, path, body, field, detail) => {
    const response = await send(path, JSON.stringify(body));
    expect(response.status).toBe(400);
    expect(await problemOf(response)).toEqual({ type: 'about:blank', title: 'Bad Request', status: 400, detail: matching(detail), field });
  });

  test.each(['', '{"from":"Wren",', 'from=Wren', '{}{}'])('%j is not JSON', async (body) => {
    const response = await send('/api/messages', body);
    expect(response.status).toBe(400);
    expect(await problemOf(response)).toMatchObject({ status: 400, field: 'body', detail: matching(/not JSON/) });
  });

  test('a name for the prototype is an unknown field like any other', async () => {
    const response = await send('/api/messages', '{"from":"Wren","text":"who waits","__proto__":{}}');
    expect(await problemOf(response)).toMatchObject({ status: 400, field: '__proto__' });
  });
});

describe('length and kind of the body', () => {
  test('300 characters are a text, whatever stands around them', async () => {
    expect((await send('/api/messages', JSON.stringify({ ...GOOD, text: `  ${'x'.repeat(300)}  ` }))).status).toBe(200);
  });

  test.each([null, 'text/plain', 'application/x-www-form-urlencoded', 'application/jsonp'])('the content type %s is refused', async (type) => {
    const response = await send('/api/messages', JSON.stringify(GOOD), type);
    expect(response.status).toBe(415);
    expect(await problemOf(response)).toMatchObject({ title: 'Unsupported Media Type', status: 415 });
  });

  test.each(['application/json; charset=utf-8', 'Application/JSON'])('the content type %s is taken', async (type) => {
    expect((await send('/api/messages', JSON.stringify(GOOD), type)).status).toBe(200);
  });

  test('16 KiB are read, one byte more is not', async () => {
    const body = (size: number): string => JSON.stringify(GOOD).padEnd(size, ' ');
    const response = await send('/api/messages', body(16 * 1024 + 1));
    expect(response.status).toBe(413);
    expect(await problemOf(response)).toMatchObject({ title: 'Content Too Large', status: 413 });
    expect((await send('/api/messages', body(16 * 1024))).status).toBe(200);
  });
});

describe('paths and methods', () => {
  test.each(['/api/nothing', '/api', '/index.php', '/../package.json', '/api/jobs/', '/api/jobs/501/x'])('%s is not there', async (path) => {
    const response = await app.request(path);
    expect(response.status).toBe(404);
    expect(await problemOf(response)).toMatchObject({ title: 'Not Found', status: 404 });
  });

  test.each([
    ['GET', '/api/messages', 'POST'],
    ['GET', '/api/press', 'POST'],
    ['PUT', '/api/messages', 'POST'],
    ['GET', '/api/clock', 'POST'],
    ['POST', '/api/feed', 'GET, HEAD'],
    ['DELETE', '/api/jobs/501', 'GET, HEAD'],
    ['POST', '/healthz', 'GET, HEAD'],
    ['POST', '/', 'GET, HEAD'],
    ['OPTIONS', '/api/messages', 'POST'],
  ])('%s %s is the wrong method', async (method, path, allowed) => {
    const response = await app.request(path, { method });
    expect(response.status).toBe(405);
    expect(response.headers.get('allow')).toBe(allowed);
    expect(await problemOf(response)).toMatchObject({ title: 'Method Not Allowed', status: 405 });
  });
});
