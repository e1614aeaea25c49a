import { airSweep, type AirKnown } from './air-sweep.js';
import { vapourPressure } from './dew-point.js';
import { colder, hotter, later, minus, minutes, plus, type Celsius, type Instant } from './units.js';

/** A stretch in which the shop is open. */
export interface OpenPeriod {
  readonly opens: Instant;
  readonly closes: Instant;
  /** After closing the shop stays closed for at least one whole day of the calendar: a weekend, a holiday. */
  readonly longClosureAfter: boolean;
}

export interface AirReading {
  readonly at: Instant;
  readonly value: Celsius;
  /** Relative humidity in percent, or null when it was not read. */
  readonly humidity: number | null;
  /** When it got into the book, if later than it happened. */
  readonly enteredAt?: Instant;
}

/** Where a stretch of air temperature comes from. */
export type AirSource = 'air reading' | 'old air reading' | 'usual air' | 'night setting' | 'closed days' | 'unknown air';

/** Shop air from this moment on, until the next step; the last step never ends. */
export interface AirStep {
  readonly from: Instant;
  readonly temperature: Celsius | null;
  /** Percent at this temperature of the water that was read, and never more percent than was read. */
  readonly humidity: number | null;
  /** Water vapour in hPa: what was read stays in the shop while it cools, as far as colder air can hold it. */
  readonly vapour: number | null;
  readonly source: AirSource;
}

export interface AirInput {
  /** From here on the air is wanted. */
  readonly start: Instant;
  /** Opening periods in order, none in another: from the last before `start` to the one whose closing ends what is known. */
  readonly periods: readonly OpenPeriod[];
  readonly readings: readonly AirReading[];
  /** The shop's usual air in working hours; null: never assumed. */
  readonly usual: Celsius | null;
  /** What the shop falls to after closing; null: unknown, nothing counts. */
  readonly night: Celsius | null;
  /** What it falls to in a closure of a whole day or more; null: as in any night. Says nothing without `night`. */
  readonly closedDays: Celsius | null;
}

export type AirSide = 'cold' | 'hot';

interface SidedInput extends AirInput {
  readonly pick: typeof colder;
}

/** Rule R7: an air reading counts for three hours, then the colder (and the drier) of the last two. */
const READING_LASTS = minutes(180);
/** A reading this fresh, when the shop opens or closes or the joint begins, overrules a warmer usual air. */
const REMEMBERED = minutes(24 * 60);

/**
 * The shop's air as the rules let it count (R7): readings in working hours; the night setting from the first
 * minute after closing until the first reading after opening, or the setting of closed days where the shop stays closed
 * for a whole day or more and that is colder. A joint begun in today's working hours takes the
 * shop's usual air until somebody reads; one that stood through the night does not. Where two figures stand against each
 * other the colder counts for strength (`cold`) and the hotter for open time (`hot`), which must err early.
 * Humidity goes on counting until the next reading, after three hours the drier of the last two: a closed shop keeps its water.
 */
export function airSteps(input: AirInput, side: AirSide = 'cold'): AirStep[] {
  const readings = [...input.readings].sort((a, b) => a.at - b.at);
  const known = airSweep(input.periods, readings, input.start);
  const sided: SidedInput = { ...input, pick: side === 'cold' ? colder : hotter };
  const steps: AirStep[] = [];
  for (const at of edges(input, readings)) {
    const step = airAt(known(at), sided);
    const last = steps.at(-1);
    if (last === undefined || last.temperature !== step.temperature || last.source !== step.source || last.humidity !== step.humidity || last.vapour !== step.vapour) steps.push(step);
  }
  return steps;
}

/** The only moments at which the air can change, in order. */
function edges({ start, periods }: AirInput, readings: readonly AirReading[]): Instant[] {
  const all = [
    ...periods.flatMap((period) => [period.opens, period.closes]),
    ...readings.map((reading) => reading.at),
    ...readings.map((reading) => plus(reading.at, READING_LASTS)),
  ];
  return [start, ...all.filter((edge) => edge > start).sort((a, b) => a - b)];
}

function airAt(known: AirKnown, input: SidedInput): AirStep {
  const air = temperatureAt(known, input);
  const counted = countedReadings(known, input.start);
  const dry = counted.flatMap(({ humidity }) => humidity ?? []);
  if (dry.length === 0) return { from: known.at, ...air, humidity: null, vapour: null };
  const held = air.temperature === null ? Infinity : vapourPressure(air.temperature, 100);
  const vapour = Math.min(held, ...counted.flatMap(({ value, humidity }) => (humidity === null ? [] : [vapourPressure(value, humidity)])));
  return { from: known.at, ...air, humidity: Math.min(warmedPercent(known.last, air.temperature), ...dry), vapour };
}

/** The same water is fewer percent of air that is taken to be warmer than it was read. */
function warmedPercent(last: AirReading | undefined, temperature: Celsius | null): number {
  if (last === undefined || last.humidity === null || temperature === null || temperature <= last.value) return Infinity;
  return (vapourPressure(last.value, last.humidity) / vapourPressure(temperature, 100)) * 100;
}

/**
 * A reading stands for three hours, then the one before it counts as well; between two readings the drier counts, like the
 * colder of two on a joint. One without humidity leaves it unknown, and so does one that was old when the joint began.
 */
function countedReadings({ at, last, previous, next }: AirKnown, start: Instant): readonly AirReading[] {
  if (last === undefined || last.humidity === null || last.at < minus(start, READING_LASTS)) return [];
  const before = at < plus(last.at, READING_LASTS) || previous === undefined ? [] : [previous];
  return [last, ...before, ...(next === undefined ? [] : [next])];
}

type Air = Pick<AirStep, 'temperature' | 'source'>;

function temperatureAt(known: AirKnown, input: SidedInput): Air {
  const { at, last, today } = known;
  if (today !== null && last !== undefined && last.at >= today.begins) return aged(at, last, known.previous, input.pick);
  if (today !== null && at >= today.opens && input.start >= today.begins) return usualAir(known, input);
  return input.pick === hotter ? afterHours(known, input) : closedAir(known, input);
}

const UNKNOWN: Air = { temperature: null, source: 'unknown air' };

function aged(at: Instant, last: AirReading, previous: AirReading | undefined, pick: typeof colder): Air {
  if (at < plus(last.at, READING_LASTS)) return { temperature: last.value, source: 'air reading' };
  return { temperature: pick(last.value, previous?.value ?? last.value), source: 'old air reading' };
}

/** Whether a reading is fresh is asked when the shop opens or closes or the joint begins, so that it does not lapse in between. */
function remembered({ last, bell }: AirKnown, start: Instant): Celsius | null {
  return last !== undefined && last.at >= minus(later(start, bell ?? start), REMEMBERED) ? last.value : null;
}

function usualAir(known: AirKnown, { usual, start, pick }: SidedInput): Air {
  return usual === null ? UNKNOWN : { temperature: pick(usual, remembered(known, start) ?? usual), source: 'usual air' };
}

/** On the hot side the air of the day stays in the shop. */
function afterHours(known: AirKnown, { night, usual, start }: SidedInput): Air {
  const figures = [night, usual, remembered(known, start)].filter((value) => value !== null);
  return figures.length === 0 ? UNKNOWN : { temperature: figures.reduce(hotter), source: 'night setting' };
}

/** A colder reading taken while the shop is closed overrules the setting, until the next reading. */
function closedAir({ last, readAtNight, closedForDays }: AirKnown, { night, closedDays }: SidedInput): Air {
  if (night === null) return UNKNOWN;
  const setting: Air & { readonly temperature: Celsius } = closedForDays && closedDays !== null && closedDays <= night ? { temperature: closedDays, source: 'closed days' } : { temperature: night, source: 'night setting' };
  return last !== undefined && readAtNight ? { ...setting, temperature: colder(last.value, setting.temperature) } : setting;
}
