/** One printed `09:50-10:20 reading 30 °C: 30 of 150 min = 20 %`, as a reader takes it. */
export interface PrintedShare {
  /** Minutes since Monday 00:00. */
  readonly begins: number;
  readonly length: number;
  readonly whole: number;
  readonly percent: number;
  readonly ahead: boolean;
}

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const CLOCK = String.raw`(?:(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)(?: \d{1,2} [A-Z][a-z]{2,4})? )?\d\d:\d\d(?::\d\d(?:\.\d+)?)?`;
const NUMBER = String.raw`(\d+(?:\.\d+)?)`;
const SHARE = new RegExp(`^(if it stays so: )?(${CLOCK})-${CLOCK} [^:]+: ${NUMBER} of ${NUMBER} min = ${NUMBER} %$`);
const DUE = new RegExp(`^Sum (?:would reach|reached) 100 % at (${CLOCK}), rounded up\\.$`);
const WEEK = 7 * 24 * 60;

/** The printed shares of an answer in their order; `today` is the weekday that times without one belong to. */
export function printedShares(answer: string, today: string): PrintedShare[] {
  return answer.split('\n').flatMap((line) => {
    const [, ahead, begins, length, whole, percent] = SHARE.exec(line) ?? [];
    return begins === undefined ? [] : [{ begins: minuteOf(begins, today), length: Number(length), whole: Number(whole), percent: Number(percent), ahead: ahead !== undefined }];
  });
}

/** The announced minute of the week, or null where the answer has none. */
export function printedDue(answer: string, today: string): number | null {
  const [due] = answer.split('\n').flatMap((line) => DUE.exec(line)?.[1] ?? []);
  return due === undefined ? null : minuteOf(due, today);
}

/** What a person with a calculator comes to: the shares added up, the rest of the last row minutes, counted on, rounded up. */
export function redoneDue(shares: readonly PrintedShare[]): number {
  const last = shares.at(-1);
  if (last === undefined) throw new Error('nothing is printed that counts');
  const before = shares.slice(0, -1).reduce((sum, share) => sum + share.length / share.whole, 0);
  // The sum's own rule: a millisecond is not a minute.
  return Math.ceil(last.begins + (1 - before) * last.whole - 1 / 60_000) % WEEK;
}

/** The sum of the printed shares, and how far it may be off since every printed minute is rounded to a tenth at worst. */
export function printedTotal(shares: readonly PrintedShare[]): { readonly total: number; readonly within: number } {
  const total = shares.reduce((sum, { length, whole }) => sum + length / whole, 0);
  return { total, within: shares.reduce((sum, { length, whole }) => sum + 0.05 / whole + (0.05 * length) / whole ** 2, 1e-9) };
}

function minuteOf(clock: string, today: string): number {
  const words = clock.split(' ');
  const [hours = NaN, minute = NaN, seconds = 0] = (words.at(-1) ?? '').split(':').map(Number);
  const day = words.length > 1 ? (words[0] ?? today) : today;
  return DAYS.indexOf(day) * 24 * 60 + hours * 60 + minute + seconds / 60;
}
