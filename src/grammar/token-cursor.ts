import { hourNamed, timeWord, type TimeWord } from './time-words.js';
import type { Meaning, Token, TokenOf } from './token.js';

/** Walks over tokens from a place; each `take` moves on only when it finds what it asks for. */
export class TokenCursor {
  readonly #tokens: readonly Token[];
  #at: number;

  constructor(tokens: readonly Token[], at: number) {
    this.#tokens = tokens;
    this.#at = at;
  }

  get at(): number {
    return this.#at;
  }

  moveTo(at: number): void {
    this.#at = at;
  }

  peek(ahead = 0): Token | undefined {
    return this.#tokens[this.#at + ahead];
  }

  takeWord(...meanings: readonly TimeWord[]): TimeWord | null {
    const token = this.peek();
    const meaning = token?.kind === 'word' ? timeWord(token.text) : null;
    if (meaning === null || !meanings.includes(meaning)) return null;
    this.#at += 1;
    return meaning;
  }

  /** An hour as a word: `acht`. */
  takeHourName(): number | null {
    const token = this.peek();
    const hour = token?.kind === 'word' ? hourNamed(token.text) : null;
    if (hour !== null) this.#at += 1;
    return hour;
  }

  /** A word by its spelling. */
  takeText(is: (text: string) => boolean): boolean {
    const token = this.peek();
    if (token?.kind !== 'word' || !is(token.text)) return false;
    this.#at += 1;
    return true;
  }

  take<K extends Meaning['kind']>(kind: K): TokenOf<K> | null {
    const token = this.peek();
    if (token === undefined || !isKind(token, kind)) return null;
    this.#at += 1;
    return token;
  }
}

const isKind = <K extends Meaning['kind']>(token: Token, kind: K): token is TokenOf<K> => token.kind === kind;
