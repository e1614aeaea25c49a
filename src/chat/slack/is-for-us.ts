import type { Heard } from './incoming.js';
import { plainText } from './plain-text.js';
import type { Readings } from './to-message.js';

export interface Hearing extends Pick<Readings, 'jobOfThread' | 'wordFor' | 'isCommandLine' | 'botUserId'> {
  readonly understands: (line: string) => boolean;
}

/**
 * Whether something heard is meant for the clerk. A mention and a direct message are. In a job's thread no mention is
 * needed; but people talk to each other there, so a line counts when it can be read, or when it begins with a command
 * word and holds a figure: then its writer must hear that it was not understood. A mention there comes as an event of its own.
 */
export function isForUs({ how, channel, thread, text, bot }: Heard, { jobOfThread, wordFor, isCommandLine, botUserId, understands }: Hearing): boolean {
  if (how !== 'thread') return true;
  const clerk = bot ?? botUserId();
  if (thread === null || jobOfThread(channel, thread) === null || text.includes(clerk === null ? '<@' : `<@${clerk}`)) return false;
  const line = plainText(text, wordFor);
  return line !== '' && (understands(line) || (/\d/.test(line) && isCommandLine(/^\S+/.exec(line)?.[0] ?? '')));
}
