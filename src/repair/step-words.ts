import type { JointNo } from './ids.js';
import { isOneSlip } from './one-slip.js';
import { isThrough, type StepAt } from './step-state.js';

/** Shorter words have too many neighbours. */
const SHORTEST_WITH_SLIP = 4;

/** The steps that typed words can mean, best guesses only: by name, by the beginning of the name or of what is to be done, then within one slip. */
export function stepsCalled(typed: string, joint: JointNo | null, steps: readonly StepAt[]): readonly StepAt[] {
  const words = plain(typed);
  const ways: readonly ((one: StepAt) => boolean)[] = [
    ({ step }) => plain(step.id) === words,
    ({ step }) => begins(plain(step.id), words),
    ({ step }) => begins(plain(step.act), words),
    ({ step }) => isNearly(plain(step.id), words),
  ];
  const found = words === '' ? [] : (ways.map((way) => steps.filter(way)).find((some) => some.length > 0) ?? []);
  const there = narrowed(found, ({ step }) => joint === null || step.joint === joint);
  return narrowed(there, (one) => !isThrough(one));
}

/** Only where that leaves something; several stay several. */
const narrowed = (steps: readonly StepAt[], fits: (one: StepAt) => boolean): readonly StepAt[] => {
  const left = steps.filter(fits);
  return left.length === 0 ? steps : left;
};

/** By its name or the beginning of it, without a slip. */
export const isNamed = (typed: string, { step }: StepAt): boolean => begins(plain(step.id), plain(typed)) || begins(plain(step.act), plain(typed));

/** `Dry-Fit` and `dry fit` are one. */
export const plain = (words: string): string => words.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();

/** A whole name, or its first letters from three on. */
const begins = (name: string, words: string): boolean => name === words || name.startsWith(`${words} `) || (words.length >= 3 && name.startsWith(words));

const isNearly = (name: string, words: string): boolean =>
  words.length >= SHORTEST_WITH_SLIP && (isOneSlip(words, name) || (words.length < name.length && isOneSlip(words, name.slice(0, words.length))));
