export interface ServerSentEvent {
  readonly id: string | null;
  readonly event: string | null;
  readonly data: string;
}

/** Reads server-sent events (WHATWG HTML, section 9.2) from a response body, one after the other. */
export class EventReader {
  readonly #reader: ReadableStreamDefaultReader<Uint8Array>;
  readonly #decoder = new TextDecoder();
  #buffer = '';
  #comments = 0;

  constructor(response: Response) {
    if (response.body === null) throw new Error('The response has no body');
    this.#reader = response.body.getReader();
  }

  /** The next event that carries data. Throws when the stream ends before. */
  async next(): Promise<ServerSentEvent> {
    for (;;) {
      const block = await this.#block();
      if (block === null) throw new Error('The stream ended');
      const fields = block.split('\n').map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trimStart()] as const);
      const of = (name: string): string | null => fields.find(([key]) => key === name)?.[1] ?? null;
      const data = of('data');
      if (data !== null) return { id: of('id'), event: of('event'), data };
    }
  }

  /** The next event that is a post. */
  async nextPost(): Promise<ServerSentEvent> {
    for (;;) {
      const event = await this.next();
      if (event.event === null) return event;
    }
  }

  /** Reads until so many comments were seen; returns how many there were. */
  async comments(count: number): Promise<number> {
    while (this.#comments < count && (await this.#block()) !== null);
    return this.#comments;
  }

  async end(): Promise<'ended'> {
    while ((await this.#block()) !== null);
    return 'ended';
  }

  async hangUp(): Promise<void> {
    await this.#reader.cancel();
  }

  async #block(): Promise<string | null> {
    for (;;) {
      const end = this.#buffer.indexOf('\n\n');
      if (end >= 0) {
        const block = this.#buffer.slice(0, end);
        this.#buffer = this.#buffer.slice(end + 2);
        if (block.startsWith(':')) this.#comments += 1;
        return block;
      }
      const { done, value } = await this.#reader.read();
      if (done) return null;
      this.#buffer += this.#decoder.decode(value, { stream: true });
    }
  }
}
