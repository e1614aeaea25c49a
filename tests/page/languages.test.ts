import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import type { WaitingCar } from '../../src/clerk/desk.js';
import { minutes, plus } from '../../src/cure/units.js';
import { personId } from '../../src/repair/ids.js';
import type { Language } from '../../src/repair/shop.js';
import { launchBrowser } from '../support/browser.js';
import { answerOf, postOf } from '../support/fake-desk.js';
import { NOON, pageRoom, standingClock, type PageRoom } from '../support/page-room.js';
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

const car = (job: string, change: Partial<WaitingCar>): WaitingCar => ({ job, joint: 'j1', card: 'P1', waitsFor: 'handling', state: 'running', dueAt: null, owner: 'Tomek', heat: '30 °C', ...change });

/** Ines reads German, Tomek Spanish, Wren English; the shop as told. */
const shopReading = (language: Language): ReturnType<typeof pageRoom>['ports']['shop'] => {
  const { shop } = pageRoom().ports;
  const own: Readonly<Record<string, Language>> = { Ines: 'de', Tomek: 'es', Wren: 'en' };
  return { ...shop, language, people: shop.people.map((person) => ({ ...person, language: own[person.name] ?? language })) };
};

const busy = (room: PageRoom): void => {
  const { desk } = room;
  room.practice = standingClock(room);
  desk.cars = [
    car('421', { state: 'held', waitsFor: 'decision' }),
    car('7208', { state: 'due', dueAt: plus(NOON, minutes(-20)) }),
    car('7214', { state: 'asleep', joint: 'j2', waitsFor: 'fire-watch' }),
    car('7203', { waitsFor: 'through', dueAt: plus(NOON, minutes(139)) }),
    car('7219', { waitsFor: 'recoat-from', dueAt: plus(NOON, minutes(22 * 60)) }),
    car('7220', { waitsFor: 'open-limit', dueAt: plus(NOON, minutes(4)) }),
  ];
  desk.jobs = [{ job: '7203', cures: [{ joint: 'j1', card: 'P1', milestones: [{ kind: 'handling', dueAt: plus(NOON, minutes(-30)), state: 'confirmed', share: 1 }, { kind: 'through', dueAt: plus(NOON, minutes(139)), state: 'running', share: 0.419 }] }] }];
  desk.post(postOf('k1', '7208.', { at: NOON, to: personId('ines'), answer: answerOf('7208.', [{ label: '1', line: 'hard 7208' }]) }));
  desk.post(postOf('k2', '7203.', { at: NOON, to: 'channel' }));
  desk.post(postOf('k3', '7219.', { at: NOON, to: personId('tomek') }));
};

const open = async (language: Language, prepare: (room: PageRoom) => void = busy): Promise<Visit> => {
  here = await visit(browser, prepare, { shop: shopReading(language) });
  await here.page.locator('#shop', { hasText: 'Brackenholt' }).waitFor();
  return here;
};

/** Words that only English has. */
const ENGLISH = /\b(?:the|is|are|not|yet|and|of|due|ago|check|strength|until|nothing|reading|wait|waits|waiting|job|who|what|time|state|heat|card|writes|happened|send|your|entry|held|asleep|running|confirmed|for|everyone|practice|clock|day|tue|wed)\b/i;

const seen = async (page: Page): Promise<string> => {
  const captions = await page.locator('[data-caption]').evaluateAll((all) => all.map((one) => one.getAttribute('data-caption')).join(' '));
  const labels = await page.locator('[aria-label], [placeholder]').evaluateAll((all) => all.map((one) => `${one.getAttribute('aria-label') ?? ''} ${one.getAttribute('placeholder') ?? ''}`).join(' '));
  // What stands on the page though it is not shown at this moment is read as well; names of the shop and lines to type are no words of the page.
  const text = await page.locator('body').evaluate((body) => body.textContent);
  return `${text} ${captions} ${labels}`.replaceAll(/Brackenholt Body & Frame|cure 501 P1 lamp 30|paste 502 P1|who waits/g, '');
};

test.each([
  ['de', 'Ines', 'wer schreibt', { board: 'Wartet', log: 'Auftragsblatt', tally: '1 gesperrt, 1 fällig, 1 schläft, 3 laufen', day: 'Übung · Di. 3. März', due: ['keine Zeit', '11:40\nvor 20 min', 'keine Zeit', '14:19\nin 2 h 19', 'Mi 10:00\nin 22 h', '12:04\nin 4 min'], waits: ['eine Entscheidung', 'Handfestigkeit', 'Ende der Brandwache', 'Durchhärtung', 'nächste Schicht', 'Blech schließen bis'], to: ['FÜR DICH', 'für alle', 'für Tomek'], share: '41 % der Wartezeit', ask: 'Auftrag 7203: Zeiten aufklappen', why: 'warum 7203' }],
  ['es', 'Tomek', 'quién escribe', { board: 'En espera', log: 'Hoja de trabajo', tally: '1 retenido, 1 toca, 1 duerme, 3 corren', day: 'prácticas · mar 3 mar', due: ['sin hora', '11:40\nhace 20 min', 'sin hora', '14:19\nen 2 h 19', 'mié 10:00\nen 22 h', '12:04\nen 4 min'], waits: ['una decisión', 'resistencia de manipulación', 'fin de la vigilancia de incendio', 'curado en profundidad', 'próxima capa', 'cerrar el panel antes de'], to: ['para Ines', 'para todos', 'PARA TI'], share: '41 % de la espera', ask: 'trabajo 7203: abrir sus tiempos', why: 'por qué 7203' }],
] as const)('in %s every word around the answers is, and nothing is wider than a phone', async (language, who, label, words) => {
  const { page, room, complaints } = await open(language);
  await page.getByLabel(label).selectOption(who);
  await page.locator('.for-me').waitFor();
  await page.getByRole('button', { name: words.ask }).click();
  await page.locator('.milestone').first().waitFor();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe(language);
  expect((await page.locator('#board-title').innerText()).toLowerCase()).toBe(words.board.toLowerCase());
  expect((await page.locator('#log-title').innerText()).toLowerCase()).toBe(words.log.toLowerCase());
  expect(await page.locator('#tally').innerText()).toBe(words.tally);
  expect(await page.locator('#day').innerText()).toBe(words.day);
  expect(await page.locator('.car .due').allInnerTexts()).toEqual(words.due);
  expect(await page.locator('.waits-for').allInnerTexts()).toEqual(words.waits);
  expect(await page.locator('.by').allInnerTexts()).toEqual(words.to);
  expect(await page.locator('.percent').first().innerText()).toBe(words.share);
  expect(await seen(page)).not.toMatch(ENGLISH);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  const cut = await page.locator('.field, .tab, .state, .percent, label, .columns span, #day, button').evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== 'inline').map((one) => one.outerHTML.slice(0, 200)));
  expect(cut).toEqual([]);
  const parted = await page.locator('.waits-for').evaluateAll((all: HTMLElement[]) => all.filter((one) => {
    one.style.overflowWrap = 'normal';
    return one.scrollWidth > one.clientWidth;
  }).map((one) => one.textContent));
  expect(parted).toEqual([]);
  const shots = process.env['CURECLERK_SHOTS'];
  if (shots !== undefined) await photographed(page, `${shots}/${language}`);
  // What is sent is a line of commands, whatever stands on the box.
  await page.getByRole('button', { name: words.why }).click();
  await vi.waitFor(() => { expect(room.desk.said.map((message) => message.text)).toEqual(['why 7203']); });
  expect(complaints).toEqual([]);
});

async function photographed(page: Page, name: string): Promise<void> {
  mkdirSync(name.slice(0, name.lastIndexOf('/')), { recursive: true });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await page.evaluate(() => { scrollTo({ top: 0, behavior: 'instant' }); });
    await page.screenshot({ path: `${name}-${colorScheme}-top.png` });
    await page.evaluate(() => { scrollTo({ top: document.documentElement.scrollHeight, behavior: 'instant' }); });
    await page.screenshot({ path: `${name}-${colorScheme}-foot.png` });
    await page.setViewportSize({ width: 1280, height: 844 });
    await page.screenshot({ path: `${name}-${colorScheme}-wide.png` });
    await page.setViewportSize({ width: 390, height: 844 });
  }
}

test('whoever writes chooses the language, without losing what stands on the sheet or in the line', async () => {
  const { page, room } = await open('de');
  await page.getByLabel('wer schreibt').selectOption('Ines');
  await page.locator('#log .entry').nth(2).waitFor();
  await page.getByLabel('was ist passiert?').fill('closed 501');
  await page.getByLabel('wer schreibt').selectOption('Tomek');
  await page.getByLabel('quién escribe').waitFor();
  expect(await page.locator('.by').allInnerTexts()).toEqual(['para Ines', 'para todos', 'PARA TI']);
  expect(await page.locator('#log .day').allInnerTexts()).toEqual(['mar 3 mar']);
  expect(await page.getByLabel('¿qué ha pasado?').inputValue()).toBe('closed 501');
  expect(await seen(page)).not.toMatch(/Auftrag|wer |fällig|Eintrag|Handfestigkeit/);
  await page.getByLabel('quién escribe').selectOption('Wren');
  await page.getByLabel('who writes').waitFor();
  expect([await page.evaluate(() => document.documentElement.lang), await page.locator('#log .day').allInnerTexts()]).toEqual(['en', ['Tue 3 Mar']]);
  expect(room.desk.readers).toEqual(expect.arrayContaining([undefined, 'ines', 'tomek', 'wren']));
});

test.each([
  ['de', 'was ist passiert?', 'Wer schreibt? Wähl zuerst einen Namen.', 'keine Verbindung seit 12:00', 'Um 12:00 nicht gesendet.', 'nochmal senden', '↓ 1 neu unten'],
  ['es', '¿qué ha pasado?', '¿Quién escribe? Elige antes un nombre.', 'sin conexión desde las 12:00', 'No enviado a las 12:00.', 'reenviar', '↓ nuevo abajo: 1'],
] as const)('in %s without a name, without a connection, and after a reload', async (language, line, whoFirst, outage, notSent, again, below) => {
  const visited = await open(language, (prepared) => {
    busy(prepared);
    for (let count = 1; count <= 12; count += 1) prepared.desk.post(postOf(`more${count}`, `${count}.`, { at: NOON }));
  });
  const { page, room } = visited;
  await page.getByLabel(line).fill('who waits');
  await page.keyboard.press('Enter');
  await page.getByText(whoFirst).waitFor();
  await page.locator('#writer').selectOption(language === 'de' ? 'Ines' : 'Tomek');
  await vi.waitFor(() => { expect(room.desk.listeners).toBe(1); });
  await page.evaluate(() => { scrollTo({ top: 0, behavior: 'instant' }); });
  room.desk.post(postOf('n1', '1.', { at: NOON, to: personId('wren') }));
  await page.getByRole('button', { name: below }).waitFor();
  await visited.goDown();
  await page.getByText(outage).waitFor();
  await page.keyboard.press('Enter');
  await page.getByLabel(line).focus();
  await page.keyboard.press('Enter');
  await page.getByText(notSent).waitFor();
  await page.getByRole('button', { name: again }).waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await visited.comeBack();
  await page.reload();
  await page.getByRole('button', { name: again }).click();
  await vi.waitFor(() => { expect(room.desk.said.map((message) => message.text)).toEqual(['who waits']); });
});
