import { readPost, type PostNote } from './read.js';

const REOPEN_MILLISECONDS = 3_000;

export interface StreamEars {
  post(post: PostNote): void;
  changed(): void;
  opened(): void;
  lost(): void;
}

/** Listens to the posts. The browser reconnects with the last number by itself; where it gives up, a new stream starts there. */
export class Stream {
  #source: EventSource | null = null;

  constructor(
    /** Number of the last post seen. */
    public last: number,
    readonly ears: StreamEars,
  ) {}

  get isOpen(): boolean {
    return this.#source?.readyState === EventSource.OPEN;
  }

  /** Starts, or starts again after the last number seen. */
  open(): void {
    this.#source?.close();
    const source = new EventSource(`/api/feed/stream?after=${this.last}`);
    this.#source = source;
    source.addEventListener('open', () => { this.ears.opened(); });
    source.addEventListener('changed', () => { this.ears.changed(); });
    source.addEventListener('message', (event: MessageEvent<string>) => { this.#hear(event.data); });
    source.addEventListener('error', () => {
      this.ears.lost();
      if (source.readyState === EventSource.CLOSED) setTimeout(() => { if (this.#source === source) this.open(); }, REOPEN_MILLISECONDS);
    });
  }

  #hear(data: string): void {
    const post = readPost(JSON.parse(data));
    if (post.seq <= this.last) return;
    this.last = post.seq;
    this.ears.post(post);
  }
}
