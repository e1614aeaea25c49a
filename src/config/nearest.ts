/** The known word that is nearest to a mistyped one, or null when none is near enough to be meant. */
export function nearest(typed: string, known: readonly string[]): string | null {
  const wanted = typed.toLowerCase();
  const ranked = known.map((word) => ({ word, slips: slipsBetween(wanted, word.toLowerCase()) })).sort((one, other) => one.slips - other.slips);
  const best = ranked[0];
  return best !== undefined && best.slips <= Math.max(1, Math.floor(wanted.length / 3)) ? best.word : null;
}

/** Letters to insert, remove, replace or swap with their neighbour to get from one word to the other. */
function slipsBetween(one: string, other: string): number {
  let beforeLast: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const same = one[i - 1] === other[j - 1] ? 0 : 1;
      const plain = Math.min((row[j - 1] ?? 0) + 1, (last[j] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      const swapped = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1];
      row.push(swapped ? Math.min(plain, (beforeLast[j - 2] ?? 0) + 1) : plain);
    }
    beforeLast = last;
    last = row;
  }
  return last.at(-1) ?? 0;
}
