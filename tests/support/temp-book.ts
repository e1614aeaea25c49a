import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Book } from '../../src/store/book.js';
import { openBook } from '../../src/store/open.js';

/** An empty folder that is gone when the test is over. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'cureclerk-book-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
}

/** A book of its own for one test; closed and removed when the test is over. */
export function openTempBook(folder: string = tempFolder()): Book {
  const book = openBook(folder);
  onTestFinished(() => {
    book.close();
  });
  return book;
}
