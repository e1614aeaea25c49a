interface Lane {
  busy: boolean;
  restUntil: number;
}

/** Lanes of the outbox: each does one thing at a time and rests after it. Times in milliseconds. */
export class Lanes {
  readonly #lanes = new Map<string, Lane>();

  /** When the lane may begin something: now or earlier, later while it rests, never (Infinity) while it is busy. */
  freeAt(name: string): number {
    const lane = this.#lane(name);
    return lane.busy ? Infinity : lane.restUntil;
  }

  occupy(name: string): void {
    this.#lane(name).busy = true;
  }

  release(name: string): void {
    this.#lane(name).busy = false;
  }

  /** A longer rest that was already ordered stays. */
  rest(name: string, until: number): void {
    const lane = this.#lane(name);
    lane.restUntil = Math.max(lane.restUntil, until);
  }

  #lane(name: string): Lane {
    const known = this.#lanes.get(name);
    if (known !== undefined) return known;
    const lane: Lane = { busy: false, restUntil: 0 };
    this.#lanes.set(name, lane);
    return lane;
  }
}
