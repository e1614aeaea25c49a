import type { Context } from 'hono';
import { streamSSE, type SSEStreamingApi } from 'hono/streaming';
import type { Desk } from '../../clerk/desk.js';
import { Bell } from './bell.js';
import { lastSeq } from './last-seq.js';
import { postJson } from './page-json.js';
import type { PagePorts } from './page-ports.js';
import { Problem } from './problem.js';

const HEARTBEAT_MILLISECONDS = 20_000;
const RECONNECT_MILLISECONDS = 2_000;
const POSTS_AT_ONCE = 1_000;

/** GET /api/feed?after=seq: up to 1000 posts after that number, in order; ask again after the last one for more. */
export function feed(c: Context, desk: Desk): Response {
  const after = readSeq(c.req.query('after'), 'after') ?? 0;
  return c.json({ posts: desk.postsAfter(after, POSTS_AT_ONCE).map(postJson) });
}

/** GET /api/feed/stream: the same posts as server-sent events, and `changed` whenever the book changed. */
export function feedStream(c: Context, ports: PagePorts): Response {
  const asked = readSeq(c.req.header('last-event-id'), 'Last-Event-ID') ?? readSeq(c.req.query('after'), 'after');
  const end = lastSeq(ports.desk);
  // A number from beyond the end comes from another book; waiting for it would mean silence.
  const start = Math.min(asked ?? end, end);
  // A HEAD request has no body that anybody could hang up on.
  if (c.req.raw.method === 'HEAD') return c.body(null, 200, { 'content-type': 'text/event-stream' });
  return streamSSE(c, (stream) => follow(stream, ports, start));
}

async function follow(stream: SSEStreamingApi, ports: PagePorts, start: number): Promise<void> {
  const bell = new Bell();
  let changes = 0;
  let told = 0;
  const stop = ports.desk.onChange(() => {
    changes += 1;
    bell.ring();
  });
  const hangUp = (): void => { bell.ring(); };
  stream.onAbort(hangUp);
  ports.closing?.addEventListener('abort', hangUp);
  const over = (): boolean => stream.aborted || ports.closing?.aborted === true;
  try {
    await stream.write(`retry: ${RECONNECT_MILLISECONDS}\n\n`);
    for (let cursor = start; !over(); ) {
      const seen = changes;
      cursor = await sendPosts(stream, ports.desk, cursor, over);
      if (seen !== told) await stream.writeSSE({ event: 'changed', data: '{}' });
      told = seen;
      if ((await bell.wait(HEARTBEAT_MILLISECONDS)) === 'quiet') await stream.write(': still here\n\n');
    }
  } catch (error) {
    ports.report(error);
  } finally {
    stop();
    ports.closing?.removeEventListener('abort', hangUp);
  }
}

/** Sends everything after the cursor and returns the new cursor. */
async function sendPosts(stream: SSEStreamingApi, desk: Desk, from: number, over: () => boolean): Promise<number> {
  let cursor = from;
  for (let posts = desk.postsAfter(cursor, POSTS_AT_ONCE); posts.length > 0 && !over(); posts = desk.postsAfter(cursor, POSTS_AT_ONCE)) {
    for (const post of posts) {
      await stream.writeSSE({ id: post.seq.toString(), data: JSON.stringify(postJson(post)) });
      cursor = post.seq;
    }
  }
  return cursor;
}

function readSeq(text: string | undefined, field: string): number | null {
  if (text === undefined) return null;
  if (!/^\d{1,15}$/.test(text)) throw new Problem(400, `${field} must be the number of a post.`, field);
  return Number(text);
}
