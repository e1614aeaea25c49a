import { z } from 'zod';
import type { JobNo } from '../../repair/ids.js';

const EVENT_TYPE = 'cureclerk_delivery';

const markSchema = z.object({ event_type: z.literal(EVENT_TYPE), event_payload: z.object({ key: z.string() }) });

/** Every message carries the key of its delivery, unseen by readers, so that it can be looked up after a lost answer. */
export function markOf(key: string): z.infer<typeof markSchema> {
  return { event_type: EVENT_TYPE, event_payload: { key } };
}

/** The key a message of the platform carries, or null. */
export function keyIn(metadata: unknown): string | null {
  const read = markSchema.safeParse(metadata);
  return read.success ? read.data.event_payload.key : null;
}

/** Key of the message that a job's thread hangs on. */
export function headKey(job: JobNo): string {
  return `head:${job}`;
}
