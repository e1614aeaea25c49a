import type Database from 'better-sqlite3';
import type { BookTransaction } from '../clerk/ports.js';
import { postOf, type PostRow } from './posts.js';

/** Posts that asked something and are not settled: rows come and go, the posts themselves stay. */
export function openAsked(db: Database.Database): Pick<BookTransaction, 'ask' | 'asked' | 'settled'> {
  const ask = db.prepare<[number, string | null]>('INSERT INTO asked (post, job) VALUES (?, ?) ON CONFLICT (post) DO NOTHING');
  const asked = db.prepare<[string | null], PostRow>(
    'SELECT seq, key, at, due_at, to_whom, about, answer FROM asked JOIN post ON post.seq = asked.post WHERE asked.job IS ? ORDER BY seq',
  );
  const settle = db.prepare<[number]>('DELETE FROM asked WHERE post = ?');
  return {
    ask: ({ seq, about }) => {
      ask.run(seq, about.job);
    },
    asked: (job) => asked.all(job).map(postOf),
    settled: (seq) => {
      settle.run(seq);
    },
  };
}
