import { JOB_PATTERN, JOINT_PATTERN } from '../repair/ids.js';
import { deedNamed, isAskingWord, isBeingWord, isBetweenWord, isReadyForWord, isReasonWord, isStateAskedFor, isWhenWord } from './asking-words.js';
import type { Piece } from './pieces.js';
import { isArticle, isFiller } from './small-words.js';
import { timeWord } from './time-words.js';

const PLAIN: Readonly<Record<string, string>> = { sand: 'can i sand', weld: 'can i weld', move: 'can i move', bake: 'can i bake', fill: 'can i fill', unclamp: 'can i unclamp' };

/** `can 501 be moved`, `is 501 ready to sand`, `why cant i weld 501`, `darf ich 501 schleifen`: the question in its plain order. Null when it is none. */
export function restateMay(pieces: readonly Piece[], asks: boolean): string | null {
  const because = pieces.findIndex((piece) => !isReasonWord(piece.text));
  const [head, ...rest] = pieces.slice(Math.max(because, 0));
  const begins = head !== undefined && (isAskingWord(head.text) || isBeingWord(head.text) || isWhenWord(head.text));
  const plain = because === 0 && (asks || begins) ? askedAbout(pieces) : null;
  if (plain !== null) return plain;
  if (head === undefined) return null;
  const readied = rest.some((piece) => isReadyForWord(piece.text));
  if (!isAskingWord(head.text) && !(isBeingWord(head.text) && readied && because === 0)) return null;
  return aboutReady(rest, readied) ?? aboutDeed(rest);
}

/** `is 501 safe`, `when is 902 ready`, `902 ready?`, `can i drive 601`: asked for how far the car is, which is told as it stands. */
function askedAbout(pieces: readonly Piece[]): string | null {
  const jobs = pieces.filter(({ text }) => JOB_PATTERN.test(text.replace(/^#/, '')));
  const joints = pieces.filter(({ text }) => JOINT_PATTERN.test(text));
  const others = pieces.filter((piece) => !jobs.includes(piece) && !joints.includes(piece)).map(({ text }) => text);
  const [job, second] = jobs;
  if (job === undefined || second !== undefined || joints.length > 1 || !others.every((word) => isStateAskedFor(word) || isAskingWord(word) || isBeingWord(word) || isWhenWord(word) || isBetweenWord(word))) return null;
  return others.some(isStateAskedFor) ? ['when', job.text, ...joints.map(({ text }) => text)].join(' ') : null;
}

function aboutDeed(rest: readonly Piece[]): string | null {
  const deeds = new Set(rest.map((piece) => deedNamed(piece.text)).filter((deed) => deed !== null));
  // `can i take the clamps off` holds no other deed; `may i move the clamps` is about the clamps.
  const [deed, other] = deeds.has('unclamp') ? ['unclamp' as const] : deeds;
  if (deed === undefined || other !== undefined) return null;
  const others = rest.filter(({ text }) => deedNamed(text) === null && !isBetweenWord(text) && !isReadyForWord(text) && !isFiller(text) && !isArticle(text));
  const jobs = others.filter(({ text }) => JOB_PATTERN.test(text.replace(/^#/, '')));
  const joints = others.filter(({ text }) => JOINT_PATTERN.test(text));
  if (jobs.length > 1 || joints.length > 1 || jobs.length + joints.length < others.length) return null;
  return [PLAIN[deed] ?? '', ...[...jobs, ...joints].map(({ text }) => text)].join(' ');
}

/** `can 7214 be ready thu 16`: when must it be closed at the latest? */
function aboutReady(rest: readonly Piece[], readied: boolean): string | null {
  const [job, ...others] = rest.filter(({ text }) => !isFiller(text) && text !== 'be' && !isReadyForWord(text) && timeWord(text) !== 'by');
  if (!readied || job === undefined || !JOB_PATTERN.test(job.text) || others.length === 0 || others.some(({ text }) => deedNamed(text) !== null || isBetweenWord(text))) return null;
  return `latest start ${job.text} ready ${others.map(({ text }) => text).join(' ')}`;
}
