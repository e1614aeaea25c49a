import { IANAZone } from 'luxon';
import { z } from 'zod';
import { closedObject, expects } from '../cure/closed-object.js';
import { celsius, celsiusFromFahrenheit, minutes, type Celsius } from '../cure/units.js';
import { LANGUAGES, type Shop } from '../repair/shop.js';
import { nearest } from './nearest.js';
import { endlessClosure, holidaysField } from './shop-holidays.js';
import { baysField } from './shop-bays.js';
import { hoursField } from './shop-hours.js';
import { lampsField, padsField, peopleField } from './shop-people.js';
import { DEFAULT_RHYTHM, rhythmField, waitField } from './shop-rhythm.js';
import { checkShifts, shiftsField } from './shop-shifts.js';

const TEMPERATURE = /^(-?\d+(?:[.,]\d+)?)\s*°?\s*([CF])?$/i;
const AIR_WORDS = 'a temperature such as 20 or 68 F, or unknown';
/** Coldest and hottest air a shop can be meant to have, °C; outside it is a typing error or the other unit. */
const COLDEST_AIR = -30;
const HOTTEST_AIR = 50;

/** How long somebody watches after hot work, where the shop says nothing (common practice, no source). */
const DEFAULT_FIRE_WATCH = minutes(60);
/** A lamp hotter than this brings the battery caution, where the shop says nothing (common practice, no source). */
const DEFAULT_BATTERY_CAUTION = celsius(60);
const CAUTION_WORDS = 'a temperature such as 60 or 140 F';
/** Cooler than this it would come with every lamp, hotter hardly ever, °C. */
const LEAST_CAUTION = 30;
const MOST_CAUTION = 100;

const zoneField = z.string({ error: expects('a zone such as Europe/London') }).superRefine((zone, context) => {
  if (IANAZone.isValidZone(zone)) return;
  const meant = nearest(zone, Intl.supportedValuesOf('timeZone'));
  context.addIssue({ code: 'custom', message: `${zone} is not a time zone of the IANA list${meant === null ? ', such as Europe/London' : `; did you mean ${meant}?`}` });
});

const cautionField = z.union([z.number(), z.string()], { error: expects(CAUTION_WORDS) });

const airField = z.union([z.number(), z.string()], { error: expects(AIR_WORDS) }).nullish();

/** shop.yaml as a foreman writes it. A temperature without a unit is in the shop's unit. */
export const shopSchema = closedObject({
  name: z.string({ error: expects('the name of the shop') }).trim().min(1, { error: 'must not be empty' }).max(80, { error: 'must have at most 80 characters' }),
  zone: zoneField,
  hours: hoursField,
  holidays: holidaysField.nullish(),
  air: airField,
  night: airField,
  'closed-days': airField,
  unit: z.enum(['C', 'F'], { error: expects('C or F') }).default('C'),
  language: z.enum(LANGUAGES, { error: expects(`one of ${LANGUAGES.join(', ')}`) }).default('en'),
  people: peopleField,
  lamps: lampsField.default([]),
  pads: padsField.nullish(),
  rhythm: rhythmField.default(DEFAULT_RHYTHM),
  shifts: shiftsField.nullish(),
  bays: baysField.nullish(),
  'fire-watch': waitField.default(DEFAULT_FIRE_WATCH),
  'battery-caution': cautionField.nullish(),
}).transform((plain, context): Shop => {
  const refuse = (path: (string | number)[], message: string) => {
    context.addIssue({ code: 'custom', path, message });
  };
  const air = airTemperature('air', plain.air, plain.unit, context);
  const night = airTemperature('night', plain.night, plain.unit, context);
  const closedDays = airTemperature('closed-days', plain['closed-days'], plain.unit, context);
  if (air !== null && night !== null && night > air) refuse(['night'], 'must not be warmer than air: it is what the shop falls to after closing');
  const tooWarm = closedDays !== null && [air, night].some((value) => value !== null && closedDays > value);
  if (tooWarm) refuse(['closed-days'], 'must not be warmer than night or air: it is what the shop falls to when it stays closed for a whole day or longer');
  const holidays = (plain.holidays ?? []).toSorted();
  const closure = endlessClosure({ hours: plain.hours, holidays });
  if (closure !== null) refuse(['holidays', (plain.holidays ?? []).indexOf(closure.holiday)], closure.problem);
  const pads = plain.pads ?? [];
  for (const [index, pad] of pads.entries()) if (plain.lamps.includes(pad)) refuse(['pads', index], `${pad} is the name of a lamp already: give the pad another`);
  const { name, zone, hours, unit, language, lamps, rhythm } = plain;
  const people = plain.people.map((person) => ({ ...person, language: person.language ?? language }));
  const shifts = plain.shifts ?? [];
  checkShifts(shifts, people, refuse);
  return { name, zone, hours, holidays, air, night, closedDays, unit, language, people, lamps, pads, rhythm, shifts, bays: plain.bays ?? [], fireWatch: plain['fire-watch'], batteryCaution: cautionFrom(plain['battery-caution'], unit, context) };
});

function airTemperature(field: 'air' | 'night' | 'closed-days', typed: number | string | null | undefined, unit: 'C' | 'F', context: z.RefinementCtx): Celsius | null {
  if (typed === null || typed === undefined || typed === 'unknown') return null;
  return temperature({ field, typed, unit, words: AIR_WORDS, least: COLDEST_AIR, most: HOTTEST_AIR, not: 'is not the air of a shop; a unit can be written: 68 F, 20 C' }, context);
}

const cautionFrom = (typed: number | string | null | undefined, unit: 'C' | 'F', context: z.RefinementCtx): Celsius =>
  typed === null || typed === undefined ? DEFAULT_BATTERY_CAUTION : (temperature({ field: 'battery-caution', typed, unit, words: CAUTION_WORDS, least: LEAST_CAUTION, most: MOST_CAUTION, not: `must lie from ${LEAST_CAUTION} to ${MOST_CAUTION} °C; a unit can be written: 140 F, 60 C` }, context) ?? DEFAULT_BATTERY_CAUTION);

interface Typed {
  readonly field: string;
  readonly typed: number | string;
  readonly unit: 'C' | 'F';
  readonly words: string;
  readonly least: number;
  readonly most: number;
  readonly not: string;
}

/** Null, and said to the reader, where it cannot be meant. */
function temperature({ field, typed, unit, words, least, most, not }: Typed, context: z.RefinementCtx): Celsius | null {
  const found = TEMPERATURE.exec(String(typed));
  const refuse = (message: string) => {
    context.addIssue({ code: 'custom', path: [field], message });
    return null;
  };
  if (found === null) return refuse(`must be ${words}`);
  const value = Number(found[1]?.replace(',', '.'));
  const fahrenheit = (found[2] ?? unit).toUpperCase() === 'F';
  const read = fahrenheit ? celsiusFromFahrenheit(value) : celsius(value);
  return read >= least && read <= most ? read : refuse(`${value} °${fahrenheit ? 'F' : 'C'} ${not}`);
}
