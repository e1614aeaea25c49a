import Database from 'better-sqlite3';
import { existsSync } from 'node:fs';
import { z } from 'zod';
import { BookError, namedTrouble } from './book-error.js';
import { walkChain, type ChainState } from './chain.js';
import { refuseForeign, versionOf } from './migrate.js';

/** What a look at a whole book found. */
export interface BookVerdict {
  readonly ok: boolean;
  readonly version: number;
  /** What SQLite's own check of every page says; empty: nothing is wrong. */
  readonly damage: readonly string[];
  readonly chain: ChainState;
}

/** The first version of the book whose facts are linked. */
const FIRST_CHAINED = 3;

const damageSchema = z.array(z.object({ integrity_check: z.string() }));

/**
 * Looks at every page and every fact of a book and changes nothing; a clerk may go on writing in it meanwhile.
 * @throws BookError for a file that is no book of this program, or of a version that has no chain yet.
 */
export function verifyBook(file: string): BookVerdict {
  if (!existsSync(file)) throw new BookError('no-book', file, `There is no book ${file}. Name its folder in CURECLERK_DATA, or the file itself.`);
  const db = opened(file);
  try {
    refuseForeign(db, file);
    const version = versionOf(db);
    if (version < FIRST_CHAINED) throw new BookError('older-book', file, `${file} was written by an older version of this program (book version ${version}), which did not link its facts. Start this version on it once; then it can be verified.`);
    const damage = damageSchema.parse(db.pragma('integrity_check')).map((row) => row.integrity_check).filter((line) => line !== 'ok');
    // One reading of the journal, so that what is written meanwhile does not look like a break.
    const chain = db.transaction(() => walkChain(db))();
    return { ok: damage.length === 0 && chain.whole, version, damage, chain };
  } catch (error) {
    throw namedTrouble(error, file);
  } finally {
    db.close();
  }
}

function opened(file: string): Database.Database {
  try {
    return new Database(file, { readonly: true });
  } catch (error) {
    throw namedTrouble(error, file);
  }
}
