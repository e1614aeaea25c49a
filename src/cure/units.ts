/**
 * Branded units. A plain number never stands for a temperature, a duration or a moment;
 * these constructors are the only places that cast.
 */

declare const unit: unique symbol;

/** Degrees Celsius. */
export type Celsius = number & { readonly [unit]: 'celsius' };
/** Absolute temperature; only rate laws speak it. */
export type Kelvin = number & { readonly [unit]: 'kelvin' };
/** Real minutes (never wall-clock arithmetic). */
export type Minutes = number & { readonly [unit]: 'minutes' };
/** A moment: milliseconds since 1970-01-01T00:00Z. */
export type Instant = number & { readonly [unit]: 'instant' };

export const MILLISECONDS_PER_MINUTE = 60_000;
/** Coldest and hottest temperature anything in a body shop can have; outside it is a typing error. */
export const COLDEST_ACCEPTED = -40;
export const HOTTEST_ACCEPTED = 250;

export const celsius = (value: number): Celsius => value as Celsius;
export const minutes = (value: number): Minutes => value as Minutes;
export const instant = (milliseconds: number): Instant => milliseconds as Instant;

/** Exact by definition of the Fahrenheit scale. */
export const celsiusFromFahrenheit = (fahrenheit: number): Celsius => celsius(((fahrenheit - 32) * 5) / 9);

/** 0 °C = 273.15 K, exact by definition of the Celsius scale. */
const ICE_POINT = 273.15;
export const kelvinFromCelsius = (temperature: Celsius): Kelvin => (temperature + ICE_POINT) as Kelvin;

export const minutesBetween = (from: Instant, to: Instant): Minutes =>
  minutes((to - from) / MILLISECONDS_PER_MINUTE);

export const plus = (at: Instant, duration: Minutes): Instant =>
  instant(at + duration * MILLISECONDS_PER_MINUTE);

export const minus = (at: Instant, duration: Minutes): Instant =>
  instant(at - duration * MILLISECONDS_PER_MINUTE);

/**
 * Sums of shares carry rounding dust far below a millisecond; a due time of 10:30:00.0000001
 * means 10:30, not 10:31. One millisecond is the tolerance, in both directions.
 */
const ROUNDING_DUST_MS = 1;

/** Rule R8: strength is rounded up to the whole minute (late, never early). */
export const roundUpToMinute = (at: Instant): Instant =>
  instant(Math.ceil((at - ROUNDING_DUST_MS) / MILLISECONDS_PER_MINUTE) * MILLISECONDS_PER_MINUTE);

/** Rule R8: open time and limits are rounded down to the whole minute (early, never late). */
export const roundDownToMinute = (at: Instant): Instant =>
  instant(Math.floor((at + ROUNDING_DUST_MS) / MILLISECONDS_PER_MINUTE) * MILLISECONDS_PER_MINUTE);

export const earlier = (one: Instant, other: Instant): Instant => (one <= other ? one : other);
export const later = (one: Instant, other: Instant): Instant => (one >= other ? one : other);
export const colder = (one: Celsius, other: Celsius): Celsius => (one <= other ? one : other);
export const hotter = (one: Celsius, other: Celsius): Celsius => (one >= other ? one : other);
