import { colder, hotter, minus, minutes, plus, type Celsius, type Instant } from './units.js';

/** A stretch in which the shop is open. */
export interface OpenPeriod {
  readonly opens: Instant;
  readonly closes: Instant;
}

export interface AirReading {
  readonly at: Instant;
  readonly value: Celsius;
  /** Relative humidity in percent, or null when it was not read. */
  readonly humidity: number | null;
}

/** Where a stretch of air temperature comes from. */
export type AirSource = 'air reading' | 'old air reading' | 'usual air' | 'night setting' | 'unknown air';

/** Shop air from this moment on, until the next step; the last step never ends. */
export interface AirStep {
  readonly from: Instant;
  readonly temperature: Celsius | null;
  readonly humidity: number | null;
  readonly source: AirSource;
}

export interface AirInput {
  /** From here on the air is wanted. */
  readonly start: Instant;
  /** Opening periods from the day of `start` to the day after the last reading. */
  readonly periods: readonly OpenPeriod[];
  readonly readings: readonly AirReading[];
  /** The shop's usual air in working hours; null: never assumed. */
  readonly usual: Celsius | null;
  /** What the shop falls to after closing; null: unknown, nothing counts. */
  readonly night: Celsius | null;
}

export type AirSide = 'cold' | 'hot';

interface SidedInput extends AirInput {
  readonly pick: typeof colder;
}

/** Rule R7: an air reading counts for three hours, then the colder (and the drier) of the last two. */
const READING_LASTS = minutes(180);
/** Somebody who reads the air shortly before opening time reads the working day's air. */
const EARLY_BIRD = minutes(60);
/** Two readings this close are one reading and its correction. */
const CORRECTED_WITHIN = minutes(15);
/** A reading this fresh overrules a warmer usual air. */
const REMEMBERED = minutes(24 * 60);

/**
 * The shop's air as the rules let it count (R7): readings in working hours; the night setting from the first
 * minute after closing until the first reading after opening. A joint begun in today's working hours takes the
 * shop's usual air until somebody reads; one that stood through the night does not. Where two figures stand against each
 * other the colder counts for strength (`cold`) and the hotter for open time (`hot`), which must err early.
 */
export function airSteps(input: AirInput, side: AirSide = 'cold'): AirStep[] {
  const readings = [...input.readings].sort((a, b) => a.at - b.at);
  const edges = new Set<Instant>([input.start]);
  for (const period of input.periods) for (const edge of [period.opens, period.closes]) edges.add(edge);
  for (const reading of readings) for (const edge of [reading.at, plus(reading.at, READING_LASTS)]) edges.add(edge);
  const steps: AirStep[] = [];
  for (const from of [...edges].filter((edge) => edge >= input.start).sort((a, b) => a - b)) {
    const step = airAt(from, { ...input, readings, pick: side === 'cold' ? colder : hotter });
    const last = steps.at(-1);
    if (last === undefined || last.temperature !== step.temperature || last.source !== step.source || last.humidity !== step.humidity) steps.push(step);
  }
  return steps;
}

function airAt(at: Instant, input: SidedInput): AirStep {
  const known = input.readings.filter((reading) => reading.at <= at);
  const last = known.at(-1);
  const fresh = last !== undefined && at < plus(last.at, READING_LASTS) ? last.humidity : null;
  const today = input.periods.find((period) => minus(period.opens, EARLY_BIRD) <= at && at < period.closes);
  const dayBegins = today === undefined ? null : minus(today.opens, EARLY_BIRD);
  if (dayBegins !== null && last !== undefined && last.at >= dayBegins) return { from: at, ...aged(at, last, known.findLast((one) => one.at <= minus(last.at, CORRECTED_WITHIN)), input.pick) };
  const open = today !== undefined && at >= today.opens;
  if (open && dayBegins !== null && input.start >= dayBegins) return { from: at, humidity: fresh, ...usualAir(at, last, input) };
  return { from: at, humidity: fresh, ...(input.pick === hotter ? afterHours(at, last, input) : nightAir(last, input)) };
}

type Air = Pick<AirStep, 'temperature' | 'source'>;

function aged(at: Instant, last: AirReading, previous: AirReading | undefined, pick: typeof colder): Omit<AirStep, 'from'> {
  if (at < plus(last.at, READING_LASTS)) return { temperature: last.value, humidity: last.humidity, source: 'air reading' };
  const humidity = last.humidity === null ? null : Math.min(last.humidity, previous?.humidity ?? last.humidity);
  return { temperature: pick(last.value, previous?.value ?? last.value), humidity, source: 'old air reading' };
}

function usualAir(at: Instant, last: AirReading | undefined, input: SidedInput): Air {
  if (input.usual === null) return { temperature: null, source: 'unknown air' };
  const remembered = last !== undefined && last.at >= minus(at, REMEMBERED) ? last.value : input.usual;
  return { temperature: input.pick(input.usual, remembered), source: 'usual air' };
}

/** On the hot side the air of the day stays in the shop. */
function afterHours(at: Instant, last: AirReading | undefined, input: SidedInput): Air {
  const remembered = last !== undefined && last.at >= minus(at, REMEMBERED) ? last.value : null;
  const known = [input.night, input.usual, remembered].filter((value) => value !== null);
  return known.length === 0 ? { temperature: null, source: 'unknown air' } : { temperature: known.reduce(hotter), source: 'night setting' };
}

/** A colder reading taken at night overrules the night setting, until the next reading. */
function nightAir(last: AirReading | undefined, input: AirInput): Air {
  if (input.night === null) return { temperature: null, source: 'unknown air' };
  const wasClosed = input.periods.some((period) => last !== undefined && period.closes <= last.at);
  const readAtNight = last !== undefined && wasClosed && !input.periods.some((period) => minus(period.opens, EARLY_BIRD) <= last.at && last.at < period.closes);
  return { temperature: readAtNight ? colder(last.value, input.night) : input.night, source: 'night setting' };
}
