import { fileURLToPath } from 'node:url';
import { chromium, type Browser } from 'playwright-core';

/** Where the built page lies; the browser needs its compiled client. */
export const BUILT_PAGE = fileURLToPath(new URL('../../dist/chat/page/static/', import.meta.url));

/** A headless browser that talks to nobody but the page. */
export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
