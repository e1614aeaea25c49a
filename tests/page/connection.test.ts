import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import type { WaitingCar } from '../../src/clerk/desk.js';
import { jobNo, jointNo, personId } from '../../src/repair/ids.js';
import { launchBrowser } from '../support/browser.js';
import { answerOf, postOf } from '../support/fake-desk.js';
import { entriesOf, visit, type Visit } from '../support/page-visit.js';

let browser: Browser;
let here: Visit;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
  here = await visit(browser);
  await here.page.getByLabel('who writes').selectOption('Tomek');
  await vi.waitFor(() => { expect(here.room.desk.listeners).toBe(1); });
});
afterEach(() => here[Symbol.asyncDispose]());

const line = (): ReturnType<Visit['page']['getByLabel']> => here.page.getByLabel('what happened?');
const heard = (): string[] => here.room.desk.said.map((message) => message.text);

/** The request arrives, its answer gets lost on the way back. */
const loseAnswers = async (path: string): Promise<void> => {
  await here.page.route(path, async (route) => {
    await route.fetch();
    await route.abort();
  });
};

test('a reminder arrives by itself; one for the person who writes here says so', async () => {
  here.room.desk.post(postOf('k1', '501 handling time reached by clock.', { to: personId('tomek') }));
  here.room.desk.post(postOf('k2', '502 lamp still on?', { to: personId('wren') }));
  here.room.desk.post(postOf('k3', '503 TOO HOT', { to: 'channel', about: { job: null, joint: null, card: null, kind: 'safety' } }));
  await here.page.getByText('503', { exact: true }).waitFor();
  expect(await entriesOf(here.page)).toEqual(['FOR YOU\n501 handling time reached by clock.', 'for Wren\n502 lamp still on?', 'for everyone\n503 TOO HOT']);
  expect(await here.page.locator('#log').getAttribute('aria-live')).toBe('polite');
  expect(await here.page.getByRole('alert').innerText()).toContain('TOO HOT');
  await here.page.getByLabel('who writes').selectOption('Wren');
  expect(await here.page.locator('.for-me').innerText()).toContain('502');
});

test('a slow look at the board, overtaken by a post, is not taken for another book: the sheet stays as it is', async () => {
  let letGo = (): void => undefined;
  const overtaken = new Promise<void>((done) => { letGo = done; });
  let held = 0;
  await here.page.route('**/api/desk?from=Tomek', async (route) => {
    const answer = await route.fetch();
    held += 1;
    if (held === 1) await overtaken;
    await route.fulfill({ response: answer });
  });
  await here.page.evaluate(() => { document.body.dataset['first'] = 'yes'; });
  here.room.desk.change();
  await vi.waitFor(() => { expect(held).toBe(1); });
  here.room.desk.post(postOf('k1', '501 handling time reached by clock.', { to: personId('tomek') }));
  await here.page.getByText('501', { exact: true }).waitFor();
  letGo();
  await vi.waitFor(() => { expect(held).toBe(2); });
  await here.page.getByText('501', { exact: true }).waitFor();
  expect(await here.page.evaluate(() => document.body.dataset['first'])).toBe('yes');
});

test('what is for the person who writes here is framed and printed solid, and nothing else is', async () => {
  here.room.desk.post(postOf('k1', '501 handling time reached by clock.', { to: personId('tomek') }));
  here.room.desk.post(postOf('k2', '502 lamp still on?', { to: personId('wren') }));
  await here.page.getByText('502', { exact: true }).waitFor();
  const looks = await here.page.locator('#log .entry').evaluateAll((all) => all.map((one) => {
    const stamp = one.querySelector('.stamp');
    return [Number.parseFloat(getComputedStyle(one).outlineWidth) >= 2 && getComputedStyle(one).outlineStyle === 'solid', stamp === null ? '' : getComputedStyle(stamp).backgroundColor];
  }));
  expect(looks.map(([framed]) => framed)).toEqual([true, false]);
  expect(looks[1]?.[1]).toBe('rgba(0, 0, 0, 0)');
  expect(looks[0]?.[1]).not.toBe(looks[1]?.[1]);
});

test('a question that nobody waits for any more is struck out, and open again when the answer is taken back', async () => {
  const { desk, now } = here.room;
  const due: WaitingCar = { job: '501', joint: 'j1', card: 'P1', waitsFor: 'handling', state: 'due', dueAt: now, owner: 'Tomek', heat: 'air 20' };
  const hard = here.page.getByRole('button', { name: 'Hard', exact: true });
  const word = here.page.getByText('answered', { exact: true });
  desk.cars = [due];
  desk.post(postOf('k1', '501 check now', { about: { job: jobNo('501'), joint: jointNo('j1'), card: 'P1', kind: 'handling' }, answer: answerOf('501 check now', [{ label: 'Hard', line: 'check 501 hard' }]) }));
  await hard.waitFor();
  expect([await hard.isEnabled(), await word.isVisible()]).toEqual([true, false]);
  desk.cars = [{ ...due, waitsFor: 'full', state: 'running' }];
  desk.change();
  await word.waitFor();
  expect([await hard.isDisabled(), await hard.evaluate((one) => getComputedStyle(one).textDecorationLine)]).toEqual([true, 'line-through']);
  desk.cars = [due];
  desk.change();
  await word.waitFor({ state: 'hidden' });
  expect(await hard.isEnabled()).toBe(true);
  await hard.click();
  await here.page.getByRole('button', { name: 'Hard ✓ 12:00' }).waitFor();
  desk.cars = [];
  desk.change();
  await word.waitFor();
  expect(await here.page.getByRole('button', { name: 'Hard ✓ 12:00' }).isDisabled()).toBe(true);
});

test('without a connection the page says since when, and after it everything missed is there once', async () => {
  here.room.desk.post(postOf('k1', 'one'));
  await here.page.getByText('one').waitFor();
  await here.goDown();
  await here.page.getByText('no connection since 12:00').waitFor();
  here.room.desk.post(postOf('k2', 'two'));
  await here.comeBack();
  await here.page.getByText('two').waitFor();
  await here.page.getByText('no connection since').waitFor({ state: 'detached' });
  expect(await entriesOf(here.page)).toEqual(['FOR YOU\none', 'FOR YOU\ntwo']);
});

test('an unsent line stays, survives a reload of the page, and is sent once', async () => {
  await here.goDown();
  await line().fill('closed 501');
  await here.page.keyboard.press('Enter');
  await here.page.getByText('Not sent at 12:00. Send again: it is entered only once.').waitFor();
  expect(await line().inputValue()).toBe('closed 501');
  await here.comeBack();
  await here.page.reload();
  await here.page.getByRole('button', { name: 'send again' }).click();
  await vi.waitFor(() => { expect(heard()).toEqual(['closed 501']); });
  await vi.waitFor(async () => { expect(await line().inputValue()).toBe(''); });
  expect(await here.page.getByRole('button', { name: 'send', exact: true }).isVisible()).toBe(true);
});

test('a line that arrived although its answer was lost is not entered a second time', async () => {
  await loseAnswers('**/api/messages');
  await line().fill('closed 501');
  await here.page.keyboard.press('Enter');
  await here.page.getByText('Not sent at').waitFor();
  await here.page.unroute('**/api/messages');
  await here.page.getByRole('button', { name: 'send again' }).click();
  await here.page.getByText('heard: closed').waitFor();
  expect(heard()).toEqual(['closed 501']);
});

test('changing a line that had arrived after all shows its answer before the new line is sent', async () => {
  await loseAnswers('**/api/messages');
  await line().fill('closed 501');
  await here.page.keyboard.press('Enter');
  await here.page.getByText('Not sent at').waitFor();
  await here.page.unroute('**/api/messages');
  await line().fill('closed 501 20 min ago');
  await here.page.keyboard.press('Enter');
  await here.page.getByText('Your first line had arrived, see above. Send this one too?').waitFor();
  expect(heard()).toEqual(['closed 501']);
  expect(await line().inputValue()).toBe('closed 501 20 min ago');
  await here.page.keyboard.press('Enter');
  await vi.waitFor(() => { expect(heard()).toEqual(['closed 501', 'closed 501 20 min ago']); });
});

test('a changed line whose first form never arrived is simply sent', async () => {
  await here.page.route('**/api/messages', (route) => route.abort());
  await line().fill('closed 501');
  await here.page.keyboard.press('Enter');
  await here.page.getByText('Not sent at').waitFor();
  await here.page.unroute('**/api/messages');
  await line().fill('closed 502');
  await here.page.keyboard.press('Enter');
  await vi.waitFor(() => { expect(heard()).toEqual(['closed 502']); });
});

test('a tab pressed again after a lost answer counts once', async () => {
  here.room.desk.post(postOf('k1', '501 lamp still on?', { answer: answerOf('501 lamp still on?', [{ label: 'On', line: 'on 501' }]) }));
  await loseAnswers('**/api/press');
  await here.page.getByRole('button', { name: 'On', exact: true }).click();
  await here.page.getByText('“on 501” was not pressed: no connection.').waitFor();
  await here.page.unroute('**/api/press');
  await here.page.getByRole('button', { name: 'On', exact: true }).click();
  await here.page.getByText('heard: on 501').waitFor();
  expect(heard()).toEqual(['on 501']);
});

test('two impatient taps are one message', async () => {
  await line().fill('closed 501');
  await here.page.evaluate(() => {
    const send = document.querySelector<HTMLElement>('#send');
    send?.click();
    send?.click();
  });
  await here.page.getByText('heard: closed').waitFor();
  expect(heard()).toEqual(['closed 501']);
});
