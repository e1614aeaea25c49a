import type Database from 'better-sqlite3';
import type { BookTransaction } from '../clerk/ports.js';
import { forgottenBefore } from './keeping.js';
import { readAnswer } from './said-schema.js';

/** Which messages were handled and what was answered, so that the same message twice is one (rule R18). */
export function openSeen(db: Database.Database): Pick<BookTransaction, 'seen' | 'markSeen'> {
  const find = db.prepare<[string], { reply: string; answer: string }>('SELECT reply, answer FROM seen WHERE message = ?');
  const insert = db.prepare<[string, number, string, string]>('INSERT INTO seen (message, at, reply, answer) VALUES (?, ?, ?, ?)');
  const forget = db.prepare<[number]>('DELETE FROM seen WHERE at < ?');
  return {
    seen: (id) => {
      const row = find.get(id);
      return row === undefined ? null : { replyId: row.reply, answer: readAnswer(row.answer, `The answer to message ${id}`) };
    },
    markSeen: (id, at, { replyId, answer }) => {
      forget.run(forgottenBefore(at));
      insert.run(id, at, replyId, JSON.stringify(answer));
    },
  };
}
