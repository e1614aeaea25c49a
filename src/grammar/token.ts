import type { MilestoneKind } from '../cure/card.js';
import type { Heater } from '../cure/history.js';
import type { Instant } from '../cure/units.js';
import type { CommandKind, ReadingMethod } from '../repair/commands.js';
import type { JointNo, LampName } from '../repair/ids.js';

/** Hours and minutes as typed; they may be impossible (`25:70`), which is found out later. */
export interface TypedClock {
  readonly hour: number;
  readonly minute: number;
  readonly half: 'am' | 'pm' | null;
  /** `07:45`: a leading zero is the 24-hour clock. */
  readonly padded: boolean;
}

/** A full date and time: an instant, or the shop's local time. */
export type Stamp =
  | { readonly is: 'instant'; readonly at: Instant }
  | { readonly is: 'local'; readonly year: number; readonly month: number; readonly day: number; readonly hour: number; readonly minute: number; readonly second: number };

/** What a piece of a line means by its shape alone. */
export type Shape =
  /** `clock`: the two figures after the sign could be minutes (`1,30`). `marked`: typed `#12`. */
  | { readonly kind: 'number'; readonly value: number; readonly whole: boolean; readonly marked: boolean; readonly comma: boolean; readonly clock: TypedClock | null }
  | { readonly kind: 'degrees'; readonly value: number; readonly unit: 'C' | 'F' | null }
  | { readonly kind: 'percent'; readonly value: number }
  /** `5mm`. */
  | { readonly kind: 'depth'; readonly millimetres: number }
  | { readonly kind: 'clock'; readonly clock: TypedClock }
  | { readonly kind: 'stamp'; readonly stamp: Stamp }
  /** `20min`, `1h20`. `written`: hours that could be a time as well, `1,30`. */
  | { readonly kind: 'amount'; readonly minutes: number; readonly written: string | null }
  /** `20-30`, `20-30min`, `1-2h`; `unitMinutes` is null when no unit was typed. */
  | { readonly kind: 'range'; readonly least: number; readonly most: number; readonly unitMinutes: number | null };

export type Meaning =
  | Shape
  | { readonly kind: 'card'; readonly name: string }
  /** The name of a lamp or of a pad. */
  | { readonly kind: 'lamp'; readonly name: LampName; readonly heater: Heater }
  | { readonly kind: 'joint'; readonly joint: JointNo }
  | { readonly kind: 'form'; readonly command: CommandKind; readonly form: string }
  | { readonly kind: 'method'; readonly method: ReadingMethod }
  | { readonly kind: 'milestone'; readonly milestone: MilestoneKind }
  | { readonly kind: 'humidity'; readonly percent: number }
  /** A word of the vocabulary that has not found its phrase yet. */
  | { readonly kind: 'word' }
  | { readonly kind: 'filler' }
  | { readonly kind: 'unknown' };

/** One meaning, and the pieces of the line it was read from. `text` is in lower case. */
export type Token = { readonly first: number; readonly last: number; readonly text: string } & Meaning;
export type TokenOf<K extends Meaning['kind']> = Extract<Token, { readonly kind: K }>;

export const isWord = (token: Token | undefined, text: string): boolean => token?.kind === 'word' && token.text === text;
