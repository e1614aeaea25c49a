import { COLDEST_ACCEPTED, HOTTEST_ACCEPTED } from '../cure/units.js';
import { supposed } from './assign-supposed.js';
import { DEEPEST_BEAD } from './bead-depth.js';
import type { KnownNames } from './known-names.js';
import type { Token, TokenOf } from './token.js';
import { isHeaterWord, type Spoken } from './which-command.js';

export type NumberToken = TokenOf<'number'>;
export type ValueToken = NumberToken | TokenOf<'degrees'>;

/** Which number is what. `extra` are numbers the command has no place for. */
export interface Assigned {
  readonly job: NumberToken | null;
  readonly temperature: ValueToken | null;
  /** The shop air, supposed or said along; only where the word air says so. */
  readonly air: ValueToken | null;
  /** A depth that was typed without its unit. */
  readonly depth: NumberToken | null;
  readonly entry: NumberToken | null;
  readonly extra: readonly ValueToken[];
}

const NOTHING: Assigned = { job: null, temperature: null, air: null, depth: null, entry: null, extra: [] };

/**
 * The rule for numbers, in a command that takes a job and a temperature:
 * - a number with a unit, a decimal or a sign is the temperature; `#501` is the job;
 * - of two whole numbers the first is the job, unless only the second is a job that is open;
 *   after the word `cure`, the number behind the word `lamp` or `pad` is the temperature;
 * - a single whole number is the job if that job is open, else the temperature. In `cure` it is the job
 *   (which need not be open yet) unless it stands behind the word `lamp`; where the temperature may be
 *   left out, a number that no lamp could reach is the job as well.
 */
export function assignNumbers(tokens: readonly Token[], spoken: Spoken, names: KnownNames): Assigned {
  const takes = new Set(spoken.declaration.takes);
  const values = tokens.filter((token) => token.kind === 'number' || token.kind === 'degrees');
  const wholes = values.filter(isWhole);
  if (takes.has('air') && takes.has('from')) return rest(supposed(tokens, values, names), values);
  const air = takes.has('air') ? airBehindItsWord(tokens) : null;
  if (air !== null) return { ...assignNumbers(tokens.filter((token) => token !== air && !isAirWord(token)), spoken, names), air };
  if (takes.has('figure') && !tokens.some((token) => token.kind === 'depth')) return rest(jobAndDepth(values, names), values);
  if (takes.has('temperature') && takes.has('job')) return jobAndTemperature(tokens, values, spoken, names);
  if (takes.has('temperature')) return rest({ temperature: values.find((value) => !isMarked(value)) ?? null }, values);
  if (takes.has('job')) return rest({ job: wholes.find(isMarked) ?? wholes[0] ?? null }, values);
  if (takes.has('entry')) return rest({ entry: wholes[0] ?? null }, values);
  return rest({}, values);
}

const isAirWord = (token: Token): boolean => token.kind === 'form' && token.command === 'air';

/** The 19 of `paste 31 P1 air 19`. */
function airBehindItsWord(tokens: readonly Token[]): ValueToken | null {
  const next = tokens[tokens.findIndex(isAirWord) + 1];
  return tokens.some(isAirWord) && (next?.kind === 'number' || next?.kind === 'degrees') ? next : null;
}

function jobAndTemperature(tokens: readonly Token[], values: readonly ValueToken[], spoken: Spoken, names: KnownNames): Assigned {
  const wholes = values.filter(isWhole);
  const marked = wholes.find(isMarked) ?? null;
  const certain = values.find((value) => !isWhole(value)) ?? null;
  if (marked !== null) return rest({ job: marked, temperature: certain ?? values.find((value) => value !== marked) ?? null }, values);
  const [first = null, second = null] = wholes;
  if (certain !== null) return rest({ job: first, temperature: certain }, values);
  if (first === null) return NOTHING;
  if (second === null) return rest(isJob(first, tokens, spoken, names) ? { job: first } : { temperature: first }, values);
  const swapped = isSwapped(first, second, tokens, spoken, names);
  return rest(swapped ? { job: second, temperature: first } : { job: first, temperature: second }, values);
}

function isJob(only: NumberToken, tokens: readonly Token[], { declaration, byName, forms }: Spoken, { openJobs }: KnownNames): boolean {
  const open = openJobs.has(only.text);
  const tooHot = only.value > HOTTEST_ACCEPTED;
  if (declaration.kind === 'cure') return !isBehindLamp(only, tokens) || (!byName && (open || tooHot));
  return open || (forms.has('up') && tooHot);
}

function isSwapped(first: NumberToken, second: NumberToken, tokens: readonly Token[], { declaration, byName }: Spoken, { openJobs }: KnownNames): boolean {
  if (declaration.kind === 'cure' && byName && isBehindLamp(first, tokens) !== isBehindLamp(second, tokens)) return isBehindLamp(first, tokens);
  return openJobs.has(second.text) && !openJobs.has(first.text);
}

/** Right behind the word `lamp` or `pad`, names between them left aside. */
function isBehindLamp(value: NumberToken, tokens: readonly Token[]): boolean {
  const before = tokens.slice(0, tokens.indexOf(value)).filter((token) => token.kind !== 'card' && token.kind !== 'lamp' && token.kind !== 'joint');
  const last = before.at(-1);
  return last !== undefined && isHeaterWord(last);
}

/** `depth 501 5`: of two whole numbers the first is the job, unless only the second is open; a single one that no bead has is the job. */
function jobAndDepth(values: readonly ValueToken[], { openJobs }: KnownNames): Partial<Assigned> {
  const numbers = values.filter((value) => value.kind === 'number');
  const wholes = numbers.filter(isWhole);
  const certain = numbers.find((value) => !value.whole) ?? null;
  const [first = null, second = null] = wholes;
  const marked = wholes.find(isMarked) ?? null;
  if (marked !== null || certain !== null) return { job: marked ?? first, depth: certain ?? wholes.find((value) => value !== marked) ?? null };
  if (first === null) return {};
  if (second === null) return openJobs.has(first.text) || first.value > DEEPEST_BEAD ? { job: first } : { depth: first };
  return openJobs.has(second.text) && !openJobs.has(first.text) ? { job: second, depth: first } : { job: first, depth: second };
}

const isMarked = (value: ValueToken): boolean => value.kind === 'number' && value.marked;
const isWhole = (value: ValueToken): value is NumberToken => value.kind === 'number' && value.whole;

function rest(assigned: Partial<Assigned>, values: readonly ValueToken[]): Assigned {
  const used: readonly (ValueToken | null | undefined)[] = [assigned.job, assigned.temperature, assigned.air, assigned.depth, assigned.entry];
  return { ...NOTHING, ...assigned, extra: values.filter((value) => !used.includes(value)) };
}

/** What anything in a body shop can have, in the unit typed; without a unit the wider figures of °C stand. */
export function isPossible(value: number, unit: 'C' | 'F' | null): boolean {
  const inCelsius = unit === 'F' ? ((value - 32) * 5) / 9 : value;
  return inCelsius >= COLDEST_ACCEPTED && inCelsius <= HOTTEST_ACCEPTED;
}
