import { correctSlips } from './correct-slips.js';
import { fireCall } from './fire-call.js';
import { interpretLine } from './interpret-line.js';
import { knownNames } from './known-names.js';
import type { Read, ReadingContext } from './reading.js';
import { toMisread } from './to-misread.js';

/**
 * One line of a person to one command, or to a misread that says what is unclear and what would have been valid.
 * Never throws, never guesses: a word that is not known, or a name with two meanings, is asked about. Only a slip of one
 * letter is put right, where a single command can be meant.
 * Every line offered in a misread is itself read without a question in the same context.
 */
export function readLine(text: string, context: ReadingContext): Read {
  const names = knownNames(context);
  const parsed = interpretLine(text, names);
  if (parsed.ok) return parsed;
  const call = fireCall(text, context.openJobs);
  if (call !== null) return { ok: true, command: call };
  const corrected = correctSlips(text, names, parsed.trouble) ?? parsed;
  return corrected.ok ? corrected : { ok: false, misread: toMisread(corrected.trouble, names) };
}
