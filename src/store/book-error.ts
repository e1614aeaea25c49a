import Database from 'better-sqlite3';

export type BookErrorCode = 'folder-not-made' | 'not-opened' | 'not-a-book' | 'newer-book' | 'older-book' | 'no-book' | 'copy-stands' | 'held-elsewhere';

/** The book's file cannot be used. The message names the file, what is wrong and what to do. */
export class BookError extends Error {
  override readonly name = 'BookError';
  readonly code: BookErrorCode;
  readonly file: string;

  constructor(code: BookErrorCode, file: string, message: string, cause?: unknown) {
    super(message, cause === undefined ? undefined : { cause });
    this.code = code;
    this.file = file;
  }
}

/** SQLite's trouble with a file, in words; anything else as it came. */
export function namedTrouble(error: unknown, file: string): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  return new BookError('not-opened', file, `The file ${file} cannot be opened: ${error.message} (${error.code}). ${adviceFor(error.code)}`, error);
}

function adviceFor(code: string): string {
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT')) return 'Put back the latest copy of the file, or move this one away.';
  if (code.startsWith('SQLITE_BUSY')) return 'Another program holds the file; stop it first.';
  return 'Check that this program may read and write the file and its folder, and that the disk has room.';
}
