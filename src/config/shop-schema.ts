import { IANAZone } from 'luxon';
import { z } from 'zod';
import { closedObject, expects } from '../cure/closed-object.js';
import { celsius, celsiusFromFahrenheit, type Celsius } from '../cure/units.js';
import type { Shop } from '../repair/shop.js';
import { nearest } from './nearest.js';
import { hoursField } from './shop-hours.js';
import { lampsField, peopleField } from './shop-people.js';
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
  air: airField,
  night: airField,
  unit: z.enum(['C', 'F'], { error: expects('C or F') }).default('C'),
  people: peopleField,
  lamps: lampsField.default([]),
  rhythm: rhythmField.default(DEFAULT_RHYTHM),
}).transform((plain, context): Shop => {
  const air = airTemperature('air', plain.air, plain.unit, context);
  const night = airTemperature('night', plain.night, plain.unit, context);
  if (air !== null && night !== null && night > air) context.addIssue({ code: 'custom', path: ['night'], message: 'must not be warmer than air: it is what the shop falls to after closing' });
  return { name: plain.name, zone: plain.zone, hours: plain.hours, air, night, unit: plain.unit, people: plain.people, lamps: plain.lamps, rhythm: plain.rhythm };
});

function airTemperature(field: 'air' | 'night', typed: number | string | null | undefined, unit: 'C' | 'F', context: z.RefinementCtx): Celsius | null {
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
