import type Database from 'better-sqlite3';
import { z } from 'zod';
import type { BookTransaction } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import { jobNo, jointNo, personId, type JobNo } from '../repair/ids.js';
import { REMINDER_KINDS, type Reminder } from '../repair/reminder.js';
import { planDiff } from './plan-diff.js';

interface ReminderRow {
  readonly job: string;
  readonly key: string;
  readonly joint: string;
  readonly card: string;
  readonly run: number;
  readonly kind: string;
  readonly round: number;
  readonly step: number;
  readonly due_at: number;
  readonly ring_at: number;
  readonly route: string;
  readonly to_whom: string;
}

type Bound = [string, string, string, string, number, string, number, number, number, number, string, string];

const COLUMNS = 'job, key, joint, card, run, kind, round, step, due_at, ring_at, route, to_whom';
const kindSchema = z.enum(REMINDER_KINDS);
const routeSchema = z.enum(['alone', 'bundle']);

/** What stands to be said. A plan is compared with what stands, so that only the difference is written. */
export function openReminders(db: Database.Database): Pick<BookTransaction, 'replan' | 'ringing' | 'nextRing' | 'remindersOf'> {
  const ofJob = db.prepare<[string], ReminderRow>(`SELECT ${COLUMNS} FROM reminder WHERE job = ? ORDER BY key`);
  const due = db.prepare<[number, number], ReminderRow>(`SELECT ${COLUMNS} FROM reminder WHERE ring_at <= ? ORDER BY ring_at, key, job LIMIT ?`);
  const first = db.prepare<[], { ring_at: number }>('SELECT ring_at FROM reminder ORDER BY ring_at LIMIT 1');
  const put = db.prepare<Bound>(`INSERT OR REPLACE INTO reminder (${COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`);
  const remove = db.prepare<[string, string]>('DELETE FROM reminder WHERE job = ? AND key = ?');

  const remindersOf = (job: JobNo): Reminder[] => ofJob.all(job).map(reminderOf);

  return {
    remindersOf,
    replan: (job, reminders) => {
      const { gone, changed } = planDiff(job, remindersOf(job), reminders);
      for (const key of gone) remove.run(job, key);
      for (const reminder of changed) put.run(...boundOf(reminder));
    },
    ringing: (at, limit) => due.all(at, limit).map(reminderOf),
    nextRing: () => {
      const row = first.get();
      return row === undefined ? null : instant(row.ring_at);
    },
  };
}

const boundOf = (reminder: Reminder): Bound => {
  const { job, key, cure, kind, round, step, dueAt, ringAt, route, to } = reminder;
  return [job, key, cure.joint, cure.card, cure.run, kind, round, step, dueAt, ringAt, route, to];
};

const reminderOf = (row: ReminderRow): Reminder => ({
  key: row.key,
  job: jobNo(row.job),
  cure: { joint: jointNo(row.joint), card: row.card, run: row.run },
  kind: kindSchema.parse(row.kind),
  round: row.round,
  step: row.step,
  dueAt: instant(row.due_at),
  ringAt: instant(row.ring_at),
  route: routeSchema.parse(row.route),
  to: row.to_whom === 'channel' ? row.to_whom : personId(row.to_whom),
});
