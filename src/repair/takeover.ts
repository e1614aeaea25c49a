import { later, minus, minutes, plus, type Instant } from '../cure/units.js';
import { reminder } from './alarm.js';
import type { PersonId } from './ids.js';
import { nextOnShift, nextShiftEnd, onShift, type Span } from './on-shift.js';
import { isAttended, isOver, type Outlook } from './outlook.js';
import { foremanOnDuty, worksAtCars } from './people.js';
import { busyUntil } from './people-facts.js';
import type { Reminder } from './reminder.js';
import type { Routing } from './route.js';
import type { Person, Shop } from './shop.js';

/** Before the end of a shift; common practice, no source. */
const BEFORE_END = minutes(15);
/** A next shift that begins later than this after an end is none: what comes due meanwhile waits for the opening. */
const NEXT_SHIFT_WITHIN = minutes(60);
/** An end longer ago than this is asked about no more. */
const STALE_AFTER = minutes(60);
/** The end asked about last, and the one to come. */
const ENDS_LOOKED_AT = 2;

/** Who could take over from somebody whose shift ends then: the people of the next shift who work at cars. */
export function takersAt(shop: Shop, from: PersonId, end: Instant): Person[] {
  const others = shop.people.filter(({ id, role }) => id !== from && worksAtCars(role));
  const there = others.filter(({ id }) => onShift(shop, id, end));
  if (there.length > 0) return there;
  return others.filter(({ id }) => {
    const begins = nextOnShift(shop, id, end);
    return begins !== null && begins <= plus(end, NEXT_SHIFT_WITHIN);
  });
}

/**
 * Who takes over a cure that outlasts its owner's shift: asked of the owner a quarter of an hour before the end; unanswered, told to
 * the foreman on duty at the end. Nothing where nobody follows, or where it is offered already (rule R22).
 */
export function takeoverAsked(outlook: Outlook, routing: Routing): Reminder[] {
  const { shop, now } = routing;
  const { owner, raised, openedAt } = outlook.cure;
  if (shop.shifts.length === 0 || isOver(outlook)) return [];
  const before = raised.filter(({ kind }) => kind === 'handover').reduce((at, one) => later(at, minus(one.dueAt, minutes(1))), openedAt);
  let after = now === null ? before : later(before, minus(now, STALE_AFTER));
  for (let looked = 0; looked < ENDS_LOOKED_AT; looked += 1) {
    const span = nextShiftEnd(shop, owner, after);
    if (span === null) return [];
    const asked = askedAbout(span, outlook, routing);
    if (asked.length > 0) return asked;
    after = span.ends;
  }
  return [];
}

function askedAbout({ begins, ends }: Span, outlook: Outlook, { shop, people, now }: Routing): Reminder[] {
  const { owner, job, raised, openedAt } = outlook.cure;
  const offered = people.offers.some((offer) => offer.from === owner && offer.jobs.includes(job) && offer.at >= begins && offer.at <= ends);
  if (offered || isAttended(outlook.cure, shop, ends) || takersAt(shop, owner, ends).length === 0) return [];
  const matter = { kind: 'handover' as const, round: 1, dueAt: ends, from: ends };
  const wasAsked = (step: number): boolean => raised.some((one) => one.kind === 'handover' && one.step === step && one.dueAt === ends);
  const from = minus(ends, BEFORE_END);
  const free = busyUntil(people, owner, from);
  const ringAt = free === null || free >= ends ? from : free;
  // Whoever begins something in the last minutes of their shift knows that it ends.
  if (!wasAsked(0) && openedAt < from && (now === null || now < ends)) return [reminder(outlook, matter, 0, ringAt, owner)];
  const foreman = foremanOnDuty(shop, ends);
  return wasAsked(1) || foreman === null || foreman === owner ? [] : [reminder(outlook, matter, 1, ends, foreman)];
}
