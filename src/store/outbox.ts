import type Database from 'better-sqlite3';
import type { BookTransaction, OutboxStore } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import { EDIT_LANE, laneOf } from '../clerk/lane-of.js';
import { OUTBOX_COLUMNS, outboxRowOf, type StoredRow } from './outbox-row.js';

/** A delivery just queued may go at once, whichever clock wrote it and whatever becomes of that clock. */
const AT_ONCE = 0;

type Outbox = Pick<BookTransaction, 'queue'> &
  Pick<OutboxStore, 'nextWaiting' | 'unknown' | 'claim' | 'sent' | 'refused' | 'retry' | 'earliestNotBefore' | 'receiptOf'>;

/** Steps through the lanes by the index, so that ten thousand waiting rows cost no more than ten. */
const FREE_LANES = `
  WITH RECURSIVE waiting (lane) AS (
    SELECT min(lane) FROM outbox WHERE state = 'waiting'
    UNION ALL
    SELECT (SELECT min(lane) FROM outbox WHERE state = 'waiting' AND lane > waiting.lane) FROM waiting WHERE waiting.lane IS NOT NULL
  )
  SELECT lane FROM waiting
  WHERE lane IS NOT NULL AND NOT EXISTS (SELECT 1 FROM outbox WHERE state = 'sending' AND outbox.lane = waiting.lane)`;

export function openOutbox(db: Database.Database): Outbox {
  const insert = db.prepare<[string, string, string, number, number, string, string | null, string, number]>(
    `INSERT INTO outbox (key, chat, lane, urgent, not_before, target, mention, answer, created_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (key) DO NOTHING`,
  );
  const overtake = db.prepare<[string, string]>("DELETE FROM outbox WHERE state = 'waiting' AND lane = ? AND target = ?");
  const receipt = db.prepare<[string], { state: string; channel: string | null; ts: string | null }>('SELECT state, channel, ts FROM outbox WHERE key = ?');
  const lanes = db.prepare<[], { lane: string }>(FREE_LANES);
  const firstOf = db.prepare<[string, number], StoredRow>(
    `SELECT ${OUTBOX_COLUMNS} FROM outbox WHERE state = 'waiting' AND lane = ? AND not_before <= ? ORDER BY urgent DESC, seq LIMIT 1`,
  );
  // Left to itself SQLite would walk through everything ever sent.
  const sending = db.prepare<[], StoredRow>(`SELECT ${OUTBOX_COLUMNS} FROM outbox INDEXED BY outbox_one_sending_per_lane WHERE state = 'sending' ORDER BY seq`);
  const earliest = db.prepare<[], { at: number | null }>("SELECT min(not_before) AS at FROM outbox WHERE state = 'waiting'");
  const claim = db.prepare<[number, string]>("UPDATE outbox SET state = 'sending', attempts = attempts + 1, claimed_at = ? WHERE key = ? AND state = 'waiting'");
  const sent = db.prepare<[number, string, string, string]>("UPDATE outbox SET state = 'sent', ended_at = ?, channel = ?, ts = ?, reason = NULL WHERE key = ? AND state = 'sending'");
  const refused = db.prepare<[number, string, string]>("UPDATE outbox SET state = 'refused', ended_at = ?, reason = ? WHERE key = ? AND state = 'sending'");
  const retry = db.prepare<[number, string, string]>("UPDATE outbox SET state = 'waiting', not_before = ?, reason = ? WHERE key = ? AND state = 'sending'");

  return {
    queue: (deliveries) => {
      for (const { key, chat, target, urgent, mention, answer, createdAt } of deliveries) {
        const lane = laneOf(target);
        if (lane === EDIT_LANE) overtake.run(lane, JSON.stringify(target));
        insert.run(key, chat, lane, urgent ? 1 : 0, AT_ONCE, JSON.stringify(target), mention, JSON.stringify(answer), createdAt);
      }
    },
    nextWaiting: (now) => lanes.all().flatMap(({ lane }) => firstOf.all(lane, now)).map(outboxRowOf),
    receiptOf: (key) => {
      const row = receipt.get(key);
      if (row === undefined || row.state === 'refused') return null;
      return row.channel === null || row.ts === null ? 'waiting' : { channel: row.channel, ts: row.ts };
    },
    unknown: () => sending.all().map(outboxRowOf),
    earliestNotBefore: () => {
      const at = earliest.get()?.at ?? null;
      return at === null ? null : instant(at);
    },
    claim: (key, at) => {
      moved(claim.run(at, key), key, 'waiting');
    },
    sent: (key, at, { channel, ts }) => {
      moved(sent.run(at, channel, ts, key), key, 'sending');
    },
    refused: (key, at, reason) => {
      moved(refused.run(at, reason, key), key, 'sending');
    },
    retry: (key, notBefore, reason) => {
      moved(retry.run(notBefore, reason, key), key, 'sending');
    },
  };
}

/** A step that found its row in another state has been done by somebody else, or is a defect; both must be seen. */
function moved(result: Database.RunResult, key: string, expected: 'waiting' | 'sending'): void {
  if (result.changes !== 1) throw new Error(`Delivery ${key} is not ${expected}.`);
}
