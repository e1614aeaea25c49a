import { LogLevel } from '@slack/bolt';
import type { Logger } from '@slack/bolt';
import type { Log } from '../../outbox/log.js';

/** The libraries' own words, into our log. Their debug lines carry payloads and addresses, so they are dropped. */
export function boltLogger(log: Log): Logger {
  const from = { from: 'bolt' };
  return {
    debug: () => undefined,
    info: (...words: unknown[]) => {
      log.info(from, words.map(String).join(' '));
    },
    warn: (...words: unknown[]) => {
      log.warn(from, words.map(String).join(' '));
    },
    error: (...words: unknown[]) => {
      log.error(from, words.map(String).join(' '));
    },
    setLevel: () => undefined,
    getLevel: () => LogLevel.INFO,
    setName: () => undefined,
  };
}
