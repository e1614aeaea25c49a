import { mkdirSync } from 'node:fs';
import { BookError } from './book-error.js';

/** Makes the data folder where it does not stand yet. @throws BookError `folder-not-made`. */
export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new BookError('folder-not-made', folder, `The folder ${folder} for the book cannot be made: ${error instanceof Error ? error.message : String(error)}. Point CURECLERK_DATA to a folder this program may write to.`, error);
  }
}
