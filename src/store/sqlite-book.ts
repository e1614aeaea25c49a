import type Database from 'better-sqlite3';
import type { BookTransaction } from '../clerk/ports.js';
import type { Book } from './book.js';
import { openAsked } from './asked.js';
import { openAskedReplies } from './asked-replies.js';
import { openChatRows } from './chat-rows.js';
import { openGuests } from './guests.js';
import { openJournal } from './journal.js';
import { openLastMoment } from './last-moment.js';
import { openOffers } from './offers.js';
import { openOpenJobs } from './open-jobs.js';
import { openOutbox } from './outbox.js';
import { openPosts } from './posts.js';
import { openReminders } from './reminders.js';
import { openSeen } from './seen.js';
import { openSheets } from './sheets.js';
import { openTransactions } from './transactions.js';

/** The book over an open, migrated file; all statements are prepared here, once. */
export function sqliteBook(db: Database.Database): Book {
  const transactions = openTransactions(db);
  const { begin, ...journal } = openJournal(db);
  const { post, postsTo, ...posts } = openPosts(db);
  const { queue, ...outbox } = openOutbox(db);
  const book: BookTransaction = { ...journal, ...openReminders(db), ...openSeen(db), ...openOpenJobs(db), ...openGuests(db), post, postsTo, ...openAsked(db), ...openAskedReplies(db), ...openOffers(db), ...openSheets(db), queue };

  return {
    transact: (work) =>
      transactions.alone(() => {
        begin();
        return work(book);
      }),
    ...posts,
    ...openLastMoment(db),
    ...outbox,
    ...openChatRows(db, transactions),
    close: () => {
      db.close();
    },
  };
}
