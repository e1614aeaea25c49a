import { interpretLine } from './interpret-line.js';
import { knownNames } from './known-names.js';
import type { Read, ReadingContext } from './reading.js';
import { toMisread } from './to-misread.js';

/**
 * One line of a person to one command, or to a misread that says what is unclear and what would have been valid.
 * Never throws, never guesses: a word that is not known, or a name with two meanings, is asked about.
 * Every line offered in a misread is itself read without a question in the same context.
 */
export function readLine(text: string, context: ReadingContext): Read {
  const names = knownNames(context);
  const parsed = interpretLine(text, names);
  return parsed.ok ? parsed : { ok: false, misread: toMisread(parsed.trouble, names) };
}
