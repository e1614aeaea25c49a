#!/usr/bin/env node
import process from 'node:process';

/** The signal for changed cards and procedures, from the very first moment on: with nobody to take it, it would end the process. */
const filesChanged = { isWaiting: false, reread: (): void => { filesChanged.isWaiting = true; } };
// Not SIGHUP: closing a terminal sends that, and must end the clerk.
process.on('SIGUSR2', () => { filesChanged.reread(); });

/** `check-shop` looks at the shop's files and ends; `verify` and `backup` see to the book and end. `practice` opens the practice shop in a folder that goes with it. Otherwise: reads the settings, opens the house, and keeps it open until it is told to stop. */
async function main(): Promise<void> {
  // Loaded only now: what stands in an import line above would run before the signal is taken.
  const [{ openHouse }, { readConfig }, { checkShop }, { ClerkError }, { openLog }] = await Promise.all([import('./app.js'), import('./config.js'), import('./config/check-shop.js'), import('./errors.js'), import('./log.js')]);
  const practice = process.argv[2] === 'practice' ? (await import('./practice-shop.js')).openPracticeShop(process.env) : null;
  const read = practice?.read ?? readConfig(process.env);
  if (!read.ok) throw new ClerkError({ code: 'settings-refused', problems: read.problems });
  const { config } = read;
  if (process.argv[2] === 'check-shop') {
    const { ok, lines } = checkShop(config);
    process.stdout.write(`${lines.join('\n')}\n`);
    process.exitCode = ok ? 0 : 1;
    return;
  }
  const [, , word, named = null] = process.argv;
  if (word === 'verify' || word === 'backup') {
    const { backUpAt, verifyAt } = await import('./book-care.js');
    const { ok, lines } = word === 'verify' ? verifyAt(config.data, named) : await backUpAt(config.data, named, new Date());
    process.stdout.write(`${lines.join('\n')}\n`);
    process.exitCode = ok ? 0 : 1;
    return;
  }
  const secrets = config.slack === null ? [] : [config.slack.botToken, config.slack.appToken, config.slack.signingSecret].filter((secret) => secret !== null);
  const log = openLog(config.logLevel, { secrets });
  const house = await openHouse(config, log, { pid: process.pid, practiceDay: practice?.lines ?? null });
  for (const notice of house.notices) process.stdout.write(`${notice}\n`);
  let stopping: Promise<void> | null = null;
  const stop = (): Promise<void> => {
    const closing = stopping ?? house.close().then(() => { practice?.forget(); process.exit(); });
    stopping = closing;
    return closing;
  };
  process.on('unhandledRejection', (reason) => {
    if (house.onUnhandledRejection(reason)) return;
    log.fatal({ error: reason }, 'Something failed that nobody had foreseen; the clerk stops. Start it again: nothing is lost.');
    process.exitCode = 1;
    void stop();
  });
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, () => void stop());
  filesChanged.reread = () => { house.rereadFiles(); };
  if (filesChanged.isWaiting) house.rereadFiles();
  process.stdout.write(`ready ${house.url}\n`);
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
});
