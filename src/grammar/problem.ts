import type { ShownWord } from './said.js';

/** What a command has no place for, or only one place. */
export type Thing = 'temperature' | 'card' | 'joint' | 'method' | 'milestone' | 'depth' | 'humidity' | 'lamp-name' | 'pad-name' | 'word';

/** What is missing or wrong where the key says it all. */
export type PlainProblem =
  | 'a-command'
  | 'fewer-names'
  | 'which-of-two'
  | 'no-question'
  | 'command-word'
  | 'one-thing'
  | 'one-job'
  | 'one-time'
  | 'one-question'
  | 'what-number-is'
  | 'which-number-is-job'
  | 'known-word'
  | 'known-words'
  | 'fitting-word'
  | 'ago-or-time'
  | 'time-of-day'
  | 'word-from'
  | 'time-come'
  | 'time-ahead'
  | 'ready-time'
  | 'job-figures'
  | 'two-decimals'
  | 'such-time'
  | 'joint-range'
  | 'job-before-reason'
  | 'time-that-exists'
  | 'last-seven-days'
  | 'date-that-exists'
  | 'hours-of-day'
  | 'morning-or-afternoon'
  | 'whole-job-of-several'
  | 'a-temperature'
  | 'lamp-temperature'
  | 'pad-temperature'
  | 'air-temperature'
  | 'word-lamp-before'
  | 'word-pad-before'
  | 'word-lamp-pad-air-before'
  | 'words-what-if'
  | 'lamp-or-pad'
  | 'lamp-or-no-lamp'
  | 'pad-or-no-pad'
  | 'time-or-unknown'
  | 'hard-or-soft'
  | 'hard-or-soft-without-if'
  | 'thin-or-flange'
  | 'the-depth'
  | 'a-card'
  | 'a-name'
  | 'name-then-except'
  | 'jobs-after-except'
  | 'two-jobs'
  | 'how-long'
  | 'a-reason'
  | 'step-and-reason'
  | 'step-and-point'
  | 'number-of-point'
  | 'what-is-entered'
  | 'the-batch'
  | 'the-expiry'
  | 'the-opened'
  | 'the-air'
  | 'the-metal'
  | 'the-photo';

/** Where figures or names belong to it. */
export type ProblemWithValues =
  | { readonly is: 'longest-line'; readonly most: number }
  | { readonly is: 'known-card'; readonly cards: readonly string[] }
  | { readonly is: 'takes-none'; readonly thing: Thing | 'number' | 'time'; readonly word: ShownWord }
  | { readonly is: 'no-number-in-front'; readonly word: ShownWord }
  | { readonly is: 'only-one'; readonly thing: Thing }
  | { readonly is: 'temperature-or-time'; readonly value: number; readonly time: string }
  | { readonly is: 'or-time'; readonly time: string }
  /** °C. */
  | { readonly is: 'temperature-range'; readonly least: number; readonly most: number }
  /** Millimetres. */
  | { readonly is: 'depth-range'; readonly least: number; readonly most: number }
  /** Percent. */
  | { readonly is: 'humidity-range'; readonly least: number; readonly most: number }
  | { readonly is: 'hours-or-clock'; readonly hours: number; readonly clock: string }
  | { readonly is: 'whole-job'; readonly job: string };

/** What is missing or wrong in a line; the words for it are found where the reader's language is known. */
export type Problem = PlainProblem | ProblemWithValues;
