/**
 * What the bot says: a small tree that every chat renders in its own way.
 * The plain text alone is complete; buttons only save typing.
 */

export type Span =
  | { readonly kind: 'text'; readonly text: string }
  /** The thing to see first: a time, a number, a warning word. */
  | { readonly kind: 'strong'; readonly text: string };

export type Line = readonly Span[];

/**
 * A button is a line that could have been typed: pressing it sends `line` through the one command path. With `asks` it is
 * only the front of one: whoever presses it writes the rest behind it, and that goes the same path.
 */
export interface Button {
  readonly label: string;
  readonly line: string;
  readonly asks?: 'reason' | undefined;
}

/** `alarm` is for things that can hurt; `refusal` for a line that changed nothing. */
export type Tone = 'plain' | 'question' | 'alarm' | 'refusal';

export interface Answer {
  readonly tone: Tone;
  readonly lines: readonly Line[];
  readonly buttons: readonly Button[];
}
