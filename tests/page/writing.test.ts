import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { launchBrowser } from '../support/browser.js';
import { answerOf } from '../support/fake-desk.js';
import { entriesOf, visit, type Visit } from '../support/page-visit.js';

let browser: Browser;
let here: Visit;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
  here = await visit(browser);
});
afterEach(() => here[Symbol.asyncDispose]());

const write = async (line: string): Promise<void> => {
  await here.page.getByLabel('what happened?').fill(line);
  await here.page.keyboard.press('Enter');
};
const heard = (): string[] => here.room.desk.said.map((message) => `${message.from.name}: ${message.text}`);
const entries = (): Promise<string[]> => entriesOf(here.page);

test('a typed line and its answer stand on the sheet, and the input is empty again', async () => {
  here.room.desk.answer = () => answerOf('501 P2 lamp 35 since 12:00.\nHandling 13:20 if the lamp stays on.');
  await here.page.getByLabel('who writes').selectOption('Tomek');
  await write('cure 501 P2 lamp 35');
  await here.page.locator('#log .entry').waitFor();
  expect(await entries()).toEqual(['Tomek\ncure 501 P2 lamp 35\n501 P2 lamp 35 since 12:00.\nHandling 13:20 if the lamp stays on.']);
  expect(await here.page.locator('#log .at').innerText()).toBe('12:00');
  expect(await here.page.locator('#log b').allInnerTexts()).toEqual(['501', '12:00', '13:20']);
  expect(await here.page.getByLabel('what happened?').inputValue()).toBe('');
  expect(heard()).toEqual(['Tomek: cure 501 P2 lamp 35']);
});

test('nobody is guessed: without a name the line stays and the name is asked for', async () => {
  await write('who waits');
  await here.page.getByText('Who writes? Choose a name first.').waitFor();
  expect(await here.page.getByLabel('what happened?').inputValue()).toBe('who waits');
  expect(await here.page.evaluate(() => document.activeElement?.id)).toBe('writer');
  expect(heard()).toEqual([]);
});

test('any other name can be written, is kept by the browser, and goes with every line', async () => {
  await here.page.getByLabel('who writes').selectOption('another name …');
  await here.page.getByLabel('your name').fill('<b>');
  await here.page.keyboard.press('Enter');
  expect(await here.page.getByLabel('your name').isVisible()).toBe(true);
  await here.page.getByLabel('your name').fill('Petra');
  await here.page.keyboard.press('Enter');
  await here.page.reload();
  await vi.waitFor(async () => { expect(await here.page.getByLabel('who writes').inputValue()).toBe('Petra'); });
  await write('who waits');
  await here.page.locator('#log .entry').waitFor();
  expect(heard()).toEqual(['Petra: who waits']);
});

test('a tab under an answer says its line, stands on the sheet like a typed one, and keeps its stamp', async () => {
  here.room.desk.answer = (message) => (message.text === 'who waits' ? answerOf('501 check now', [{ label: 'Hard', line: 'check 501 hard' }, { label: 'Soft', line: 'check 501 soft' }]) : answerOf('501 handling confirmed 12:00 Wren.'));
  await here.page.getByLabel('who writes').selectOption('Wren');
  await write('who waits');
  await here.page.getByRole('button', { name: 'Hard' }).click();
  await here.page.getByText('501 handling confirmed').waitFor();
  expect(heard()).toEqual(['Wren: who waits', 'Wren: check 501 hard']);
  expect((await entries())[1]).toBe('Wren\ncheck 501 hard\n501 handling confirmed 12:00 Wren.');
  expect(await here.page.getByRole('button', { name: 'Hard ✓ 12:00' }).isDisabled()).toBe(true);
  expect(await here.page.getByRole('button', { name: 'Soft' }).isEnabled()).toBe(true);
});

test('a tab that asks for a reason writes the front of its line, and nothing is said before somebody writes why', async () => {
  here.room.desk.answer = (message) => (message.text === 'who waits' ? answerOf('501 open limit passed.', [{ label: 'Go on', line: 'release 501 j1', asks: 'reason' }]) : answerOf('501 goes on, decided by Ines.'));
  await here.page.getByLabel('who writes').selectOption('Ines');
  await write('who waits');
  await here.page.getByRole('button', { name: 'Go on' }).click();
  await here.page.getByText('Write why, then send.').waitFor();
  expect(await here.page.getByLabel('what happened?').inputValue()).toBe('release 501 j1 ');
  expect(heard()).toEqual(['Ines: who waits']);
  await here.page.keyboard.type('gap checked by hand');
  await here.page.keyboard.press('Enter');
  await here.page.getByText('501 goes on').waitFor();
  expect(heard()).toEqual(['Ines: who waits', 'Ines: release 501 j1 gap checked by hand']);
  expect(await here.page.getByRole('button', { name: 'Go on' }).isEnabled()).toBe(true);
});

test('an empty book shows three lines to tap; a tap fills and sends', async () => {
  await here.page.getByLabel('who writes').selectOption('Wren');
  const lines = here.page.locator('#examples button');
  await lines.first().waitFor();
  expect(await lines.allInnerTexts()).toEqual(['cure 501 P1 lamp 30', 'paste 502 P1', 'who waits']);
  here.room.desk.cars = [{ job: '502', joint: 'j1', card: 'P1', waitsFor: 'open-limit', state: 'running', dueAt: here.room.now, owner: 'Wren', heat: 'air 20' }];
  await lines.nth(1).click();
  await here.page.locator('#log .entry').waitFor();
  expect(heard()).toEqual(['Wren: paste 502 P1']);
  await here.page.locator('#examples').waitFor({ state: 'hidden' });
  expect(await here.page.locator('#cars .waits-for').innerText()).toBe('close the panel by');
});

test('what the clerk does not take is said beside the line, which stays', async () => {
  await here.page.getByLabel('who writes').selectOption('Wren');
  await here.page.evaluate(() => document.querySelector('#line')?.removeAttribute('maxlength'));
  await write('x'.repeat(301));
  await here.page.getByText('text must be 1 to 300 characters.').waitFor();
  expect(await here.page.getByLabel('what happened?').inputValue()).toHaveLength(301);
  expect(heard()).toEqual([]);
});

test('markup in a line, a name or an answer is text and nothing else', async () => {
  const hostile = '<img src=x onerror="document.title=1"><script>document.title=2</script>';
  here.room.desk.answer = () => answerOf(hostile, [{ label: '<b>bold</b>', line: '<i>' }]);
  await here.page.getByLabel('who writes').selectOption('Wren');
  await write(hostile);
  await here.page.locator('#log .entry').waitFor();
  expect(await entries()).toEqual([`Wren\n${hostile}\n${hostile}\n<b>bold</b>`]);
  expect(await here.page.locator('#log img, #log script, #log i').count()).toBe(0);
  expect(await here.page.title()).toBe('Brackenholt Body & Frame');
});

test('a reload takes nothing off the sheet, and its tabs still work', async () => {
  here.room.desk.answer = () => answerOf('501 lamp still on?', [{ label: 'On', line: 'on 501' }]);
  await here.page.getByLabel('who writes').selectOption('Wren');
  await write('when 501');
  await here.page.locator('#log .entry').waitFor();
  await here.page.reload();
  await here.page.getByRole('button', { name: 'On', exact: true }).click();
  await vi.waitFor(() => { expect(heard()).toEqual(['Wren: when 501', 'Wren: on 501']); });
  expect((await entries())[0]).toMatch(/^Wren\nwhen 501\n/);
});
