import type { Log } from '../../outbox/log.js';

export type HealthState = 'up' | 'down' | 'starting';

export interface SlackStatus {
  readonly state: HealthState;
  /** What is wrong and what to do, or null when all is well. */
  readonly reason: string | null;
}

/** Does the platform know the bot's token; does its line to us stand; do messages get out; does the home channel take them. */
export type HealthPart = 'token' | 'line' | 'sending' | 'home';

const WORST_FIRST: readonly HealthState[] = ['down', 'starting', 'up'];

/** How the transport is doing: the worst of its parts, with the reason. */
export class Health {
  readonly #log: Log;
  readonly #parts: Map<HealthPart, SlackStatus>;

  /** Parts named here have to report before the whole is up. */
  constructor(log: Log, parts: readonly HealthPart[]) {
    this.#log = log;
    this.#parts = new Map(parts.map((part) => [part, { state: 'starting', reason: `waiting for: ${part}` }]));
  }

  set(part: HealthPart, state: HealthState, reason: string | null): void {
    const before = this.#parts.get(part);
    this.#parts.set(part, { state, reason });
    if (before?.state === state && before.reason === reason) return;
    if (state === 'down') this.#log.warn({ part, reason }, 'The chat platform is out of reach; clock and local page go on.');
    else this.#log.info({ part, state }, 'The chat platform has changed its state.');
  }

  status(): SlackStatus {
    const parts = [...this.#parts.values()];
    for (const state of WORST_FIRST) {
      const worst = parts.find((part) => part.state === state);
      if (worst !== undefined) return worst;
    }
    return { state: 'up', reason: null };
  }
}
