import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.js';
import { Program } from '../support/program.js';

let browser: Browser;
let program: Program;

beforeAll(async () => {
  browser = await launchBrowser();
  program = await Program.start({}, ['practice']);
});
afterAll(async () => {
  await browser.close();
  await program.stop();
});

const log = (page: Page): Promise<string> => page.locator('#log').innerText();

test('within a minute a newcomer sees a paste, a lamp lost, a decision, an escalation and a lamp change', async () => {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await page.goto(program.url);
  const next = page.getByRole('button', { name: 'to the next reminder' });
  await next.waitFor();
  for (let posts = 0, presses = 0; presses < 8; presses += 1) {
    await next.click();
    await expect.poll(() => page.locator('#log .post').count(), { timeout: 20_000 }).toBeGreaterThan(posts);
    posts = await page.locator('#log .post').count();
  }
  const written = await log(page);
  for (const seen of [/paste 7203 P1/, /close the panel by/i, /found off 11:24: heat counts only to 10:20/, /first check by Wren/, /for Ines/, /You settle it/, /lamp B 55 °C since 11:58/]) expect(written).toMatch(seen);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);

  const before = await page.locator('#now').innerText();
  await page.getByRole('button', { name: '15 min on' }).click();
  await expect.poll(() => page.locator('#now').innerText()).not.toBe(before);

  // A page opened anew says nothing twice.
  const said = (await log(page)).split('paste 7203 P1').length;
  await page.reload();
  await next.click();
  await page.waitForTimeout(1_500);
  expect((await log(page)).split('paste 7203 P1').length).toBe(said);
}, 120_000);
