import type { Hono } from 'hono';
import { beforeEach, expect, test } from 'vitest';
import type { WaitingCar } from '../../../src/clerk/desk.js';
import { pageApp } from '../../../src/chat/page/page-app.js';
import { PAGE_EN } from '../../../src/reply/catalogue/page-en.js';
import { instant, minutes, plus } from '../../../src/cure/units.js';
import { postOf } from '../../support/fake-desk.js';
import { NOON, pageRoom, standingClock, type PageRoom } from '../../support/page-room.js';

let room: PageRoom;
let app: Hono;

const CAR: WaitingCar = { job: '501', joint: 'j1', card: 'P1', waitsFor: 'handling', state: 'running', dueAt: plus(NOON, minutes(43)), owner: 'tomek', heat: 'lamp 30 (A)' };
const ASLEEP: WaitingCar = { ...CAR, job: '502', joint: 'j2', state: 'asleep', dueAt: null, heat: 'asleep, 12 °C' };

beforeEach(() => {
  room = pageRoom();
  app = pageApp(room.ports);
  room.desk.cars = [CAR, ASLEEP];
  room.desk.jobs = [
    {
      job: '501',
      cures: [
        {
          joint: 'j1',
          card: 'P1',
          milestones: [
            { kind: 'open-limit', dueAt: instant(Date.parse('2026-03-03T11:00:00Z')), state: 'confirmed', share: 1 },
            { kind: 'handling', dueAt: plus(NOON, minutes(43)), state: 'running', share: 0.41 },
            { kind: 'full', dueAt: null, state: 'running', share: 0.02 },
          ],
        },
      ],
    },
  ];
});

const read = async (path: string): Promise<unknown> => (await app.request(path)).json();

test('the waiting cars, in the order of the desk', async () => {
  expect(await read('/api/waiting')).toEqual({
    waiting: [
      { job: '501', joint: 'j1', card: 'P1', waitsFor: 'handling', state: 'running', dueAt: '2026-03-03T12:43:00.000Z', owner: 'tomek', heat: 'lamp 30 (A)' },
      { job: '502', joint: 'j2', card: 'P1', waitsFor: 'handling', state: 'asleep', dueAt: null, owner: 'tomek', heat: 'asleep, 12 °C' },
    ],
  });
});

test('one job with its milestones', async () => {
  expect(await read('/api/jobs/501')).toEqual({
    job: '501',
    cures: [
      {
        joint: 'j1',
        card: 'P1',
        milestones: [
          { kind: 'open-limit', dueAt: '2026-03-03T11:00:00.000Z', state: 'confirmed', share: 1 },
          { kind: 'handling', dueAt: '2026-03-03T12:43:00.000Z', state: 'running', share: 0.41 },
          { kind: 'full', dueAt: null, state: 'running', share: 0.02 },
        ],
      },
    ],
  });
});

test('a job that is not in the book', async () => {
  const response = await app.request('/api/jobs/999');
  expect(response.status).toBe(404);
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  expect(await response.json()).toMatchObject({ status: 404, detail: 'There is no job 999 in the book.' });
});

test('the head of the page: shop, people, clock, newest post, and the board with its shares', async () => {
  room.desk.post(postOf('k1', 'one'));
  room.desk.post(postOf('k2', 'two'));
  expect(await read('/api/desk')).toEqual({
    shop: 'Brackenholt Body & Frame',
    zone: 'Europe/Dublin',
    people: [
      { id: 'ines', name: 'Ines' },
      { id: 'tomek', name: 'Tomek' },
      { id: 'wren', name: 'Wren' },
    ],
    practice: null,
    now: '2026-03-03T12:00:00.000Z',
    lastPost: 2,
    board: [expect.objectContaining({ job: '501', share: 0.41 }), expect.objectContaining({ job: '502', share: null })],
    language: 'en',
    locale: 'en-GB',
    words: PAGE_EN,
  });
});

test('a car that waits for a decision shows how far its wait had come', async () => {
  room.desk.cars = [{ ...CAR, waitsFor: 'decision', state: 'held' }];
  expect(await read('/api/desk')).toMatchObject({ board: [{ waitsFor: 'decision', share: 0.41 }] });
});

test('the page knows what kind of clock it shows', async () => {
  room.practice = standingClock(room);
  expect(await read('/api/desk')).toMatchObject({ practice: 'standing' });
  room.practice = { standing: false, advance: () => undefined, advanceToNext: () => false };
  expect(await read('/api/desk')).toMatchObject({ practice: 'running' });
});

test('health: 200 when it can work, 503 when not, with the facts either way', async () => {
  expect(await read('/healthz')).toEqual({ ok: true });
  const ill = pageApp({ ...room.ports, health: () => ({ ok: false, book: 'cannot be written' }) });
  const response = await ill.request('/healthz');
  expect(response.status).toBe(503);
  expect(await response.json()).toEqual({ ok: false, book: 'cannot be written' });
});

test.each(['/api/desk', '/api/waiting', '/api/feed', '/api/jobs/501', '/healthz'])('%s is never kept by the browser', async (path) => {
  expect((await app.request(path)).headers.get('cache-control')).toBe('no-store');
});
