import { plus, type Instant } from '../cure/units.js';
import { sameCure } from './cure-ref.js';
import type { Outlook } from './outlook.js';
import type { Reminder } from './reminder.js';
import type { Shop } from './shop.js';

/** Something to be said about a cure, as it stands now. */
export interface Ringing {
  readonly reminder: Reminder;
  readonly outlook: Outlook;
}

/**
 * What is asked in the same message, the first one first: who takes over, once for all cures of a person; whether a lamp
 * is on, once for everything under it. What a lamp's other cures would have asked within the hour is asked along.
 */
export function oneQuestion(first: Ringing, others: readonly Ringing[], { rhythm }: Pick<Shop, 'rhythm'>, now: Instant): Ringing[] {
  const { kind } = first.reminder;
  const different = others.filter((other) => other.reminder.kind === kind && !isSameCure(first, other));
  if (kind === 'handover') return [first, ...different.filter(({ reminder }) => isSameHour(reminder, first.reminder) && reminder.ringAt <= now)];
  if (kind !== 'still-on') return [first];
  const under = different.filter((other) => isSameHeat(first.outlook, other.outlook) && other.reminder.ringAt < plus(now, rhythm.stillOn));
  // A question that two people get is asked of each of them.
  return [first, ...under.filter((other) => other.reminder.to === first.reminder.to || !under.some((same) => isSameCure(same, other) && same.reminder.to === first.reminder.to))];
}

const isSameCure = (one: Ringing, other: Ringing): boolean => one.reminder.job === other.reminder.job && sameCure(one.reminder.cure, other.reminder.cure);

const isSameHour = (one: Reminder, other: Reminder): boolean => one.to === other.to && one.step === other.step && one.dueAt === other.dueAt;

/** The same by its name, whatever jobs it is on in the book; without one by the job and the joint. */
const isSameHeat = ({ cure: one }: Outlook, { cure: other }: Outlook): boolean =>
  one.heater === other.heater && one.lamp === other.lamp && (one.lamp !== null || (one.job === other.job && one.ref.joint === other.ref.joint));
