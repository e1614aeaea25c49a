import Database from 'better-sqlite3';
import { existsSync } from 'node:fs';
import { mkdir, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { BookError, namedTrouble } from './book-error.js';
import { BOOK_FILE } from './open.js';
import { verifyBook, type BookVerdict } from './verify.js';

/**
 * Copies the book of `folder` into the new file `to`, while a clerk may go on writing in it, and verifies the copy. The
 * copy appears under its name only when it is whole.
 * @throws BookError when there is no book, or `to` stands already, or cannot be written.
 */
export async function backUp(folder: string, to: string): Promise<BookVerdict> {
  const file = join(folder, BOOK_FILE);
  if (!existsSync(file)) throw new BookError('no-book', file, `There is no book in ${folder}. Name its folder in CURECLERK_DATA.`);
  if (existsSync(to)) throw new BookError('copy-stands', to, `${to} stands already and was left as it is. Name another file.`);
  const half = `${to}.half`;
  try {
    await mkdir(dirname(to), { recursive: true });
    const db = new Database(file, { readonly: true });
    try {
      await db.backup(half);
    } finally {
      db.close();
    }
    const verdict = verifyBook(half);
    await rename(half, to);
    return verdict;
  } catch (error) {
    await rm(half, { force: true });
    throw namedTrouble(error, to);
  }
}
