import type Database from 'better-sqlite3';
import type { Post, PostKind } from '../clerk/message.js';
import type { BookStore, BookTransaction } from '../clerk/ports.js';
import { instant, type Instant } from '../cure/units.js';
import { personId } from '../repair/ids.js';
import { readAbout, readAnswer } from './said-schema.js';

export interface PostRow {
  readonly seq: number;
  readonly key: string;
  readonly at: number;
  readonly due_at: number;
  readonly to_whom: string;
  readonly about: string;
  readonly answer: string;
}

/** What the clerk said by itself, numbered in the order it was said. */
export function openPosts(db: Database.Database): Pick<BookTransaction, 'post' | 'postsTo'> & Pick<BookStore, 'postsAfter'> {
  const insert = db.prepare<[string, number, number, string, string, string]>(
    'INSERT INTO post (key, at, due_at, to_whom, about, answer) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const after = db.prepare<[number, number], PostRow>(
    'SELECT seq, key, at, due_at, to_whom, about, answer FROM post WHERE seq > ? ORDER BY seq LIMIT ?',
  );
  const newest = db.prepare<[], PostRow>('SELECT seq, key, at, due_at, to_whom, about, answer FROM post ORDER BY seq DESC');
  return {
    // Backwards from the newest, as far as asked: a book of years is not searched for the last hour.
    postsTo: (person, after) => {
      const found: { at: Instant; kind: PostKind }[] = [];
      for (const row of newest.iterate()) {
        if (row.at <= after) break;
        if (row.to_whom === person) found.unshift({ at: instant(row.at), kind: readAbout(row.about, `Post ${row.seq}`).kind });
      }
      return found;
    },
    post: (post) => {
      const { key, at, dueAt, to, about, answer } = post;
      const { lastInsertRowid } = insert.run(key, at, dueAt, to, JSON.stringify(about), JSON.stringify(answer));
      return { ...post, seq: Number(lastInsertRowid) };
    },
    postsAfter: (seq, limit) => after.all(seq, limit).map(postOf),
  };
}

export const postOf = (row: PostRow): Post => ({
  seq: row.seq,
  key: row.key,
  at: instant(row.at),
  dueAt: instant(row.due_at),
  to: row.to_whom === 'channel' ? row.to_whom : personId(row.to_whom),
  about: readAbout(row.about, `Post ${row.seq}`),
  answer: readAnswer(row.answer, `Post ${row.seq}`),
});
