import { JOB_PATTERN } from '../repair/ids.js';
import { isEverydayWord } from './everyday-words.js';
import type { KnownNames } from './known-names.js';
import { vocabulary } from './pieces.js';
import { isArticle, isNegation } from './small-words.js';

const LONGEST_WORD = 16;
const GLUED = /^(\p{L}{2,12})(\d.*)$/u;

/** Known words, names and open jobs that are one slip away: a letter more, less, other, or two neighbours swapped. */
export function oneSlipAway(text: string, names: KnownNames): readonly string[] {
  if (text.length > LONGEST_WORD || isNegation(text)) return [];
  const known = [...names.lamps, ...names.pads, ...names.cards].filter(([name]) => isOneSlip(text, name)).map(([, spelled]) => spelled);
  const jobs = jobsOneSlipAway(text, names);
  const words = isEverydayWord(text) ? [] : [...vocabulary()].filter((word) => word.length > 1 && text.length > 1 && !isArticle(word) && isOneSlip(text, word));
  const [, letters, figures] = GLUED.exec(text) ?? [];
  const glued = letters === undefined || figures === undefined ? [] : [...vocabulary()].filter((word) => isOneSlip(letters, word)).map((word) => `${word} ${figures}`);
  // A word broken off is likelier than another letter: `of` is rather `off` than `on`.
  const begun = (word: string): number => (word.startsWith(text) ? 0 : 1);
  return [...new Set([...words, ...known, ...jobs, ...glued])].sort((one, other) => begun(one) - begun(other));
}

/** `50l` for 501; a number that is a job already is never corrected to another. */
export const jobsOneSlipAway = (text: string, { openJobs }: KnownNames): readonly string[] =>
  /\d/.test(text) && !JOB_PATTERN.test(text) && text.length <= LONGEST_WORD ? [...openJobs].filter((job) => isOneSlip(text, job)) : [];

export function isOneSlip(one: string, other: string): boolean {
  if (one === other) return false;
  const start = sameAtStart(one, other);
  const [restOne, restOther] = [one.slice(start), other.slice(start)];
  if (restOne.length === restOther.length) return restOne.slice(1) === restOther.slice(1) || swapped(restOne, restOther);
  return restOne.slice(1) === restOther || restOne === restOther.slice(1);
}

function sameAtStart(one: string, other: string): number {
  let same = 0;
  while (same < one.length && one[same] === other[same]) same += 1;
  return same;
}

const swapped = (one: string, other: string): boolean => one.length > 1 && one[0] === other[1] && one[1] === other[0] && one.slice(2) === other.slice(2);
