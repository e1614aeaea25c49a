import { randomUUID } from 'node:crypto';
import { hostname } from 'node:os';
import type { SlackChat } from './chat/slack/open-slack.js';
import { slackAddressing } from './chat/slack/addressing.js';
import type { ServedPage } from './chat/page/serve-page.js';
import { Closing } from './closing.js';
import { Clerk } from './clerk/clerk.js';
import { NO_ADDRESSING } from './clerk/desk-ports.js';
import { bellExpressions } from './clock/bell-expressions.js';
import { ringBells } from './clock/daily-bells.js';
import { openHouseClock, type HouseClock } from './clock/house-clock.js';
import type { Config } from './config.js';
import type { DayLine } from './config/practice-day.js';
import { describeProblem } from './config/file-problem.js';
import { readCards } from './config/cards-file.js';
import { readProcedures } from './config/procedures-file.js';
import { readShop } from './config/shop-file.js';
import { ClerkError } from './errors.js';
import { saysCommand } from './grammar/says-command.js';
import type { Logger } from './log.js';
import { instant } from './cure/units.js';
import type { MaterialCard } from './cure/card.js';
import { Dispatcher } from './outbox/dispatcher.js';
import { personId } from './repair/ids.js';
import type { Procedure } from './repair/procedure.js';
import type { Shop } from './repair/shop.js';
import { holdFolder } from './store/hold-folder.js';
import { openBook } from './store/open.js';

/** The running house. Closing it ends everything in order; what is not sent yet stands in the outbox. */
export interface House {
  readonly url: string;
  /** What is worth saying at start: a practice clock, example cards. */
  readonly notices: readonly string[];
  /** Takes cards and procedures as they stand now in their files; with anything wrong in one folder all of it stays as before. */
  rereadFiles(): void;
  /** Whether a rejection nobody handled came out of the chat transport, which then restarts by itself. */
  onUnhandledRejection(reason: unknown): boolean;
  close(): Promise<void>;
}

/** Who opens it, and what the people of a practice shop say by themselves. */
export interface Opening {
  readonly pid: number;
  readonly practiceDay: readonly DayLine[] | null;
}

/**
 * Opens the house: book, clock, clerk, then the doors. The clock runs before anything that can be slow or can fail.
 * @throws ClerkError for settings, files or a port that cannot be used.
 */
export async function openHouse(config: Config, log: Logger, { pid, practiceDay }: Opening): Promise<House> {
  const shop = shopOf(config);
  const files = { shop, cards: cardsOf(config), procedures: proceduresOf(config) };
  const opened = new Closing();
  try {
    return await openInside(opened, config, log, { ...files, pid, practiceDay });
  } catch (error) {
    await opened.closeAll();
    throw error;
  }
}

/** What the shop wrote down, read whole before anything is opened. */
interface ShopFiles extends Opening {
  readonly shop: Shop;
  readonly cards: readonly MaterialCard[];
  readonly procedures: readonly Procedure[];
}

async function openInside(opened: Closing, config: Config, log: Logger, { shop, cards, procedures, pid, practiceDay }: ShopFiles): Promise<House> {
  opened.add(holdFolder(config.data, { pid, host: hostname(), since: new Date().toISOString() }));
  const book = openBook(config.data);
  opened.add(() => { book.close(); });
  const clock = openHouseClock(config.clock, shop.zone, book, (error) => { log.error({ error }, 'A wake-up failed; it is tried again.'); });
  opened.add(() => { clock.close(); });
  const clerk = new Clerk({ store: book, clock: clock.clock, shop, cards, procedures, addressing: config.slack === null ? NO_ADDRESSING : slackAddressing(shop), log, clockRingsBells: clock.practice !== null });
  if (clock.practice === null) openBells(opened, clerk, shop, log);
  clerk.resume();
  const inside = { clerk, shop, clock, log };
  const slack = config.slack === null ? null : await openChat(config.slack, { ...inside, book });
  const page = await doors(config, { ...inside, slack, practiceDay });
  opened.add(async () => { await page[Symbol.asyncDispose](); });
  if (slack !== null) openOutbox(opened, slack, clerk, book, log);
  return {
    url: page.url,
    notices: notices(config, clock, { cards, procedures }),
    rereadFiles: () => { rereadCards(config, clerk, log); rereadProcedures(config, clerk, log); },
    onUnhandledRejection: (reason) => slack?.onUnhandledRejection(reason) ?? false,
    close: () => opened.closeAll(),
  };
}

/** The shop's daily posts; missed ones are caught up with at the next start. */
function openBells(opened: Closing, clerk: Clerk, shop: Shop, log: Logger): void {
  const bells = ringBells(bellExpressions(shop), shop.zone, () => { clerk.catchUp(); }, (error) => { log.error({ error }, 'The daily bundle failed; it is tried again with the next wake-up.'); });
  opened.add(() => { bells[Symbol.dispose](); });
}

interface Inside {
  readonly clerk: Clerk;
  readonly shop: Shop;
  readonly clock: HouseClock;
  readonly log: Logger;
}

async function openChat(settings: NonNullable<Config['slack']>, { clerk, book, shop, clock, log }: Inside & { readonly book: ReturnType<typeof openBook> }): Promise<SlackChat> {
  // Heavy: loaded when the clock runs already.
  const { openSlack } = await import('./chat/slack/open-slack.js');
  const isCommandLine = (line: string): boolean => saysCommand(line, { now: clock.clock.now(), zone: shop.zone, cards: clerk.cardNames, lamps: shop.lamps, pads: shop.pads, openJobs: [], procedures: clerk.procedureNames });
  const revealed = { ...settings, botToken: settings.botToken.reveal(), appToken: settings.appToken?.reveal() ?? null, signingSecret: settings.signingSecret?.reveal() ?? null };
  return openSlack(revealed, { desk: clerk, outbox: book, shop, isCommandLine, log });
}

function openOutbox(opened: Closing, slack: SlackChat, clerk: Clerk, store: ReturnType<typeof openBook>, log: Logger): void {
  const dispatcher = new Dispatcher({ store, sender: slack.sender, realNow: () => instant(Date.now()), log });
  opened.add(() => dispatcher.close());
  opened.add(clerk.onChange(() => { dispatcher.kick(); }));
  opened.add(() => slack.close());
  slack.start();
  dispatcher.kick();
}

async function doors(config: Config, { clerk, shop, clock, slack, practiceDay, log }: Inside & Pick<ShopFiles, 'practiceDay'> & { readonly slack: SlackChat | null }): Promise<ServedPage> {
  const { host, port } = config;
  const ports = {
    desk: clerk,
    shop,
    clock: { now: () => clock.clock.now(), practice: clock.practice },
    health: () => ({ ok: true, clock: clock.practice === null ? 'real' : 'practice', chat: slack?.status() ?? null }),
    practiceDay,
    newId: () => randomUUID(),
    speaker: (from: string) => speaker(shop, from),
    report: (error: unknown) => { log.error({ error }, 'A request to the local page failed.'); },
  };
  const { servePage } = await import('./chat/page/serve-page.js');
  try {
    return await servePage(ports, { host, port, chatEvents: slack?.requestListener ?? null });
  } catch (error) {
    throw listenTrouble(error, host, port);
  }
}

function speaker(shop: Shop, from: string): { id: ReturnType<typeof personId>; name: string } {
  const id = personId(from.trim());
  return { id, name: shop.people.find((person) => person.id === id)?.name ?? from.trim() };
}

function listenTrouble(error: unknown, host: string, port: number): ClerkError {
  const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
  return taken ? new ClerkError({ code: 'port-taken', host, port }, error) : new ClerkError({ code: 'page-failed', host, port, reason: error instanceof Error ? error.message : String(error) }, error);
}

function shopOf(config: Config): Shop {
  const read = readShop(config.shop.path);
  if (!read.ok) throw new ClerkError({ code: 'settings-refused', problems: read.problems.map(describeProblem) });
  return read.shop;
}

function cardsOf(config: Config): readonly MaterialCard[] {
  const read = readCards(config.cards.path);
  if (!read.ok) throw new ClerkError({ code: 'settings-refused', problems: read.problems.map(describeProblem) });
  return read.cards;
}

function proceduresOf(config: Config): readonly Procedure[] {
  const read = readProcedures(config.procedures.path);
  if (!read.ok) throw new ClerkError({ code: 'settings-refused', problems: read.problems.map(describeProblem) });
  return read.procedures;
}

function rereadCards(config: Config, clerk: Clerk, log: Logger): void {
  const read = readCards(config.cards.path);
  if (read.ok) {
    clerk.useCards(read.cards);
    log.info({ cards: clerk.cardNames }, 'The cards were read anew. Running cures keep the card they began with.');
  } else {
    log.error({ problems: read.problems.map(describeProblem) }, 'The cards were not changed: there is something wrong in the files. The cards of before stay.');
  }
}

function rereadProcedures(config: Config, clerk: Clerk, log: Logger): void {
  const read = readProcedures(config.procedures.path);
  if (read.ok) {
    clerk.useProcedures(read.procedures);
    log.info({ procedures: clerk.procedureNames }, 'The procedures were read anew. Jobs keep the procedure they began with.');
  } else {
    log.error({ problems: read.problems.map(describeProblem) }, 'The procedures were not changed: there is something wrong in the files. The procedures of before stay.');
  }
}

function notices(config: Config, clock: HouseClock, { cards, procedures }: Pick<ShopFiles, 'cards' | 'procedures'>): string[] {
  return [
    ...(clock.practice === null ? [] : [`PRACTICE CLOCK at ${clock.shopTime()}: nothing here is about real cars.`]),
    ...(config.shop.example ? ['Example shop: set CURECLERK_SHOP to your own shop.yaml.'] : []),
    ...(cards.some((card) => card.example) ? ['Example material cards, invented figures: set CURECLERK_CARDS to your own.'] : []),
    ...(procedures.some((procedure) => procedure.example) ? ['Example procedures, not your repair methods: set CURECLERK_PROCEDURES to your own.'] : []),
  ];
}
