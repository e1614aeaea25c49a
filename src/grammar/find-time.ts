import type { KnownNames } from './known-names.js';
import { readAgo } from './read-ago.js';
import { readClock } from './read-clock.js';
import { ago, asTyped } from './said.js';
import type { TimeExpression } from './time-expression.js';
import { timeWord, unitMinutes } from './time-words.js';
import type { Token, TokenOf } from './token.js';
import { TokenCursor } from './token-cursor.js';

/** A time found in a line, with the tokens that spell it. */
export interface FoundTime {
  readonly expression: TimeExpression;
  readonly tokens: readonly Token[];
  /** Said as a moment to be ready by. */
  readonly by: boolean;
}

/** `501 ago` is more likely a job number than eight hours and twenty-one minutes. */
const LONGEST_WITHOUT_UNIT = 180;

/** Takes every time out of a line. `now` beside another time is only a word of speech. */
export function findTimes(tokens: readonly Token[], names: KnownNames): { readonly times: readonly FoundTime[]; readonly rest: readonly Token[] } {
  const times: FoundTime[] = [];
  const rest: Token[] = [];
  let at = 0;
  while (at < tokens.length) {
    const found = timeAt(tokens, at, names);
    const token = tokens[at];
    if (found !== null) times.push(found);
    else if (token !== undefined) rest.push(token);
    at += found?.tokens.length ?? 1;
  }
  const stated = times.filter((time) => time.expression.is !== 'now');
  return { times: stated.length > 0 ? stated : times.slice(0, 1), rest };
}

function timeAt(tokens: readonly Token[], at: number, names: KnownNames): FoundTime | null {
  const agoOrJob = (cursor: TokenCursor): TimeExpression | null => readAgoOrJob(cursor, tokens, names);
  for (const read of [readStamp, agoOrJob, readClock, readNow]) {
    const cursor = new TokenCursor(tokens, at);
    const expression = read(cursor);
    if (expression !== null) return timeOf(expression, tokens.slice(at, cursor.at));
  }
  return null;
}

const timeOf = (expression: TimeExpression, tokens: readonly Token[]): FoundTime => ({ expression, tokens, by: tokens.some((token) => token.kind === 'word' && timeWord(token.text) === 'by') });

/** Without a unit, `501 ago 20` and `20 ago 501` look alike: the job that is open decides, or the size, or nobody. */
function readAgoOrJob(cursor: TokenCursor, tokens: readonly Token[], names: KnownNames): TimeExpression | null {
  const number = cursor.peek();
  const bare = number?.kind === 'number' && number.whole && cursor.peek(1)?.kind === 'word' && timeWord(cursor.peek(1)?.text ?? '') === 'ago';
  if (!bare) return readAgo(cursor);
  const other = cursor.peek(2);
  const open = names.openJobs.has(number.text);
  if (other?.kind === 'amount' || other?.kind === 'range') return null;
  if (other?.kind !== 'number' || !other.whole) {
    const alone = tokens.filter((token) => token.kind === 'number' && token.whole).length === 1;
    return open && alone ? unsure(cursor, 2, byLikelihood(number)) : readAgo(cursor);
  }
  const unit = cursor.peek(3);
  const otherOpen = names.openJobs.has(other.text);
  if ((unit?.kind === 'word' && unitMinutes(unit.text) !== null) || (open && !otherOpen)) return null;
  if (otherOpen || number.value <= LONGEST_WITHOUT_UNIT) return readAgo(cursor);
  return unsure(cursor, 3, [oneAgo(number.text, other.text), oneAgo(other.text, number.text)]);
}

type Way = Extract<TimeExpression, { readonly is: 'unsure' }>['ways'][number];

const oneAgo = (job: string, minutes: string): Way => ({ words: `${job} ${minutes} min ago`, label: ago(`${minutes} min`, job) });

function byLikelihood({ text, value }: TokenOf<'number'>): readonly Way[] {
  const ways = [{ words: `${text} min ago`, label: ago(`${text} min`) }, { words: text, label: asTyped(text) }];
  return value <= LONGEST_WITHOUT_UNIT ? ways : ways.reverse();
}

function unsure(cursor: TokenCursor, length: number, ways: readonly Way[]): TimeExpression {
  cursor.moveTo(cursor.at + length);
  return { is: 'unsure', problem: 'which-number-is-job', ways };
}

/** `at 2026-03-02T13:40`: buttons say times this way. */
function readStamp(cursor: TokenCursor): TimeExpression | null {
  skipLead(cursor);
  const typed = cursor.take('stamp');
  return typed === null ? null : { is: 'stamp', stamp: typed.stamp };
}

/** `at`, `ready by`. */
function skipLead(cursor: TokenCursor): void {
  let word = cursor.takeWord('at', 'since', 'for', 'by');
  while (word !== null) word = cursor.takeWord('at', 'since', 'for', 'by');
}

function readNow(cursor: TokenCursor): TimeExpression | null {
  cursor.takeWord('since', 'for', 'by');
  return cursor.takeWord('now') === null ? null : { is: 'now' };
}
