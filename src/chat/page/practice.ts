import type { Context } from 'hono';
import { Duration } from 'luxon';
import { messageId } from '../../clerk/message.js';
import { instant, minutes, type Minutes } from '../../cure/units.js';
import { ClockBody, readBody } from './body.js';
import { isoOf } from './page-json.js';
import type { PagePorts } from './page-ports.js';
import { Problem } from './problem.js';

const LONGEST = Duration.fromISO('P60D');

/** POST /api/clock: moves a standing practice clock on, by a length of time or to the next moment at which something is planned. Real time cannot be moved, and a running clock moves by itself. */
export async function advanceClock(c: Context, { clock }: PagePorts): Promise<Response> {
  if (clock.practice === null) throw new Problem(404, 'This clerk runs on real time; there is no clock to move.');
  if (!clock.practice.standing) throw new Problem(409, 'The practice clock is running; only a standing one can be moved.');
  const body = await readBody(c, ClockBody);
  if (body.advance !== undefined) clock.practice.advance(readDuration(body.advance));
  else if (!clock.practice.advanceToNext(body.until === undefined ? null : instant(Date.parse(body.until)))) throw new Problem(409, 'Nothing is planned: there is no reminder to go to.');
  return c.json({ now: isoOf(clock.now()) });
}

/** GET /api/practice: what the people of the practice shop will say, and which of it was said already. */
export function tellPracticeDay(c: Context, { practiceDay, desk }: PagePorts): Response {
  if (practiceDay === null) throw new Problem(404, 'This is no practice shop: nobody says anything by themselves.');
  return c.json({ lines: practiceDay.map(({ at, from, say }, index) => ({ key: lineKey(index), at: isoOf(at), from, text: say, said: desk.knows(messageId(`page:${lineKey(index)}`)) })) });
}

const lineKey = (index: number): string => `practice-line-${index}`;

/** Months and years are refused: they have no fixed length. */
function readDuration(text: string): Minutes {
  const duration = Duration.fromISO(text);
  const fixed = duration.isValid && duration.years === 0 && duration.quarters === 0 && duration.months === 0;
  const length = fixed ? duration.toMillis() : Number.NaN;
  if (!(length > 0 && length <= LONGEST.toMillis())) {
    throw new Problem(400, 'advance must be an ISO 8601 duration in weeks, days, hours, minutes or seconds, longer than nothing and at most P60D, such as PT45M.', 'advance');
  }
  return minutes(length / 60_000);
}
