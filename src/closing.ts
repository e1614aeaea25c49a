/** What was opened, in order; closed the other way round. A closing that fails does not keep the others open. */
export class Closing {
  readonly #closings: (() => void | Promise<void>)[] = [];

  add(close: () => void | Promise<void>): void {
    this.#closings.push(close);
  }

  async closeAll(): Promise<void> {
    const errors: unknown[] = [];
    for (const close of this.#closings.splice(0).reverse()) {
      try {
        await close();
      } catch (error) {
        errors.push(error);
      }
    }
    if (errors.length > 0) throw new AggregateError(errors, 'Not everything could be closed.');
  }
}
