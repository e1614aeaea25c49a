import type { AirStep } from '../cure/air.js';
import { later, type Celsius, type Instant } from '../cure/units.js';
import { reminder } from './alarm.js';
import { waitingMilestones, type MilestoneOutlook, type Outlook } from './outlook.js';
import { foremanOf } from './people.js';
import type { Reminder } from './reminder.js';
import { forForeman, type Routing } from './route.js';

/** Of a decision: air that is colder than every row of a table the joint needs. */
export const COLD_ROUND = 4;

/** Air in which a table has no time. */
interface ColdTable {
  readonly one: MilestoneOutlook;
  readonly step: AirStep;
  /** Where the table begins. */
  readonly least: Celsius;
  /** From when on it could be known. */
  readonly since: Instant;
}

/** Null: every table has a time, or has none for another reason than the cold. */
export function coldTable(outlook: Outlook): ColdTable | null {
  const { history, cure, air } = outlook;
  if (history === null) return null;
  for (const one of waitingMilestones(outlook)) {
    const laws = cure.card.milestones.find((rule) => rule.kind === one.kind)?.laws ?? [];
    const least = laws.flatMap((law) => (law.law === 'table' ? law.rows.map((row) => row.atLeast) : [])).reduce<Celsius | null>((lowest, row) => (lowest === null || row < lowest ? row : lowest), null);
    if (least === null || one.check.dueAt !== null) continue;
    const index = air.findIndex((step, place) => (air[place + 1]?.from ?? Infinity) > history.start && step.temperature !== null && step.temperature < least);
    const step = air[index];
    if (step === undefined) continue;
    // The cold of a coming night was foreseeable with the last air that somebody read before it.
    const known = step.source === 'air reading' ? step : air.slice(0, index).findLast((before) => before.source === 'air reading');
    return { one, step, least, since: later(history.start, known?.from ?? history.start) };
  }
  return null;
}

/** Glass set in air too cold for its table gets no time however long it stands: the foreman is told, once. */
export function coldTableTold(outlook: Outlook, routing: Routing): Reminder[] {
  const cold = coldTable(outlook);
  if (cold === null || outlook.cure.raised.some((one) => one.kind === 'decision' && one.round === COLD_ROUND)) return [];
  return [forForeman(reminder(outlook, { kind: 'decision', round: COLD_ROUND, dueAt: cold.since, from: cold.since }, 0, cold.since, foremanOf(routing.shop)), routing)];
}
