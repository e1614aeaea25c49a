import type { Problem } from './problem.js';
import type { Label } from './said.js';
import type { Weekday } from './time-words.js';
import type { Stamp, TypedClock } from './token.js';

/** The day that was typed with a time of day. */
export type Day = 'today' | 'yesterday' | 'tomorrow' | Weekday;

/** A time as typed, before the shop's clock is asked what it means. */
export type TimeExpression =
  | { readonly is: 'now' }
  /** Real minutes back; a range has two different ends. */
  | { readonly is: 'ago'; readonly least: number; readonly most: number }
  | { readonly is: 'clock'; readonly clock: TypedClock; readonly day: Day | null }
  | { readonly is: 'stamp'; readonly stamp: Stamp }
  /** `501 ago 20`: which number is the job? `1,30 h ago`: 1.3 h or 1:30? The ways to say it so that it is clear. */
  | { readonly is: 'unsure'; readonly problem: Problem; readonly ways: readonly { readonly words: string; readonly label: Label }[] };
