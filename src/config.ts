import { fileURLToPath } from 'node:url';
import { LOG_LEVELS, type LogLevel } from './config/log-level.js';
import { isLoopback } from './config/loopback.js';
import { nearest } from './config/nearest.js';
import { readSlack, type SlackSettings } from './config/slack-settings.js';

/** Where a file comes from: named by the shop, or the example that is shipped with the program. */
export interface Source {
  readonly path: string;
  readonly example: boolean;
}

export interface Config {
  /** Folder of the book. */
  readonly data: string;
  /** Where the local page listens; port 0 takes any free one. */
  readonly host: string;
  readonly port: number;
  readonly shop: Source;
  readonly cards: Source;
  readonly procedures: Source;
  /** The text of CURECLERK_CLOCK; null: the real clock. */
  readonly clock: string | null;
  readonly logLevel: LogLevel;
  readonly slack: SlackSettings | null;
}

export type ConfigRead = { readonly ok: true; readonly config: Config } | { readonly ok: false; readonly problems: readonly string[] };

export type Environment = Readonly<Record<string, string | undefined>>;

const OWN_PREFIX = 'CURECLERK_';
const KNOWN = ['CURECLERK_DATA', 'CURECLERK_HOST', 'CURECLERK_PORT', 'CURECLERK_SHOP', 'CURECLERK_CARDS', 'CURECLERK_PROCEDURES', 'CURECLERK_CLOCK', 'CURECLERK_LOG'];
const HIGHEST_PORT = 65_535;

/** Reads every setting from the environment, or says everything that is wrong with it. An empty variable counts as not set. */
export function readConfig(environment: Environment): ConfigRead {
  const look = (name: string): string | null => environment[name]?.trim() || null;
  const port = portOf(look('CURECLERK_PORT') ?? '4780');
  const level = look('CURECLERK_LOG') ?? 'info';
  const logLevel = LOG_LEVELS.find((known) => known === level) ?? null;
  const slack = readSlack(look);
  const problems = [...strangers(environment), ...hostProblems(look('CURECLERK_HOST')), ...slack.problems, ...clockProblems(look('CURECLERK_CLOCK'), slack.settings)];
  if (port === null) problems.push(`CURECLERK_PORT must be a whole number from 0 to ${HIGHEST_PORT}, not "${look('CURECLERK_PORT') ?? ''}".`);
  if (logLevel === null) problems.push(`CURECLERK_LOG must be one of ${LOG_LEVELS.join(', ')}, not "${level}".`);
  if (problems.length > 0 || port === null || logLevel === null) return { ok: false, problems };
  return {
    ok: true,
    config: {
      data: look('CURECLERK_DATA') ?? './data',
      host: look('CURECLERK_HOST') ?? '127.0.0.1',
      port,
      shop: sourceOf(look('CURECLERK_SHOP'), './shop/example-shop.yaml'),
      cards: sourceOf(look('CURECLERK_CARDS'), './cards/'),
      procedures: sourceOf(look('CURECLERK_PROCEDURES'), './procedures/'),
      clock: look('CURECLERK_CLOCK'),
      logLevel,
      slack: slack.settings,
    },
  };
}

function sourceOf(named: string | null, shipped: string): Source {
  return named === null ? { path: fileURLToPath(new URL(shipped, import.meta.url)), example: true } : { path: named, example: false };
}

function portOf(text: string): number | null {
  const port = Number(text);
  return /^\d{1,5}$/.test(text) && port <= HIGHEST_PORT ? port : null;
}

/** The page knows nobody's password, so whoever reaches it can write into the book. */
function hostProblems(host: string | null): string[] {
  if (host === null || isLoopback(host)) return [];
  return [`CURECLERK_HOST is ${host}, which other computers can reach, and sign-in is not built yet. Use 127.0.0.1.`];
}

/** A practice clock runs ahead of the real one: real people must not be called by it. */
function clockProblems(clock: string | null, slack: SlackSettings | null): string[] {
  if (clock === null || slack === null) return [];
  if (slack.apiUrl !== null && isLoopback(new URL(slack.apiUrl).hostname)) return [];
  return ['CURECLERK_CLOCK sets a practice clock, which must not post into a real workspace. Unset it, or unset the SLACK_ variables.'];
}

/** A mistyped variable would silently leave the default standing. */
function strangers(environment: Environment): string[] {
  const unknown = Object.keys(environment).filter((name) => name.startsWith(OWN_PREFIX) && !KNOWN.includes(name));
  return unknown.map((name) => {
    const meant = nearest(name.slice(OWN_PREFIX.length), KNOWN.map((known) => known.slice(OWN_PREFIX.length)));
    return `${name} is not known; ${meant === null ? `known are ${KNOWN.join(', ')}` : `did you mean ${OWN_PREFIX}${meant}?`}`;
  });
}
