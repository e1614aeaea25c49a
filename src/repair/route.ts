import { later, minutes, minutesBetween, plus, type Instant } from '../cure/units.js';
import type { PersonId } from './ids.js';
import type { Raised } from './job.js';
import { nextOnShift, onShift, allOnShift } from './on-shift.js';
import { attendantAt, isAttended, type Outlook } from './outlook.js';
import { foremanAt, foremanOnDuty } from './people.js';
import { busyUntil, openOffer, type PeopleFacts } from './people-facts.js';
import type { Reminder } from './reminder.js';
import type { Shop } from './shop.js';
import { isOpen, nextOpening } from './shop-hours.js';

/** Everything that decides who hears of something, and when. */
export interface Routing {
  readonly shop: Shop;
  readonly people: PeopleFacts;
  /** The moment of planning, so that what is overdue is judged by it; null: by its own time. */
  readonly now: Instant | null;
}

/** Whom something is for in the first place. */
export type Meant = 'owner' | 'foreman';

type Person = PersonId | 'channel';

/** So often a busy person hands on to the next, who is busy too. */
const MOST_TURNS = 8;

/**
 * What can wait: to the owner on shift; at the end of a shift to giver and taker of a handover that nobody has accepted
 * yet (rule R22); else to the foreman on duty; else it waits for the opening, or for the next shift of one of them.
 * Somebody busy hears it when that ends. Without shifts: to whom it is for, in opening hours.
 */
export function routed(one: Reminder, meant: Meant, outlook: Outlook, routing: Routing): Reminder[] {
  const { shop } = routing;
  if (shop.shifts.length === 0) return [inShopHours(whenFree(one, routing), outlook, routing)];
  let at = heardAt(one.ringAt, routing);
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const audience = audienceAt(outlook, meant, at, routing);
    if (audience.length === 0) {
      const coming = whenSomebodyComes(one, meant, outlook, at, routing);
      const until = coming.route === 'alone' ? busyUntil(routing.people, coming.to, coming.ringAt) : null;
      if (until === null) return [coming];
      at = until;
      continue;
    }
    const free = audience.map((to) => busyUntil(routing.people, to, at));
    const someone = free.some((until) => until === null);
    if (someone || audience.length > 1) return audience.map((to, index) => ({ ...addressed(one, to), ringAt: free[index] ?? (turn === 0 ? one.ringAt : at) }));
    at = free[0] ?? at;
  }
  return [whenSomebodyComes(one, meant, outlook, at, routing)];
}

/** Decisions are heard at once, by the foreman on duty or else the first on the list; busy hands come first. */
export const forForeman = (one: Reminder, routing: Routing): Reminder => whenFree(addressed(one, foremanAt(routing.shop, heardAt(one.ringAt, routing))), routing);

/** Who hears of an open limit, which waits for nobody: the owner on shift, else the foreman and everyone at work. */
export function limitAudience({ cure }: Outlook, at: Instant, { shop }: Routing): Person[] {
  if (shop.shifts.length === 0 || onShift(shop, cure.owner, at)) return [cure.owner];
  return [...new Set<Person>([cure.owner, foremanAt(shop, at), ...allOnShift(shop, at)])];
}

/** Who hears of harm, and from when on: owner and foreman at once, everybody else while they are at work; `everybody` also where no shifts say who that is. */
export function alarmAudience({ cure }: Outlook, at: Instant, { shop }: Routing, everybody = false): { readonly to: Person; readonly atWorkOnly: boolean }[] {
  const first: Person[] = [...new Set<Person>([cure.owner, foremanAt(shop, at)])];
  const others = new Set(everybody || shop.shifts.length === 0 ? shop.people.map(({ id }) => id) : shop.shifts.flatMap((shift) => shift.people));
  return [...first.map((to) => ({ to, atWorkOnly: false })), ...[...others].filter((to) => !first.includes(to)).map((to) => ({ to, atWorkOnly: true }))];
}

/** Who watches for fire: who said that they stay and the owner on shift, else who is to take over, else everybody at work; and the foreman always. Where nobody is, the owner. */
export function watchAudience({ cure }: Outlook, at: Instant, { shop, people }: Routing): Person[] {
  const atWork = (to: PersonId | null): PersonId[] => (to !== null && (shop.shifts.length === 0 || onShift(shop, to, at)) ? [to] : []);
  const stays = attendantAt(cure, shop, at);
  // Without shifts nobody knows whether the owner is still there when somebody else says that they stay.
  const named = stays === null ? atWork(cure.owner) : [stays, ...(shop.shifts.length === 0 ? [] : atWork(cure.owner))];
  const ways = [named, atWork(openOffer(people, cure.job, cure.owner, at)?.to ?? null), allOnShift(shop, at), [cure.owner]];
  return [...new Set<Person>([...(ways.find((there) => there.length > 0) ?? []), foremanAt(shop, at)])];
}

/** The last repeat that two had to hear and only one has: still to be said to the other. The foreman's own step, the last, is for one. */
export function halfSaid(raised: readonly Raised[], foremanStep: number, outlook: Outlook, routing: Routing): Raised | null {
  const last = raised.at(-1);
  if (last === undefined || last.step >= foremanStep) return null;
  const audience = audienceAt(outlook, 'owner', last.at, routing);
  if (audience.length < 2 || !audience.some((to) => to === last.to)) return null;
  return audience.every((to) => raised.some((one) => one.step === last.step && one.to === to)) ? null : last;
}

function audienceAt(outlook: Outlook, meant: Meant, at: Instant, { shop, people }: Routing): PersonId[] {
  const { owner, job } = outlook.cure;
  if (shop.shifts.length === 0) return [owner];
  if (meant === 'owner') {
    if (onShift(shop, owner, at) || isAttended(outlook.cure, shop, at)) return [owner];
    const taker = openOffer(people, job, owner, at)?.to ?? null;
    if (taker !== null && onShift(shop, taker, at)) return [owner, taker];
  }
  const foreman = foremanOnDuty(shop, at);
  return foreman === null ? [] : [foreman];
}

/** Nobody is there: the opening bundle, or the shift of whoever it is for where that begins before. */
function whenSomebodyComes(one: Reminder, meant: Meant, outlook: Outlook, at: Instant, { shop }: Routing): Reminder {
  const foremen = shop.people.filter((person) => person.role === 'foreman').map((person) => person.id);
  const awaited = meant === 'owner' ? [outlook.cure.owner, ...foremen] : foremen;
  const shifts = awaited.flatMap((to) => {
    const begins = nextOnShift(shop, to, at);
    return begins === null ? [] : [{ to, begins }];
  });
  const first = shifts.reduce<(typeof shifts)[number] | null>((best, other) => (best === null || other.begins < best.begins ? other : best), null);
  const opening = nextOpening(shop, at);
  // The foreman's own step is no line in a list where the foreman comes as the shop opens.
  const comesInTime = first !== null && (opening === null || first.begins < opening || (meant === 'foreman' && first.begins === opening));
  if (comesInTime) return { ...addressed(one, first.to), ringAt: first.begins };
  return opening === null ? one : { ...one, ringAt: opening, route: 'bundle' };
}

/** Outside shop hours everything that can wait waits for the opening (rule R12), unless somebody stays. */
function inShopHours(one: Reminder, { cure }: Outlook, routing: Routing): Reminder {
  const { shop } = routing;
  const heard = heardAt(one.ringAt, routing);
  const opening = isOpen(shop, heard) || isAttended(cure, shop, heard) ? null : nextOpening(shop, heard);
  return opening === null ? one : { ...one, ringAt: opening, route: 'bundle' };
}

function whenFree(one: Reminder, routing: Routing): Reminder {
  const until = busyUntil(routing.people, one.to, heardAt(one.ringAt, routing));
  return until === null ? one : { ...one, ringAt: until };
}

const heardAt = (ringAt: Instant, { now }: Routing): Instant => (now === null ? ringAt : later(ringAt, now));

/** When the foreman hears of a check at the latest, however busy its owner is; null: nobody's being busy is in the way. */
export function escalation(from: Instant, first: Instant | null, owner: PersonId, { shop, people }: Routing): Instant | null {
  // A first post that came late for another reason (bot down, night) shifts everything after it.
  const meant = busyUntil(people, owner, from) ?? from;
  const begins = first === null || first <= meant ? from : plus(from, minutes(minutesBetween(meant, first)));
  const ends = plus(begins, shop.rhythm.foreman);
  return people.busy.some((one) => one.person === owner && one.from < ends && one.until > begins) ? ends : null;
}

/** The same reminder for somebody else; its key names them. */
const addressed = (one: Reminder, to: Person): Reminder => ({ ...one, to, key: `${one.key.slice(0, one.key.length - one.to.length)}${to}` });
