import type { DeskState } from './desk-ports.js';
import type { BookTransaction, NewPost } from './ports.js';

/** Something the bot says by itself: into the book of posts, and on its way to the chats, in the caller's transaction. */
export function publish(tx: BookTransaction, { addressing }: DeskState, post: NewPost): void {
  const stored = tx.post(post);
  if (stored.answer.buttons.length > 0) tx.ask(stored);
  tx.queue(addressing.post(stored, stored.about));
}
