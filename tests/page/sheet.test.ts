import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import type { WaitingCar } from '../../src/clerk/desk.js';
import { minutes, plus } from '../../src/cure/units.js';
import { personId } from '../../src/repair/ids.js';
import { launchBrowser } from '../support/browser.js';
import { answerOf, postOf } from '../support/fake-desk.js';
import { NOON, standingClock, type PageRoom } from '../support/page-room.js';
import { visit, type Visit } from '../support/page-visit.js';

let browser: Browser;
let here: Visit | null = null;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
afterEach(async () => {
  await here?.[Symbol.asyncDispose]();
  here = null;
});

const car = (job: string, change: Partial<WaitingCar>): WaitingCar => ({ job, joint: 'j1', card: 'P1', waitsFor: 'handling', state: 'running', dueAt: null, owner: 'Tomek', heat: 'lamp 30 (A)', ...change });

const fiveCars = ({ desk }: PageRoom): void => {
  desk.cars = [
    car('421', { state: 'held', waitsFor: 'decision' }),
    car('7208', { state: 'due', dueAt: plus(NOON, minutes(-20)) }),
    car('7214', { state: 'asleep', joint: 'j2' }),
    car('7203', { waitsFor: 'full', dueAt: plus(NOON, minutes(139)) }),
    car('7219', { waitsFor: 'drive-away', dueAt: plus(NOON, minutes(22 * 60)) }),
  ];
  desk.jobs = [{ job: '7203', cures: [{ joint: 'j1', card: 'P1', milestones: [{ kind: 'handling', dueAt: plus(NOON, minutes(-30)), state: 'confirmed', share: 1 }, { kind: 'full', dueAt: plus(NOON, minutes(139)), state: 'running', share: 0.419 }] }] }];
};

const open = async (prepare: (room: PageRoom) => void): Promise<Visit> => {
  here = await visit(browser, prepare);
  await here.page.locator('#shop', { hasText: 'Brackenholt' }).waitFor();
  return here;
};

test('the board has one row per car in the order of the desk, with word, mark, time and share', async () => {
  const { page } = await open(fiveCars);
  expect(await page.locator('.job-number').allInnerTexts()).toEqual(['421', '7208', '7214', '7203', '7219']);
  expect(await page.locator('.car > .status .state').allInnerTexts()).toEqual(['held', 'due', 'asleep', 'running', 'running']);
  expect(await page.locator('.car > .status .state use').evaluateAll((marks) => marks.map((one) => one.getAttribute('href')))).toEqual(['#mark-held', '#mark-due', '#mark-asleep', '#mark-running', '#mark-running']);
  expect(await page.locator('.car .due').allInnerTexts()).toEqual(['no time', '11:40\n20 min ago', 'no time', '14:19\nin 2 h 19', 'Wed 10:00\nin 22 h']);
  expect(await page.locator('.car').nth(3).locator('.percent').innerText()).toBe('41 % of the wait');
  expect(await page.locator('#tally').innerText()).toBe('1 held, 1 due, 1 asleep, 2 running');
  expect(await page.title()).toBe('(1) Brackenholt Body & Frame');
});

test('the states differ without their colours', async () => {
  const { page } = await open((room) => {
    fiveCars(room);
    room.desk.jobs = room.desk.cars.map((one) => ({ job: one.job, cures: [{ joint: one.joint, card: one.card, milestones: [{ kind: one.waitsFor === 'decision' ? 'handling' : one.waitsFor, dueAt: null, state: one.state, share: 0.5 }] }] }));
  });
  const patterns = await page.locator('.fill').evaluateAll((fills) => fills.map((fill) => getComputedStyle(fill).backgroundImage.replace(/rgb[^)]*\)/g, '')));
  expect(new Set(patterns.slice(0, 4)).size).toBe(4);
});

test('a tap on the job number opens its milestones and lines to ask with', async () => {
  const { page, room } = await open(fiveCars);
  await page.getByLabel('who writes').selectOption('Tomek');
  await page.getByRole('button', { name: 'job 7203: open' }).click();
  await page.locator('.milestone').first().waitFor();
  expect(await page.locator('.milestone').allInnerTexts()).toEqual([expect.stringMatching(/P1 handling strength\s+11:30\s+confirmed\s+100 %/), expect.stringMatching(/P1 full strength\s+14:19\s+running\s+41 %/)]);
  room.desk.change();
  await page.getByRole('button', { name: 'why 7203' }).click();
  await vi.waitFor(() => { expect(room.desk.said.map((message) => message.text)).toEqual(['why 7203']); });
  await page.getByRole('button', { name: 'job 7203: close' }).click();
  expect(await page.locator('.milestone').count()).toBe(0);
});

test('the board follows the book, and the keyboard stays where it was', async () => {
  const { page, room } = await open(fiveCars);
  await page.getByRole('button', { name: 'job 7203: open' }).focus();
  room.desk.cars = room.desk.cars.slice(1);
  room.desk.change();
  await vi.waitFor(async () => { expect(await page.locator('.car').count()).toBe(4); });
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('job 7203: open its milestones');
});

test('a practice clock is announced, and one that stands can be moved', async () => {
  const { page } = await open((room) => { room.practice = standingClock(room); });
  await page.getByText('Nothing here is real.').waitFor();
  expect(await page.locator('#now').innerText()).toBe('12:00');
  expect(await page.locator('#day').innerText()).toBe('practice · Tue 3 Mar');
  await page.getByRole('button', { name: '+10 min' }).click();
  await page.locator('#now', { hasText: '12:10' }).waitFor();
  await page.getByRole('button', { name: '+1 h' }).click();
  await page.locator('#now', { hasText: '13:10' }).waitFor();
});

test('every field of a car stands under its printed caption', async () => {
  const { page } = await open(fiveCars);
  const fields = await page.locator('.car').nth(3).locator('.field').evaluateAll((all) => all.map((one) => [one.getAttribute('data-caption'), one.textContent]));
  expect(fields).toEqual([['job no.', '7203'], ['waits for', 'full strength'], ['due', '14:19in 2 h 19'], ['state', 'running'], ['card', 'P1'], ['heat', 'lamp 30 (A)'], ['who', 'Tomek']]);
});

test('real time says nothing of practice', async () => {
  const { page } = await open(() => undefined);
  expect(await page.locator('#practice').isVisible()).toBe(false);
  expect(await page.locator('#day').innerText()).toBe('Tue 3 Mar');
});

test('nothing from outside is asked for and the strict policy is never hurt', async () => {
  const visited = await open(fiveCars);
  await visited.page.getByLabel('who writes').selectOption('Tomek');
  await visited.page.getByLabel('what happened?').fill('who waits');
  await visited.page.keyboard.press('Enter');
  await visited.page.locator('#log .entry').waitFor();
  const origin = new URL(visited.page.url()).origin;
  expect(visited.asked.filter((address) => !address.startsWith(origin))).toEqual([]);
  expect(visited.complaints).toEqual([]);
});

test.each([320, 390, 1280])('at %i px nothing is wider than the screen and everything to tap is 44 px high', async (width) => {
  const { page, room } = await open(fiveCars);
  await page.setViewportSize({ width, height: 844 });
  await page.getByLabel('who writes').selectOption('Tomek');
  room.desk.answer = () => answerOf(`501 ${'anunusuallylongwordwithoutaspace'.repeat(4)}`, ['Hochgestellt', 'Lámpara fuera', 'Falscher Auftrag', 'Later'].map((label) => ({ label, line: label })));
  await page.getByLabel('what happened?').fill('why 501');
  await page.keyboard.press('Enter');
  await page.locator('#log .tab').first().waitFor();
  await page.getByRole('button', { name: 'job 7203: open' }).click();
  await page.locator('.milestone').first().waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  const low = await page.locator('button:visible, input:visible, select:visible').evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 44).map((one) => one.outerHTML));
  expect(low).toEqual([]);
});

test('the whole page can be worked by keyboard and each stop is visible', async () => {
  const { page, room } = await open(fiveCars);
  await page.setViewportSize({ width: 390, height: 1800 });
  room.desk.post(postOf('k1', '501 lamp still on?', { to: personId('tomek'), answer: answerOf('501 lamp still on?', [{ label: 'On', line: 'on 501' }]) }));
  await page.getByRole('button', { name: 'On', exact: true }).waitFor();
  const stops: string[] = [];
  for (let stop = 0; stop < 12; stop += 1) {
    await page.keyboard.press('Tab');
    stops.push(await page.evaluate(() => {
      const at = document.activeElement;
      return at === null ? '' : `${at.id || at.className} ${getComputedStyle(at).outlineStyle}`;
    }));
  }
  expect(stops).toContain('tab solid');
  expect(stops.slice(0, 3).map((one) => one.split(' ')[0])).toEqual(['skip', 'tally', 'job']);
  expect(stops.slice(-3).map((one) => one.split(' ')[0])).toEqual(['line', 'send', expect.any(String)]);
  expect(stops.slice(0, 11).every((one) => one.endsWith(' solid'))).toBe(true);
});

test('on a wide screen the sheet opens at its newest line with the board still in view', async () => {
  const { page } = await open((prepared) => {
    fiveCars(prepared);
    for (let count = 1; count <= 30; count += 1) prepared.desk.post(postOf(`k${count}`, `post ${count}`));
  });
  await page.setViewportSize({ width: 1280, height: 844 });
  await page.reload();
  await page.getByText('post 30').waitFor();
  await vi.waitFor(async () => { expect(await page.evaluate(() => innerHeight + scrollY >= document.documentElement.scrollHeight - 1)).toBe(true); });
  const [board, newest] = await Promise.all([page.locator('.car').first().boundingBox(), page.getByText('post 30').boundingBox()]);
  expect([board, newest].every((box) => box !== null && box.y > 0 && box.y < 760)).toBe(true);
});

test('whoever reads further up is told that something came in for them below', async () => {
  const { page, room } = await open((prepared) => {
    fiveCars(prepared);
    for (let count = 1; count <= 12; count += 1) prepared.desk.post(postOf(`k${count}`, `post ${count}`, { to: personId('wren') }));
  });
  await page.getByLabel('who writes').selectOption('Tomek');
  await page.getByText('post 12').waitFor();
  room.desk.post(postOf('n1', 'for somebody else', { to: personId('wren') }));
  await page.getByRole('button', { name: '↓ 1 new below' }).waitFor();
  room.desk.post(postOf('n2', 'for Tomek himself', { to: personId('tomek') }));
  await page.getByRole('button', { name: '↓ for you' }).click();
  await vi.waitFor(async () => { expect(await page.locator('.for-me').evaluate((one) => one.getBoundingClientRect().top < innerHeight - 120)).toBe(true); });
  await page.locator('#below').waitFor({ state: 'hidden' });
});
