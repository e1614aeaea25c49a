import type Database from 'better-sqlite3';
import type { OutboxStore } from '../clerk/ports.js';
import { jobNo } from '../repair/ids.js';
import { forgottenBefore, fortnightBefore } from './keeping.js';
import type { Transactions } from './transactions.js';

type ChatRows = Pick<OutboxStore, 'threadOf' | 'saveThread' | 'jobOfThread' | 'receive' | 'received' | 'handled' | 'profileName' | 'saveProfileName' | 'homesSince' | 'homeOpened' | 'homeGone'>;

/** What is kept about the remote chat: threads of jobs, payloads that came in, names of profiles, open home tabs. */
export function openChatRows(db: Database.Database, { atomically }: Transactions): ChatRows {
  return { ...openThreads(db), ...openInbox(db, atomically), ...openProfiles(db), ...openHomes(db) };
}

function openThreads(db: Database.Database): Pick<ChatRows, 'threadOf' | 'saveThread' | 'jobOfThread'> {
  const ofJob = db.prepare<[string], { channel: string; ts: string }>('SELECT channel, ts FROM thread WHERE job = ?');
  const atPlace = db.prepare<[string, string], { job: string }>('SELECT job FROM thread WHERE channel = ? AND ts = ?');
  const save = db.prepare<[string, string, string, number]>('INSERT OR REPLACE INTO thread (job, channel, ts, at) VALUES (?, ?, ?, ?)');
  return {
    threadOf: (job) => ofJob.get(job) ?? null,
    jobOfThread: (channel, ts) => {
      const row = atPlace.get(channel, ts);
      return row === undefined ? null : jobNo(row.job);
    },
    saveThread: (job, at, { channel, ts }) => {
      save.run(job, channel, ts, at);
    },
  };
}

function openInbox(db: Database.Database, atomically: Transactions['atomically']): Pick<ChatRows, 'receive' | 'received' | 'handled'> {
  const forget = db.prepare<[number]>('DELETE FROM inbox WHERE payload IS NULL AND at < ?');
  const insert = db.prepare<[string, number, string]>('INSERT INTO inbox (id, at, payload) VALUES (?, ?, ?) ON CONFLICT (id) DO NOTHING');
  const open = db.prepare<[], { id: string; payload: string }>('SELECT id, payload FROM inbox WHERE payload IS NOT NULL ORDER BY seq');
  const drop = db.prepare<[string]>('UPDATE inbox SET payload = NULL WHERE id = ?');
  return {
    receive: (id, at, payload) =>
      atomically(() => {
        forget.run(forgottenBefore(at));
        return insert.run(id, at, payload).changes === 1;
      }),
    received: () => open.all(),
    handled: (id) => {
      drop.run(id);
    },
  };
}

function openProfiles(db: Database.Database): Pick<ChatRows, 'profileName' | 'saveProfileName'> {
  const find = db.prepare<[string], { name: string }>('SELECT name FROM profile WHERE chat_id = ?');
  const save = db.prepare<[string, string, number]>('INSERT OR REPLACE INTO profile (chat_id, name, at) VALUES (?, ?, ?)');
  return {
    profileName: (chatId) => find.get(chatId)?.name ?? null,
    saveProfileName: (chatId, name, at) => {
      save.run(chatId, name, at);
    },
  };
}

function openHomes(db: Database.Database): Pick<ChatRows, 'homesSince' | 'homeOpened' | 'homeGone'> {
  const since = db.prepare<[number], { chat_id: string }>('SELECT chat_id FROM home_tab WHERE at >= ? ORDER BY at, chat_id');
  const save = db.prepare<[string, number]>('INSERT OR REPLACE INTO home_tab (chat_id, at) VALUES (?, ?)');
  const forget = db.prepare<[number]>('DELETE FROM home_tab WHERE at < ?');
  const drop = db.prepare<[string]>('DELETE FROM home_tab WHERE chat_id = ?');
  return {
    homesSince: (at) => since.all(at).map((row) => row.chat_id),
    homeOpened: (chatId, at) => {
      forget.run(fortnightBefore(at));
      save.run(chatId, at);
    },
    homeGone: (chatId) => {
      drop.run(chatId);
    },
  };
}
