import { join } from 'node:path';
import { backUp } from './store/backup.js';
import { BOOK_FILE } from './store/open.js';
import { verifyBook, type BookVerdict } from './store/verify.js';

/** What is said at the screen, and whether all is well. */
export interface Care {
  readonly ok: boolean;
  readonly lines: readonly string[];
}

/** `verify`: the book of the data folder, or the file that is named. */
export function verifyAt(data: string, named: string | null): Care {
  const file = named ?? join(data, BOOK_FILE);
  return said(file, verifyBook(file));
}

/** `backup`: into the file that is named, or into a new one beside the book, called by the moment. */
export async function backUpAt(data: string, named: string | null, now: Date): Promise<Care> {
  const to = named ?? join(data, 'copies', `book-${now.toISOString().slice(0, 19).replaceAll(':', '-')}Z.sqlite`);
  const { ok, lines } = said(to, await backUp(data, to));
  return { ok, lines: [`Copied to ${to}.`, ...lines] };
}

function said(file: string, { ok, version, damage, chain }: BookVerdict): Care {
  const pages = damage.length === 0 ? 'Every page is whole.' : `Damaged pages: ${damage.slice(0, 5).join('; ')}`;
  const facts = chain.whole
    ? `${chain.facts} facts, each linked to the one before. Last link ${chain.last}.`
    : `Fact ${chain.brokenAt} ${chain.why === 'missing' ? 'is missing' : 'is not as it was written'}: the ${chain.facts} before it are whole.`;
  return { ok, lines: [`${file}: book version ${version}.`, pages, facts, ok ? 'Nothing is wrong.' : 'This book was changed from outside, or is damaged. Keep the file, and go back to the latest copy that verifies.'] };
}
