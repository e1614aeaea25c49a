/** One text kept by the browser. Where storage is switched off it lives as long as the page. */
export class Remembered {
  #value: string | null = null;
  readonly #storage: Storage | null;

  constructor(
    readonly name: string,
    kind: 'localStorage' | 'sessionStorage',
  ) {
    this.#storage = storageOf(kind);
    this.#value = this.#storage?.getItem(name) ?? null;
  }

  get(): string | null {
    return this.#value;
  }

  set(value: string | null): void {
    this.#value = value;
    try {
      if (value === null) this.#storage?.removeItem(this.name);
      else this.#storage?.setItem(this.name, value);
    } catch (error) {
      // Full or forbidden: it is still remembered until the page closes.
      reportError(error);
    }
  }
}

function storageOf(kind: 'localStorage' | 'sessionStorage'): Storage | null {
  try {
    return window[kind];
  } catch {
    // Reading the property itself throws where the browser forbids storage.
    return null;
  }
}
