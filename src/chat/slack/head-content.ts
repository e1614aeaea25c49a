import type { JobNo } from '../../repair/ids.js';
import { escapeText } from './mrkdwn.js';
import type { Content } from './post.js';
import { section } from './to-blocks.js';

/** The message that a job's thread hangs on. */
export function headContent(job: JobNo): Content {
  const title = escapeText(`Job ${job}`);
  const small = 'Times, checks and warnings of this job are in this thread.';
  return { text: `${title}\n${small}`, blocks: [section(`*${title}*`), { type: 'context', elements: [{ type: 'mrkdwn', text: small }] }] };
}
