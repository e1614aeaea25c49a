import type { CarRow, PostNote } from './read.js';

/** Posts that ask whether this strength or state is there; the board shows a car that still waits for such an answer as due or held. */
const CHECKS: ReadonlySet<string> = new Set(['handling', 'full', 'sand', 'drive-away', 'recoat-from', 'skin', 'through', 'flash-off', 'dwell', 'drip-free', 'dry', 'fire-watch']);
const WAITS_NO_LONGER: ReadonlySet<string> = new Set(['running', 'asleep', 'confirmed']);

/**
 * Whether the board shows that nobody waits for an answer to this post any more.
 * The board has one row a car, its worst: where that row does not tell, the question counts as open.
 */
export function isAnswered({ about, kind }: Pick<PostNote, 'about' | 'kind'>, board: readonly CarRow[]): boolean {
  if (about.job === null || about.joint === null || kind === 'safety') return false;
  const row = board.find((car) => car.job === about.job);
  if (row === undefined) return true;
  if (CHECKS.has(kind)) return WAITS_NO_LONGER.has(row.state);
  const sameCure = row.joint === about.joint && row.card === about.card;
  return kind === 'open-limit' && sameCure && row.waitsFor !== 'open-limit' && row.waitsFor !== 'decision';
}
