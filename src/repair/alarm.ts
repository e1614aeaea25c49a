import { later, minutes, plus, type Instant } from '../cure/units.js';
import type { PersonId } from './ids.js';
import type { Raised } from './job.js';
import { nextOnShift, onShift } from './on-shift.js';
import type { Outlook } from './outlook.js';
import type { Reminder, ReminderKind } from './reminder.js';
import { alarmAudience, watchAudience, type Routing } from './route.js';
import type { Shop } from './shop.js';
import { nextOpening } from './shop-hours.js';

/** What a reminder is about; `from` tells two matters of the same kind and due time apart. */
export interface Matter {
  readonly kind: ReminderKind;
  readonly round: number;
  readonly dueAt: Instant;
  /** First time to say it. */
  readonly from: Instant;
}

/** Its key is natural, and never used twice. */
export function reminder({ cure }: Outlook, matter: Matter, step: number, ringAt: Instant, to: PersonId | 'channel'): Reminder {
  const { kind, round, dueAt, from } = matter;
  const { joint, card, run } = cure.ref;
  const key = `${cure.job}/${joint}/${card}#${run}/${kind}/r${round}/s${step}/${new Date(from).toISOString()}/${to}`;
  return { key, job: cure.job, cure: cure.ref, kind, round, step, dueAt, ringAt, route: 'alone', to };
}

/** Every 5 min for 30 min, then every 15. */
const OFTEN = { for: minutes(30), every: minutes(5), then: minutes(15) } as const;

/** At once to owner, foreman and everyone on shift, every 5 min for 30 min, then every 15, until answered; never bundled or muted. */
export function alarm(outlook: Outlook, routing: Routing, matter: Matter, everybody = false): Reminder[] {
  return alarmAudience(outlook, matter.from, routing, everybody).flatMap(({ to, atWorkOnly }) => {
    const mine = raisedAbout(outlook, matter).filter((one) => one.to === to);
    const last = mine.at(-1);
    const ringAt = last === undefined ? matter.from : plus(last.at, mine.length <= OFTEN.for / OFTEN.every ? OFTEN.every : OFTEN.then);
    const heard = atWorkOnly && to !== 'channel' ? nextAtWork(routing.shop, to, ringAt) : ringAt;
    return heard === null ? [] : [reminder(outlook, matter, mine.length, heard, to)];
  });
}

/** As insistent, to whoever watches when it is said: with every repeat to those who are there then, and never to nobody. */
export function watchAlarm(outlook: Outlook, routing: Routing, matter: Matter): Reminder[] {
  const raised = raisedAbout(outlook, matter);
  const step = raised.at(-1)?.step ?? 0;
  const said = raised.filter((one) => one.step === step);
  const [first] = said;
  if (first !== undefined) {
    const left = watchAudience(outlook, first.at, routing).filter((to) => !said.some((one) => one.to === to));
    if (left.length > 0) return left.map((to) => reminder(outlook, matter, step, first.at, to));
  }
  const begun = raised[0]?.at ?? matter.from;
  const ringAt = first === undefined ? matter.from : plus(first.at, first.at < plus(begun, OFTEN.for) ? OFTEN.every : OFTEN.then);
  const heard = routing.now === null ? ringAt : later(ringAt, routing.now);
  return watchAudience(outlook, heard, routing).map((to) => reminder(outlook, matter, first === undefined ? 0 : step + 1, ringAt, to));
}

/** Without shifts everybody is at work while the shop is open, and hears nothing of it after that. */
const nextAtWork = (shop: Shop, to: PersonId, at: Instant): Instant | null => (shop.shifts.length > 0 ? nextOnShift(shop, to, at) : onShift(shop, to, at) ? at : nextOpening(shop, at));

const raisedAbout = ({ cure }: Outlook, { kind, round, from }: Matter): Raised[] => cure.raised.filter((one) => one.kind === kind && one.round === round && one.at >= from);
