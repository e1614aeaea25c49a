import type { BookTransaction, DeliveryState, OutboxRow, OutboxStore } from '../clerk/ports.js';
import { earlier, instant, type Instant } from '../cure/units.js';
import { forgottenBefore, fortnightBefore } from './keeping.js';
import { EDIT_LANE, laneOf } from '../clerk/lane-of.js';
import type { MemoryState } from './memory-state.js';

type ChatRow = 'threadOf' | 'saveThread' | 'jobOfThread' | 'receive' | 'received' | 'handled' | 'profileName' | 'saveProfileName' | 'homesSince' | 'homeOpened' | 'homeGone';

const laneOfRow = (row: OutboxRow): string => laneOf(row.delivery.target);

export function memoryOutbox(now: () => MemoryState): Omit<OutboxStore, ChatRow> & Pick<BookTransaction, 'queue'> {
  const inState = (state: DeliveryState): OutboxRow[] => [...now().outbox.values()].filter((row) => row.state === state);
  const busyLanes = (): Set<string> => new Set(inState('sending').map(laneOfRow));

  const move = (key: string, from: DeliveryState, change: Partial<OutboxRow>): void => {
    const row = now().outbox.get(key);
    if (row?.state !== from) throw new Error(`Delivery ${key} is not ${from}.`);
    now().outbox.set(key, { ...row, ...change });
  };

  return {
    queue: (deliveries) => {
      for (const delivery of deliveries) {
        const lane = laneOf(delivery.target);
        const place = JSON.stringify(delivery.target);
        if (lane === EDIT_LANE) for (const row of inState('waiting')) if (laneOfRow(row) === lane && JSON.stringify(row.delivery.target) === place) now().outbox.delete(row.delivery.key);
        if (now().outbox.has(delivery.key)) continue;
        now().outbox.set(delivery.key, { delivery, state: 'waiting', attempts: 0, notBefore: instant(0) });
      }
    },
    nextWaiting: (at) => {
      const busy = busyLanes();
      const first = new Map<string, OutboxRow>();
      for (const row of inState('waiting').filter((waiting) => waiting.notBefore <= at && !busy.has(laneOfRow(waiting)))) {
        const best = first.get(laneOfRow(row));
        if (best === undefined || (row.delivery.urgent && !best.delivery.urgent)) first.set(laneOfRow(row), row);
      }
      return [...first].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, row]) => row);
    },
    unknown: () => inState('sending'),
    earliestNotBefore: () =>
      inState('waiting').reduce<Instant | null>((first, { notBefore }) => (first === null ? notBefore : earlier(first, notBefore)), null),
    claim: (key) => {
      const row = now().outbox.get(key);
      if (row !== undefined && busyLanes().has(laneOfRow(row))) throw new Error(`Delivery ${key} is not waiting alone: its lane is busy.`);
      move(key, 'waiting', { state: 'sending', attempts: (row?.attempts ?? 0) + 1 });
    },
    receiptOf: (key) => {
      const state = now().outbox.get(key)?.state;
      if (state === undefined || state === 'refused') return null;
      return now().receipts.get(key) ?? 'waiting';
    },
    sent: (key, _at, { channel, ts }) => {
      move(key, 'sending', { state: 'sent' });
      now().receipts.set(key, { channel, ts });
    },
    refused: (key) => {
      move(key, 'sending', { state: 'refused' });
    },
    retry: (key, notBefore) => {
      move(key, 'sending', { state: 'waiting', notBefore });
    },
  };
}

export function memoryChatRows(now: () => MemoryState): Pick<OutboxStore, ChatRow> {
  const jobAt = (channel: string, ts: string) => [...now().threads].find(([, place]) => place.channel === channel && place.ts === ts)?.[0] ?? null;
  return {
    threadOf: (job) => now().threads.get(job) ?? null,
    jobOfThread: jobAt,
    saveThread: (job, _at, where) => {
      const other = jobAt(where.channel, where.ts);
      if (other !== null) now().threads.delete(other);
      now().threads.set(job, where);
    },
    receive: (id, at, payload) => {
      const { inbox } = now();
      for (const [old, kept] of inbox) if (kept.payload === null && kept.at < forgottenBefore(at)) inbox.delete(old);
      if (inbox.has(id)) return false;
      inbox.set(id, { at, payload });
      return true;
    },
    received: () => [...now().inbox].flatMap(([id, { payload }]) => (payload === null ? [] : [{ id, payload }])),
    handled: (id) => {
      const kept = now().inbox.get(id);
      if (kept !== undefined) now().inbox.set(id, { ...kept, payload: null });
    },
    profileName: (chatId) => now().profiles.get(chatId) ?? null,
    saveProfileName: (chatId, name) => {
      now().profiles.set(chatId, name);
    },
    homesSince: (at) => [...now().homes].filter(([, opened]) => opened >= at).sort(([one, first], [other, second]) => first - second || (one < other ? -1 : 1)).map(([chatId]) => chatId),
    homeOpened: (chatId, at) => {
      const { homes } = now();
      for (const [old, opened] of homes) if (opened < fortnightBefore(at)) homes.delete(old);
      homes.set(chatId, at);
    },
    homeGone: (chatId) => {
      now().homes.delete(chatId);
    },
  };
}
