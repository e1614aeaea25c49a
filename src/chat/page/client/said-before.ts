import type { SaidEntry } from './log.js';
import { isFields, readReply } from './read.js';
import { Remembered } from './remembered.js';

const MOST = 60;

/** The lines written in this browser tab, so that a reload does not take them off the sheet. */
export class SaidBefore {
  readonly #kept = new Remembered('cureclerk.said', 'sessionStorage');
  #entries: readonly SaidEntry[] = readEntries(this.#kept.get());

  get entries(): readonly SaidEntry[] {
    return this.#entries;
  }

  add(entry: SaidEntry): void {
    this.#entries = [...this.#entries, entry].slice(-MOST);
    this.#kept.set(JSON.stringify(this.#entries));
  }

  forget(): void {
    this.#entries = [];
    this.#kept.set(null);
  }
}

function readEntries(text: string | null): SaidEntry[] {
  const value: unknown = text === null ? [] : JSON.parse(text);
  return Array.isArray(value) ? value.flatMap((one: unknown) => readEntry(one)) : [];
}

/** What an older page kept in another shape is left out. */
function readEntry(value: unknown): SaidEntry[] {
  if (!isFields(value)) return [];
  const { at, who, line, reply } = value;
  if (typeof at !== 'number' || typeof who !== 'string' || typeof line !== 'string') return [];
  return [{ at, who, line, reply: readReply(reply) }];
}
