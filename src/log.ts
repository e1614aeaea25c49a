import { destination, pino, stdSerializers, type DestinationStream, type Logger } from 'pino';
import type { LogLevel } from './config/log-level.js';
import type { Secret } from './config/secret.js';

export type { Logger };

const STDERR = 2;
const CENSORED = '[secret]';
/** Tokens of the chat platform, wherever they turn up: in a URL, in a header, in somebody else's error message. */
const TOKEN = /\bx(?:ox[a-z]|app)-[A-Za-z0-9-]+/g;
/** Fields that hold a credential whatever it looks like, at the top of a line and one level below. */
const CREDENTIALS = ['token', 'botToken', 'appToken', 'signingSecret', 'authorization', 'cookie', 'password'];
/** Shorter than this a secret would be found inside ordinary words. */
const SHORTEST_SECRET = 6;

export interface LogOptions {
  /** Their texts are blotted out wherever they stand in a line. */
  readonly secrets?: readonly Secret[];
  /** Instead of stderr. */
  readonly to?: DestinationStream;
}

/**
 * The program's only log: one line of JSON per entry, to stderr. Written at once, so that the last words of a process
 * that dies are not lost. Rooms take a child of it: `log.child({ room: 'store' })`.
 */
export function openLog(level: LogLevel, options: LogOptions = {}): Logger {
  const texts = (options.secrets ?? []).map((secret) => secret.reveal()).filter((text) => text.length >= SHORTEST_SECRET);
  return pino(
    {
      level,
      base: null,
      // Without it an error under this name would be written as an empty object.
      serializers: { error: stdSerializers.err },
      redact: { paths: CREDENTIALS.flatMap((field) => [field, `*.${field}`, `*.*.${field}`]), censor: CENSORED },
      hooks: { streamWrite: (line) => blotOut(line, texts) },
    },
    options.to ?? destination({ dest: STDERR, sync: true }),
  );
}

function blotOut(line: string, texts: readonly string[]): string {
  let clean = line.replace(TOKEN, CENSORED);
  // In the line the text stands as JSON writes it.
  for (const text of texts) clean = clean.replaceAll(JSON.stringify(text).slice(1, -1), CENSORED);
  return clean;
}
