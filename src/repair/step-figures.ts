import { celsius, celsiusFromFahrenheit, type Celsius } from '../cure/units.js';

/** What stands on a meter, out of the words that were typed. */
export interface ClimateFigure {
  readonly value: Celsius;
  readonly humidity: number | null;
  /** The same with its unit, as it is kept. */
  readonly text: string;
}

const CLIMATE = /^(?:air|metal|panel)?\s*(-?\d{1,3}(?:[.,]\d+)?)\s*°?\s*([cf])?(?:[\s,]+(?:(?:rh|hum(?:idity)?)\s*(\d{1,3}(?:[.,]\d+)?)\s*%?|(\d{1,3}(?:[.,]\d+)?)\s*%(?:\s*rh)?))?$/iu;
/** Colder or hotter than this is a typing error, or the other unit. */
const COLDEST = -20;
const HOTTEST = 60;

/** `18,5`, `64F`, `19 rh 55`; null: no such figure. A unit that nobody typed is `unit`. */
export function readClimate(text: string, unit: 'C' | 'F'): ClimateFigure | null {
  const [, typed, typedUnit, after, before] = CLIMATE.exec(text.trim()) ?? [];
  if (typed === undefined) return null;
  const figure = number(typed);
  const said = (typedUnit ?? unit).toUpperCase();
  const value = said === 'F' ? celsiusFromFahrenheit(figure) : celsius(figure);
  const damp = after ?? before;
  const humidity = damp === undefined ? null : number(damp);
  if (value < COLDEST || value > HOTTEST || (humidity !== null && (humidity <= 0 || humidity > 100))) return null;
  return { value, humidity, text: `${figure}${said}${humidity === null ? '' : ` rh ${humidity}`}` };
}

const number = (typed: string): number => Number(typed.replace(',', '.'));
