import { z } from 'zod';
import type { OutboxRow } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import { readAnswer, readTarget } from './said-schema.js';

export const OUTBOX_COLUMNS = 'key, chat, state, urgent, attempts, not_before, target, mention, answer, created_at';

export interface StoredRow {
  readonly key: string;
  readonly chat: string;
  readonly state: string;
  readonly urgent: number;
  readonly attempts: number;
  readonly not_before: number;
  readonly target: string;
  readonly mention: string | null;
  readonly answer: string;
  readonly created_at: number;
}

const chatSchema = z.literal('slack');
const stateSchema = z.enum(['waiting', 'sending', 'sent', 'refused']);

export const outboxRowOf = (row: StoredRow): OutboxRow => ({
  delivery: {
    key: row.key,
    chat: chatSchema.parse(row.chat),
    target: readTarget(row.target, `Delivery ${row.key}`),
    urgent: row.urgent === 1,
    mention: row.mention,
    answer: readAnswer(row.answer, `Delivery ${row.key}`),
    createdAt: instant(row.created_at),
  },
  state: stateSchema.parse(row.state),
  attempts: row.attempts,
  notBefore: instant(row.not_before),
});
