import type { JobNo } from '../repair/ids.js';
import type { Reminder } from '../repair/reminder.js';

export interface PlanDiff {
  /** Keys that no longer stand. */
  readonly gone: readonly string[];
  /** New ones, and those of which anything changed. */
  readonly changed: readonly Reminder[];
}

/** What must be written so that `planned` stands instead of `standing`. Throws on a plan that contradicts itself. */
export function planDiff(job: JobNo, standing: readonly Reminder[], planned: readonly Reminder[]): PlanDiff {
  const before = new Map(standing.map((reminder) => [reminder.key, reminder]));
  const after = new Set<string>();
  const changed: Reminder[] = [];
  for (const reminder of planned) {
    if (reminder.job !== job) throw new Error(`Reminder ${reminder.key} of job ${reminder.job} stands in the plan of job ${job}.`);
    if (after.has(reminder.key)) throw new Error(`Reminder ${reminder.key} stands twice in the plan of job ${job}.`);
    after.add(reminder.key);
    const old = before.get(reminder.key);
    if (old === undefined || !same(old, reminder)) changed.push(reminder);
  }
  return { gone: [...before.keys()].filter((key) => !after.has(key)), changed };
}

const same = (one: Reminder, other: Reminder): boolean =>
  one.dueAt === other.dueAt &&
  one.ringAt === other.ringAt &&
  one.to === other.to &&
  one.route === other.route &&
  one.kind === other.kind &&
  one.round === other.round &&
  one.step === other.step &&
  one.cure.joint === other.cure.joint &&
  one.cure.card === other.cure.card &&
  one.cure.run === other.cure.run;
