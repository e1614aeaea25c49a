import { memoryBook } from '../../src/store/memory-book.js';
import type { Book } from '../../src/store/book.js';
import { openTempBook } from '../support/temp-book.js';

/** Every implementation of the book's ports; a suite that runs over one runs over all. */
export const EVERY_BOOK: readonly { readonly name: string; readonly open: () => Book }[] = [
  { name: 'SQLite book', open: () => openTempBook() },
  { name: 'in-memory book', open: memoryBook },
];
