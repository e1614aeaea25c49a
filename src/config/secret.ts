import { inspect } from 'node:util';

const SHOWN = '[secret]';

/** A text that must not be seen: printed, logged or made into JSON it is `[secret]`. */
export class Secret {
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
  }

  /** The text itself, for the one call that needs it. */
  reveal(): string {
    return this.#text;
  }

  toString(): string {
    return SHOWN;
  }

  toJSON(): string {
    return SHOWN;
  }

  [inspect.custom](): string {
    return SHOWN;
  }
}
