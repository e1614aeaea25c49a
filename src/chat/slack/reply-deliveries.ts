import type { Delivery, DeliveryTarget, Message, ReturnPath } from '../../clerk/message.js';
import type { Instant } from '../../cure/units.js';
import type { JobNo } from '../../repair/ids.js';
import type { Answer } from '../../reply/answer.js';

/**
 * What an answered message puts into the outbox: the answer back to where the message came from (a message from
 * the local page is answered there), and for an entry about a job one line in the job's thread, unless the answer
 * itself went there.
 */
export function replyDeliveries(message: Message, answer: Answer, job: JobNo | null, isEntry: boolean, at: Instant): Delivery[] {
  const target = replyTarget(message, isEntry);
  const deliveries: Delivery[] = [];
  if (target !== null) {
    deliveries.push({ key: `reply:${message.id}`, chat: 'slack', target, urgent: false, mention: null, answer, createdAt: at });
  }
  const stoodThere = target !== null && target.kind === 'job-thread' && target.job === job;
  if (isEntry && job !== null && !stoodThere) {
    deliveries.push({ key: `record:${message.id}`, chat: 'slack', target: { kind: 'job-thread', job }, urgent: false, mention: null, answer: oneLine(message, answer), createdAt: at });
  }
  return deliveries;
}

function replyTarget(message: Message, isEntry: boolean): DeliveryTarget | null {
  const path: ReturnPath = message.returnPath;
  if (path.chat === 'page') return null;
  if (path.chat === 'slack-direct') return path.from === 'form' && !isEntry ? null : { kind: 'direct', user: path.user };
  if (path.from === 'form' && !isEntry) return null;
  const place = { channel: path.channel, thread: path.thread };
  if (path.visible === 'to-asker') return { kind: 'only-for', ...place, user: path.user };
  return message.thread === null ? { kind: 'channel', ...place } : { kind: 'job-thread', job: message.thread };
}

function oneLine(message: Message, answer: Answer): Answer {
  return { tone: answer.tone, lines: [[{ kind: 'text', text: `${message.from.name}: ` }, ...(answer.lines[0] ?? [])]], buttons: [] };
}
