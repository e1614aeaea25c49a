import type Database from 'better-sqlite3';
import type { Post } from '../clerk/message.js';
import type { BookStore, BookTransaction } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import { personId } from '../repair/ids.js';
import { readAbout, readAnswer } from './said-schema.js';

interface PostRow {
  readonly seq: number;
  readonly key: string;
  readonly at: number;
  readonly due_at: number;
  readonly to_whom: string;
  readonly about: string;
  readonly answer: string;
}

/** What the clerk said by itself, numbered in the order it was said. */
export function openPosts(db: Database.Database): Pick<BookTransaction, 'post'> & Pick<BookStore, 'postsAfter'> {
  const insert = db.prepare<[string, number, number, string, string, string]>(
    'INSERT INTO post (key, at, due_at, to_whom, about, answer) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const after = db.prepare<[number, number], PostRow>(
    'SELECT seq, key, at, due_at, to_whom, about, answer FROM post WHERE seq > ? ORDER BY seq LIMIT ?',
  );
  return {
    post: (post) => {
      const { key, at, dueAt, to, about, answer } = post;
      const { lastInsertRowid } = insert.run(key, at, dueAt, to, JSON.stringify(about), JSON.stringify(answer));
      return { ...post, seq: Number(lastInsertRowid) };
    },
    postsAfter: (seq, limit) => after.all(seq, limit).map(postOf),
  };
}

const postOf = (row: PostRow): Post => ({
  seq: row.seq,
  key: row.key,
  at: instant(row.at),
  dueAt: instant(row.due_at),
  to: row.to_whom === 'channel' ? row.to_whom : personId(row.to_whom),
  about: readAbout(row.about, `Post ${row.seq}`),
  answer: readAnswer(row.answer, `Post ${row.seq}`),
});
