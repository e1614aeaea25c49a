import { z } from 'zod';
import { closedObject, expects } from '../cure/closed-object.js';
import { minutes, type Minutes } from '../cure/units.js';
import type { Rhythm } from '../repair/shop.js';

const LONGEST = 24 * 60;
const WORDS = `minutes, more than 0 and at most ${LONGEST}`;

/** What a shop that says nothing gets. */
export const DEFAULT_RHYTHM: Rhythm = {
  openWarning: minutes(10),
  readingDue: minutes(20),
  stillOn: minutes(60),
  stageDue: minutes(10),
  repeats: [minutes(10), minutes(30)],
  foreman: minutes(50),
  putOff: minutes(10),
  backdating: minutes(120),
};

/** A wait in minutes, as the shop writes it. */
export const waitField = z.number({ error: expects(WORDS) }).gt(0, { error: `must be ${WORDS}` }).max(LONGEST, { error: `must be ${WORDS}` }).transform(minutes);
const wait = (standard: Minutes) => waitField.default(standard);

/** The shop's own waits, each with its cautious default. */
export const rhythmField = closedObject({
  'open-warning': wait(DEFAULT_RHYTHM.openWarning),
  'reading-due': wait(DEFAULT_RHYTHM.readingDue),
  'still-on': wait(DEFAULT_RHYTHM.stillOn),
  'stage-due': wait(DEFAULT_RHYTHM.stageDue),
  repeats: z.array(waitField, { error: expects('a list of minutes such as [10, 30]') }).default([...DEFAULT_RHYTHM.repeats]),
  foreman: wait(DEFAULT_RHYTHM.foreman),
  'put-off': wait(DEFAULT_RHYTHM.putOff),
  backdating: wait(DEFAULT_RHYTHM.backdating),
}).transform((plain, context): Rhythm => {
  const repeats = plain.repeats;
  const rising = repeats.every((repeat, index) => index === 0 || repeat > (repeats[index - 1] ?? 0));
  if (!rising) context.addIssue({ code: 'custom', path: ['repeats'], message: 'must rise: all are counted from the first post' });
  const last = repeats.at(-1);
  if (last !== undefined && plain.foreman <= last) context.addIssue({ code: 'custom', path: ['foreman'], message: `must be later than the last repeat (${last}): the foreman is asked after the owner of the cure` });
  return {
    openWarning: plain['open-warning'],
    readingDue: plain['reading-due'],
    stillOn: plain['still-on'],
    stageDue: plain['stage-due'],
    repeats,
    foreman: plain.foreman,
    putOff: plain['put-off'],
    backdating: plain.backdating,
  };
});
