import { migration0001 } from './0001-book.js';
import { migration0002 } from './0002-edits.js';
import { migration0003 } from './0003-chain.js';
import { migration0004 } from './0004-replies.js';
import { migration0005 } from './0005-homes.js';
import { migration0006 } from './0006-offers.js';
import type { Migration } from './migration.js';

/** In order; new ones are appended. */
export const MIGRATIONS: readonly Migration[] = [migration0001, migration0002, migration0003, migration0004, migration0005, migration0006];
