import type { Timing } from '../../../src/clock/timed-clock.js';
import { instant, type Instant } from '../../../src/cure/units.js';

/** Timers that count running time beside a time of day that can be stepped, as on a real machine. */
export class SimulatedTiming implements Timing {
  readonly longestSleep = 60_000;
  /** Length of every sleep that was begun. */
  readonly sleeps: number[] = [];
  /** How many ms too soon timers fire; none is shorter than 1 ms, as in Node. */
  early = 0;
  #running = 0;
  #timeOfDay: number;
  #timer: { readonly at: number; readonly wake: () => void } | null = null;

  constructor(startsAt: Instant) {
    this.#timeOfDay = startsAt;
  }

  now(): Instant {
    return instant(this.#timeOfDay);
  }

  sleep(ms: number, wake: () => void): () => void {
    this.sleeps.push(ms);
    const timer = { at: this.#running + Math.max(1, ms - this.early), wake };
    this.#timer = timer;
    return () => {
      if (this.#timer === timer) this.#timer = null;
    };
  }

  get asleep(): boolean {
    return this.#timer !== null;
  }

  /** Time passes; timers fire. */
  run(ms: number): void {
    const end = this.#running + ms;
    for (let timer = this.#timer; timer !== null && timer.at <= end; timer = this.#timer) {
      this.#pass(timer.at - this.#running);
      this.#timer = null;
      timer.wake();
    }
    this.#pass(end - this.#running);
  }

  /** The time of day jumps; timers notice nothing. */
  step(ms: number): void {
    this.#timeOfDay += ms;
  }

  #pass(ms: number): void {
    this.#running += ms;
    this.#timeOfDay += ms;
  }
}
