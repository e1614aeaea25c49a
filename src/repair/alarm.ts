import { minutes, plus, type Instant } from '../cure/units.js';
import type { PersonId } from './ids.js';
import type { Outlook } from './outlook.js';
import type { Reminder, ReminderKind } from './reminder.js';
import { alarmAudience, nextAtWork, type Routing } from './route.js';

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

/** At once to owner, foreman and everyone at work, every 5 min for 30 min, then every 15, until answered; never bundled or muted. */
export function alarm(outlook: Outlook, routing: Routing, matter: Matter, toShift = true): Reminder[] {
  return alarmAudience(outlook, matter.from, routing).filter(({ atWorkOnly }) => toShift || !atWorkOnly).flatMap(({ to, atWorkOnly }) => {
    const mine = outlook.cure.raised.filter((one) => one.kind === matter.kind && one.round === matter.round && one.to === to && one.at >= matter.from);
    const last = mine.at(-1);
    const ringAt = last === undefined ? matter.from : plus(last.at, minutes(mine.length <= 6 ? 5 : 15));
    const heard = atWorkOnly && to !== 'channel' ? nextAtWork(routing.shop, to, ringAt) : ringAt;
    return heard === null ? [] : [reminder(outlook, matter, mine.length, heard, to)];
  });
}
