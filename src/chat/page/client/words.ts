import type { Phrases } from './phrases.js';

/** What a car waits for, in the words of the trade; a kind that is newer than the words is shown as it is. */
export const waitsFor = (kind: string, phrases: Pick<Phrases, 'say' | 'has'>): string => (phrases.has(`waits-${kind}`) ? phrases.say(`waits-${kind}`) : kind);

const STATES = ['running', 'due', 'held', 'asleep', 'confirmed'] as const;
export type StateWord = (typeof STATES)[number];

/** The state as one of the five words that have a colour and a mark; anything newer shows as held, the cautious one. */
export const stateWord = (state: string): StateWord => STATES.find((one) => one === state) ?? 'held';

export interface Piece {
  readonly text: string;
  readonly strong: boolean;
}

/** Splits an answer so that its job number and its times can be seen first. */
export function pieces(text: string): Piece[] {
  const parts = text.split(/(^\d{1,7}(?= )|(?<![\d:])\d{1,2}:\d{2}(?![\d:]))/);
  return parts.map((part, index) => ({ text: part, strong: index % 2 === 1 })).filter((piece) => piece.text !== '');
}

/** The line that asks about a car; the first joint needs no name. */
export const subjectOf = (job: string, joint: string): string => (joint === 'j1' ? job : `${job} ${joint}`);
