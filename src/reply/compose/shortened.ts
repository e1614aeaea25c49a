const LONGEST = 40;

/** What somebody typed, cut where it would push the rest of the answer away. */
export const shortened = (typed: string): string => {
  const letters = Array.from(typed);
  return letters.length <= LONGEST ? typed : `${letters.slice(0, LONGEST - 1).join('')}…`;
};
