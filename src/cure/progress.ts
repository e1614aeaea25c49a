import type { StepSource } from './history.js';
import { MILLISECONDS_PER_MINUTE, instant, minutesBetween, type Celsius, type Instant, type Minutes } from './units.js';

/** A stretch of one milestone's wait: `share` of it is earned per minute; a stranger can redo the sum. */
export interface Piece {
  readonly from: Instant;
  /** null: goes on like this. */
  readonly to: Instant | null;
  readonly temperature: Celsius | null;
  readonly source: StepSource | 'lamp' | 'lamp off' | 'between stages' | 'clock' | 'flash-off' | 'depth not known';
  /** Minutes the whole milestone would take like this; null: nothing counts. */
  readonly wholeMinutes: Minutes | null;
}

/** How far a milestone is and when it will be there, on the safe side. */
export interface Progress {
  readonly law: string;
  readonly pieces: readonly Piece[];
  /** Exact moment at which the share reaches 1, or null as things stand. Not rounded. */
  readonly due: Instant | null;
}

/** Minutes. Sums of a few hundred shares of a wait of weeks carry this much dust, far below a millisecond. */
const DUST = 1e-8;

/** Walks the pieces to the moment at which the shares add up to 1 (rule R2). */
export function progressOf(law: string, pieces: readonly Piece[]): Progress {
  let share = 0;
  for (const piece of pieces) {
    if (piece.wholeMinutes === null) continue;
    const needed = (1 - share) * piece.wholeMinutes;
    const length = piece.to === null ? Infinity : minutesBetween(piece.from, piece.to);
    if (needed <= length + DUST) return { law, pieces, due: instant(piece.from + Math.max(0, needed) * MILLISECONDS_PER_MINUTE) };
    share += length / piece.wholeMinutes;
  }
  return { law, pieces, due: null };
}

/** The done part of the wait at a moment, 0 to 1. It is a share of the waiting time, never of strength. */
export function shareAt(progress: Progress, at: Instant): number {
  let share = 0;
  for (const piece of progress.pieces) {
    if (piece.from >= at || piece.wholeMinutes === null) continue;
    const to = piece.to === null || piece.to > at ? at : piece.to;
    share += minutesBetween(piece.from, to) / piece.wholeMinutes;
  }
  return Math.min(1, share);
}

/** Whether anything counts at this moment; if not, the milestone is asleep. */
export function countsAt(progress: Progress, at: Instant): boolean {
  const piece = progress.pieces.filter((one) => one.from <= at).at(-1);
  return piece?.wholeMinutes != null && (piece.to === null || piece.to > at);
}
