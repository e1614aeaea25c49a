/** One waiter, rung from outside. A ring before the wait is remembered. */
export class Bell {
  #rung = false;
  #wake: (() => void) | null = null;

  ring(): void {
    this.#rung = true;
    this.#wake?.();
  }

  /** Resolves at the next ring, or as `quiet` after so many milliseconds without one. */
  async wait(milliseconds: number): Promise<'rung' | 'quiet'> {
    if (!this.#rung) await this.#sleep(milliseconds);
    const outcome = this.#rung ? 'rung' : 'quiet';
    this.#rung = false;
    return outcome;
  }

  #sleep(milliseconds: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, milliseconds);
      this.#wake = (): void => {
        clearTimeout(timer);
        this.#wake = null;
        resolve();
      };
    });
  }
}
