import type { Context } from 'hono';
import { messageId, type MessageId } from '../../clerk/message.js';
import { MessageBody, PressBody, readBody } from './body.js';
import { replyJson } from './page-json.js';
import type { PagePorts } from './page-ports.js';
import { Problem } from './problem.js';

/** POST /api/messages: somebody typed a line. */
export async function takeMessage(c: Context, ports: PagePorts): Promise<Response> {
  const { from, text } = await readBody(c, MessageBody);
  return say(c, ports, from, text);
}

/** POST /api/press: a button is a line that could have been typed, so pressing it says that line. */
export async function takePress(c: Context, ports: PagePorts): Promise<Response> {
  const { from, button } = await readBody(c, PressBody);
  return say(c, ports, from, button);
}

/** GET /api/messages/:key: whether the message with that Idempotency-Key arrived, for a sender who heard no answer. */
export const knowsMessage = (c: Context, { desk }: PagePorts): Response => c.json({ known: desk.knows(messageId(`page:${c.req.param('key') ?? ''}`)) });

function say(c: Context, ports: PagePorts, from: string, text: string): Response {
  const id = idOf(c.req.header('idempotency-key'), ports);
  const reply = ports.desk.say({ id, from: ports.speaker(from), text, thread: null, returnPath: { chat: 'page' } });
  return c.json({ reply: replyJson(reply.id, reply.answer) });
}

/** The sender's own key makes a repeated request the same message. */
function idOf(key: string | undefined, ports: PagePorts): MessageId {
  if (key === undefined) return messageId(`page:${ports.newId()}`);
  if (!/^[\x21-\x7e]{1,100}$/.test(key)) throw new Problem(400, 'Idempotency-Key must be 1 to 100 visible ASCII characters.', 'Idempotency-Key');
  return messageId(`page:${key}`);
}
