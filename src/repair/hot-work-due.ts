import { plus, type Instant } from '../cure/units.js';
import { alarm, reminder, watchAlarm } from './alarm.js';
import { sameCure } from './cure-ref.js';
import { goingOn } from './hot-work.js';
import { isTold } from './hot-work-told.js';
import { isOver, type Outlook } from './outlook.js';
import { foremanAt } from './people.js';
import type { Reminder } from './reminder.js';
import type { Routing } from './route.js';
import { undecidedSmoke } from './smoke.js';

/** Rounds of alarms on a fire watch are the entry of the hot work; smoke has none of those. */
export const SMOKE_ROUND = 0;
/** What the fire watch asks first: whether the hot work is over at all. */
export const STILL_HOT_ROUND = 0;
/** Of a decision: hot work beside a cure without confirmed full strength. */
export const HOT_WORK_ROUND = 2;

/** What is said about a fire watch: harm first, then whether the hot work is over, then that the watch is. Nothing of it waits for an opening. */
export function watchReminders(outlook: Outlook, routing: Routing): Reminder[] {
  const { cure, milestones } = outlook;
  const smoke = undecidedSmoke(cure);
  if (smoke !== null) return alarm(outlook, routing, { kind: 'safety', round: SMOKE_ROUND, dueAt: smoke.at, from: smoke.at }, true);
  const banned = cure.hotWork.filter((weld) => weld.ban !== null && !weld.ended && weld.watch !== null && sameCure(weld.watch, cure.ref));
  const stops = banned.flatMap((weld) => alarm(outlook, routing, { kind: 'safety', round: weld.entry, dueAt: weld.at, from: weld.at }));
  // A STOP that nobody answered asks the same and more.
  if (cure.closed === null) return stops.length > 0 ? stops : stillHot(outlook, routing);
  if (isOver(outlook)) return stops;
  return [...stops, ...milestones.flatMap(({ check: { dueAt, round } }) => (dueAt === null ? [] : watchAlarm(outlook, routing, { kind: 'fire-watch', round, dueAt, from: dueAt })))];
}

/** Nobody said that the hot work is over, so nobody watches: asked as insistently as for any harm. */
function stillHot(outlook: Outlook, routing: Routing): Reminder[] {
  const { cure } = outlook;
  const begun = goingOn(cure).at(-1)?.at ?? cure.openedAt;
  const from = plus(begun, routing.shop.rhythm.stillOn);
  return watchAlarm(outlook, routing, { kind: 'fire-watch', round: STILL_HOT_ROUND, dueAt: from, from });
}

/** The foreman hears once, and at once, of hot work beside a cure whose full strength nobody confirmed. */
export function hotWorkTold(outlook: Outlook, { shop }: Routing): Reminder[] {
  const { cure } = outlook;
  return cure.hotWork.filter((weld) => isTold(outlook, weld) && !wasSaid(outlook, weld.at)).flatMap((weld) => {
    const to = foremanAt(shop, weld.at);
    const matter = { kind: 'decision', round: HOT_WORK_ROUND, dueAt: weld.at, from: weld.at } as const;
    return to === weld.by ? [] : [reminder(outlook, matter, 0, weld.at, to)];
  });
}

const wasSaid = ({ cure }: Outlook, at: Instant): boolean => cure.raised.some((one) => one.kind === 'decision' && one.round === HOT_WORK_ROUND && one.dueAt === at);
