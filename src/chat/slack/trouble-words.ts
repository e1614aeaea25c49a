import { ClerkError } from '../../errors.js';
import { errorWord } from './outcome-of.js';
import { why } from './why.js';

/** What a failed call to the platform means for the person who reads the status, and what to do. */
export function troubleWords(error: unknown): string {
  const word = errorWord(error);
  return word === null ? new ClerkError({ code: 'chat-unreachable', reason: why(error) }).message : refusedWords(word);
}

export function refusedWords(word: string): string {
  return new ClerkError({ code: 'chat-refused', reason: word }).message;
}
