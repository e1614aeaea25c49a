import type Database from 'better-sqlite3';
import type { AskedReply, BookTransaction } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import { jobNo, personId } from '../repair/ids.js';
import { fortnightBefore } from './keeping.js';
import { readAnswer } from './said-schema.js';

interface Row {
  readonly delivery: string;
  readonly job: string | null;
  readonly reader: string;
  readonly at: number;
  readonly answer: string;
}

/** Answers that offered something: rows come and go. */
export function openAskedReplies(db: Database.Database): Pick<BookTransaction, 'askInReply' | 'askedInReplies' | 'replySettled'> {
  const forget = db.prepare<[number]>('DELETE FROM asked_reply WHERE at < ?');
  const insert = db.prepare<[string, string | null, string, number, string]>('INSERT INTO asked_reply (delivery, job, reader, at, answer) VALUES (?, ?, ?, ?, ?) ON CONFLICT (delivery) DO NOTHING');
  const newest = db.prepare<[string | null, number], Row>('SELECT delivery, job, reader, at, answer FROM asked_reply WHERE job IS ? ORDER BY at DESC, delivery DESC LIMIT ?');
  const settle = db.prepare<[string]>('DELETE FROM asked_reply WHERE delivery = ?');
  return {
    askInReply: ({ key, job, reader, at, answer }) => {
      forget.run(fortnightBefore(at));
      insert.run(key, job, reader, at, JSON.stringify(answer));
    },
    askedInReplies: (job, limit) => newest.all(job, limit).map(replyOf).reverse(),
    replySettled: (key) => {
      settle.run(key);
    },
  };
}

const replyOf = ({ delivery, job, reader, at, answer }: Row): AskedReply => ({
  key: delivery,
  job: job === null ? null : jobNo(job),
  reader: personId(reader),
  at: instant(at),
  answer: readAnswer(answer, `The answer ${delivery}`),
});
