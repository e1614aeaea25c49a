import { writeSync } from 'node:fs';
import { messageId } from '../../src/clerk/message.js';
import { instant } from '../../src/cure/units.js';
import { FIRST_JOINT, jobNo, personId } from '../../src/repair/ids.js';
import { openBook } from '../../src/store/open.js';

/**
 * Writes one command after another and prints the number of each once it is stored.
 * Arguments: folder, facts per command, and after how many facts of the first command to die (0: never).
 */
const [folder = '', factsText = '', dieText = ''] = process.argv.slice(1);
const facts = Number(factsText);
const dieAfter = Number(dieText);
const job = jobNo('501');
const at = instant(0);
const cure = { joint: FIRST_JOINT, card: 'P2', run: 1 };
const answer = { tone: 'plain', lines: [], buttons: [] } as const;
const book = openBook(folder);

for (;;) {
  const stored = book.transact((tx) => {
    const entry = tx.nextEntry();
    for (let n = 1; n <= facts; n += 1) {
      tx.append([{ entry, job, happenedAt: at, enteredAt: at, by: personId('ana'), fact: { type: 'closed', cure } }]);
      if (n === dieAfter) process.kill(process.pid, 'SIGKILL');
    }
    const reminder = { key: `k${entry}`, job, cure, kind: 'handling', round: entry, step: 0, dueAt: at, ringAt: at, route: 'alone', to: 'channel' } as const;
    tx.replan(job, [reminder]);
    tx.post({ key: reminder.key, at, dueAt: at, to: 'channel', about: { job, joint: null, card: null, kind: 'handling' }, answer });
    tx.queue([{ key: reminder.key, chat: 'slack', target: { kind: 'home-channel' }, urgent: false, mention: null, answer, createdAt: at }]);
    tx.markSeen(messageId(reminder.key), at, { replyId: reminder.key, answer });
    return entry;
  });
  writeSync(1, `${stored}\n`);
}
