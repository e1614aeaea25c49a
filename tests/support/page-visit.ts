import type { Browser, Page } from 'playwright-core';
import type { PagePorts } from '../../src/chat/page/page-ports.js';
import { servePage, type ServedPage } from '../../src/chat/page/serve-page.js';
import { BUILT_PAGE } from './browser.js';
import { pageRoom, type PageRoom } from './page-room.js';

/** One person with the page open on a phone, and the house behind it. */
export interface Visit extends AsyncDisposable {
  readonly room: PageRoom;
  readonly page: Page;
  /** Every address that the page asked for. */
  readonly asked: string[];
  /** What the browser complained about. */
  readonly complaints: string[];
  /** The program stops; the page stays open. */
  goDown(): Promise<void>;
  comeBack(): Promise<void>;
}

export async function visit(browser: Browser, prepare: (room: PageRoom) => void = () => undefined, change: Partial<PagePorts> = {}): Promise<Visit> {
  const room = pageRoom({ staticDir: BUILT_PAGE, ...change });
  prepare(room);
  let served: ServedPage | null = await servePage(room.ports, { host: '127.0.0.1', port: 0 });
  const { url } = served;
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => { if (message.type() === 'error' && !message.text().includes('ERR_')) complaints.push(message.text()); });
  await page.goto(url);
  const goDown = async (): Promise<void> => {
    await served?.[Symbol.asyncDispose]();
    served = null;
  };
  return {
    room,
    page,
    asked,
    complaints,
    goDown,
    comeBack: async () => {
      served = await servePage(room.ports, { host: '127.0.0.1', port: Number(new URL(url).port) });
    },
    [Symbol.asyncDispose]: async () => {
      await context.close();
      await goDown();
    },
  };
}

/** The text of every entry on the sheet, who first, one line per paragraph. */
export async function entriesOf(page: Page): Promise<string[]> {
  const [who, bodies] = await Promise.all([page.locator('#log .entry .by').allInnerTexts(), page.locator('#log .entry .body').allInnerTexts()]);
  return bodies.map((text, index) => `${who[index] ?? ''}\n${text.replaceAll(/\n+/g, '\n')}`);
}
