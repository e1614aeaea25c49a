import type { Heater } from '../cure/history.js';
import type { Language } from '../repair/shop.js';

/** The word a command is known by, in every language. */
export type ShownWord = Readonly<Record<Language, string>>;

/** What a question is answered with, by the word that would be typed. */
export const CHOICE_WORDS = ['hard', 'soft', 'thin', 'flange', 'lamp', 'pad', 'air', 'what if'] as const;
export type ChoiceWord = (typeof CHOICE_WORDS)[number];

/** One part of a line, as it is told back; the words for it are found where the reader's language is known. */
export type Said =
  | { readonly is: 'typed'; readonly text: string }
  | { readonly is: 'command'; readonly word: ShownWord }
  | { readonly is: 'word'; readonly word: ChoiceWord }
  | { readonly is: 'job'; readonly job: string }
  | { readonly is: 'card'; readonly card: string }
  | { readonly is: 'heater'; readonly heater: Heater; readonly name: string }
  | { readonly is: 'degrees'; readonly value: number; readonly unit: 'C' | 'F' | null }
  | { readonly is: 'millimetres'; readonly value: number }
  /** Percent. */
  | { readonly is: 'humidity'; readonly value: number }
  | { readonly is: 'entry'; readonly entry: number }
  | { readonly is: 'hours'; readonly value: number }
  /** `20 min`; with a job in front where both numbers are in question. */
  | { readonly is: 'ago'; readonly length: string; readonly job: string | null }
  | { readonly is: 'from'; readonly time: string }
  | { readonly is: 'without'; readonly word: string };

/** What stands on a button, part by part. */
export type Label = readonly Said[];

export const asTyped = (text: string): Label => [{ is: 'typed', text }];

export const ago = (length: string, job: string | null = null): Label => [{ is: 'ago', length, job }];

/** A word that answers a question is said in the reader's language, everything else as it would be typed. */
export function asChoice(words: string): Label {
  const word = CHOICE_WORDS.find((one) => one === words);
  return word === undefined ? asTyped(words) : [{ is: 'word', word }];
}
