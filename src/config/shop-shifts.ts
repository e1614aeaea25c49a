import { z } from 'zod';
import { closedObject, expects } from '../cure/closed-object.js';
import { personId } from '../repair/ids.js';
import type { Person, ShopShift } from '../repair/shop.js';
import { nearest } from './nearest.js';
import { daysOf, HOURS, minuteOfDay, END_OF_DAY } from './shop-hours.js';

const DAYS_WORDS = 'days such as mon-fri, or a list such as [mon-thu, sat]';
const HOURS_WORDS = 'hours such as 06:00-14:00; past midnight 22:00-06:00 next day';
/** Written behind hours that end on the day after the shift began. */
const NEXT_DAY = /\s+next\s+day$/i;

const daysField = z.union([z.string().transform((text) => [text]), z.array(z.string({ error: expects(DAYS_WORDS) })).min(1, { error: `must be ${DAYS_WORDS}` })], { error: expects(DAYS_WORDS) }).transform((keys, context): number[] => {
  const refuse = (message: string) => {
    context.addIssue({ code: 'custom', message });
  };
  const days: number[] = [];
  for (const key of keys) {
    const found = daysOf(key);
    if (typeof found === 'string') refuse(`${key} ${found}`);
    else if (found.some((day) => days.includes(day))) refuse(`${key} names a day that stands there already`);
    else days.push(...found);
  }
  return days.toSorted((one, other) => one - other);
});

/** A working time may run past midnight and says so; one that ends before it begins is otherwise a slip. */
const shiftHours = z.string({ error: expects(HOURS_WORDS) }).transform((text, context): Pick<ShopShift, 'begins' | 'ends'> => {
  const refuse = (message: string) => {
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  };
  const nextDay = NEXT_DAY.test(text.trim());
  const hours = text.trim().replace(NEXT_DAY, '');
  const found = HOURS.exec(hours);
  if (found === null) return refuse(`must be ${HOURS_WORDS}`);
  const begins = minuteOfDay(found[1], found[2]);
  const ends = minuteOfDay(found[3], found[4]);
  if (begins === null || ends === null || begins === END_OF_DAY) return refuse(`${text} is no time of day: write 00:00 to 24:00`);
  if (nextDay && ends >= begins) return refuse(`${text} would last a day or longer: leave out next day`);
  if (begins === ends) return refuse('begins when it ends: a shift of no length. A whole day is 00:00-24:00');
  if (ends < begins && !nextDay) return refuse(`ends before it begins. Past midnight? Write ${hours} next day`);
  return { begins, ends: nextDay ? ends + END_OF_DAY : ends };
});

const shiftField = closedObject({
  name: z.string({ error: expects('the name of the shift') }).trim().min(1, { error: 'must not be empty' }).max(40, { error: 'must have at most 40 characters' }),
  days: daysField,
  hours: shiftHours,
  people: z.array(z.string({ error: expects('an id of the people above') }).transform(personId), { error: expects('a list of ids such as [ines, tomek]') }).min(1, { error: 'must name somebody' }),
}).transform(({ name, days, hours, people }): ShopShift => ({ name, days, ...hours, people }));

/** Who works when; none: everybody works while the shop is open. */
export const shiftsField = z.array(shiftField, { error: expects('a list of shifts, each with name, days, hours and people') });

type Refuse = (path: (string | number)[], message: string) => void;

/** What only shows when the whole shop is known: each name once, each of its people on the list, and once. */
export function checkShifts(shifts: readonly ShopShift[], people: readonly Person[], refuse: Refuse): void {
  const ids = people.map((person) => person.id);
  for (const [index, shift] of shifts.entries()) {
    const same = shifts.findIndex((other) => other.name.toLowerCase() === shift.name.toLowerCase());
    if (same < index) refuse(['shifts', index, 'name'], `${shift.name} is the name of another shift already`);
    for (const [place, person] of shift.people.entries()) {
      const meant = nearest(person, ids);
      if (!ids.includes(person)) refuse(['shifts', index, 'people', place], `${person} is not one of people${meant === null ? `: ${ids.join(', ')}` : `; did you mean ${meant}?`}`);
      else if (shift.people.indexOf(person) < place) refuse(['shifts', index, 'people', place], `${person} stands in this shift already`);
    }
  }
}
