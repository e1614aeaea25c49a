import type Database from 'better-sqlite3';
import { z } from 'zod';
import type { BookTransaction } from '../clerk/ports.js';
import { fortnightBefore } from './keeping.js';
import { readJson } from './read-json.js';
import { readAnswer } from './said-schema.js';

const lines = z.array(z.string()).readonly();

/** Which buttons stood under an answer or a post; the answers' rows come and go, the posts stay. */
export function openOffers(db: Database.Database): Pick<BookTransaction, 'offer' | 'offeredUnder'> {
  const forget = db.prepare<[number]>('DELETE FROM offer WHERE at < ?');
  const insert = db.prepare<[string, number, string]>('INSERT OR REPLACE INTO offer (reply, at, lines) VALUES (?, ?, ?)');
  const ofReply = db.prepare<[string], { lines: string }>('SELECT lines FROM offer WHERE reply = ?');
  const ofPost = db.prepare<[string], { answer: string }>('SELECT answer FROM post WHERE key = ?');
  return {
    offer: (reply, offered, at) => {
      forget.run(fortnightBefore(at));
      insert.run(reply, at, JSON.stringify(offered));
    },
    offeredUnder: (reply) => {
      const row = ofReply.get(reply);
      if (row !== undefined) return readJson(lines, row.lines, `What stood under ${reply}`);
      const posts = ofPost.all(reply);
      return posts.length === 0 ? null : posts.flatMap(({ answer }) => readAnswer(answer, `Post ${reply}`).buttons.map(({ line }) => line));
    },
  };
}
