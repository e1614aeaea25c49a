const LONGEST_NAME = 3;
const LEAD = /^(?:to|an|a) +/i;

/** The person that free text names, as typed: `to sam`. Null when it is none: figures are jobs. */
export function toWhom(text: string): string | null {
  const name = text.replace(LEAD, '').trim();
  const words = name.split(' ');
  return name === '' || words.length > LONGEST_NAME || words.some((word) => /^[#\d]/.test(word)) ? null : name;
}
