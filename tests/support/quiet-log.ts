import type { Log } from '../../src/outbox/log.js';

export interface HeardLog extends Log {
  /** Everything said, as `level: text`. */
  readonly lines: string[];
}

/** A log that keeps its lines to itself. */
export function quietLog(): HeardLog {
  const lines: string[] = [];
  const say = (level: string) => (_about: object, text: string) => {
    lines.push(`${level}: ${text}`);
  };
  return { lines, info: say('info'), warn: say('warn'), error: say('error') };
}
