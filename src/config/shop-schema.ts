import { IANAZone } from 'luxon';
import { z } from 'zod';
import { closedObject, expects } from '../cure/closed-object.js';
import { celsius, celsiusFromFahrenheit, type Celsius } from '../cure/units.js';
import type { Shop } from '../repair/shop.js';
import { nearest } from './nearest.js';
import { endlessClosure, holidaysField } from './shop-holidays.js';
import { hoursField } from './shop-hours.js';
import { lampsField, padsField, peopleField } from './shop-people.js';
import { DEFAULT_RHYTHM, rhythmField } from './shop-rhythm.js';

const TEMPERATURE = /^(-?\d+(?:[.,]\d+)?)\s*°?\s*([CF])?$/i;
const AIR_WORDS = 'a temperature such as 20 or 68 F, or unknown';
/** Coldest and hottest air a shop can be meant to have, °C; outside it is a typing error or the other unit. */
const COLDEST_AIR = -30;
const HOTTEST_AIR = 50;

const zoneField = z.string({ error: expects('a zone such as Europe/London') }).superRefine((zone, context) => {
  if (IANAZone.isValidZone(zone)) return;
  const meant = nearest(zone, Intl.supportedValuesOf('timeZone'));
  context.addIssue({ code: 'custom', message: `${zone} is not a time zone of the IANA list${meant === null ? ', such as Europe/London' : `; did you mean ${meant}?`}` });
});

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
  people: peopleField,
  lamps: lampsField.default([]),
  pads: padsField.nullish(),
  rhythm: rhythmField.default(DEFAULT_RHYTHM),
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
  const { name, zone, hours, unit, people, lamps, rhythm } = plain;
  return { name, zone, hours, holidays, air, night, closedDays, unit, people, lamps, pads, rhythm };
});

function airTemperature(field: 'air' | 'night' | 'closed-days', typed: number | string | null | undefined, unit: 'C' | 'F', context: z.RefinementCtx): Celsius | null {
  if (typed === null || typed === undefined || typed === 'unknown') return null;
  const found = TEMPERATURE.exec(String(typed));
  const refuse = (message: string) => {
    context.addIssue({ code: 'custom', path: [field], message });
    return null;
  };
  if (found === null) return refuse(`must be ${AIR_WORDS}`);
  const value = Number(found[1]?.replace(',', '.'));
  const fahrenheit = (found[2] ?? unit).toUpperCase() === 'F';
  const read = fahrenheit ? celsiusFromFahrenheit(value) : celsius(value);
  if (read >= COLDEST_AIR && read <= HOTTEST_AIR) return read;
  return refuse(`${value} °${fahrenheit ? 'F' : 'C'} is not the air of a shop; a unit can be written: 68 F, 20 C`);
}
