import type { BookTransaction } from '../clerk/ports.js';
import { earlier, type Instant } from '../cure/units.js';
import type { Reminder } from '../repair/reminder.js';
import type { MemoryState } from './memory-state.js';
import { planDiff } from './plan-diff.js';

export function memoryReminders(now: () => MemoryState): Pick<BookTransaction, 'replan' | 'ringing' | 'nextRing' | 'remindersOf'> {
  const all = (): Reminder[] => [...now().reminders.values()].flat();
  return {
    remindersOf: (job) => [...(now().reminders.get(job) ?? [])],
    replan: (job, reminders) => {
      planDiff(job, now().reminders.get(job) ?? [], reminders);
      now().reminders.set(job, [...reminders].sort((one, other) => compare(one.key, other.key)));
    },
    ringing: (at, limit) => all().filter((reminder) => reminder.ringAt <= at).sort(byRing).slice(0, limit),
    nextRing: () => all().reduce<Instant | null>((first, { ringAt }) => (first === null ? ringAt : earlier(first, ringAt)), null),
  };
}

const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

const byRing = (one: Reminder, other: Reminder): number =>
  one.ringAt - other.ringAt || compare(one.key, other.key) || compare(one.job, other.job);
