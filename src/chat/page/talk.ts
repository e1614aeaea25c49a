import type { Context } from 'hono';
import { messageId, type MessageId } from '../../clerk/message.js';
import { languageFor } from '../../repair/people.js';
import { sayPage } from '../../reply/catalogue/page.js';
import { MessageBody, PressBody, readBody } from './body.js';
import { replyJson } from './page-json.js';
import type { PagePorts } from './page-ports.js';
import { Problem } from './problem.js';

/** POST /api/messages: somebody typed a line. */
export async function takeMessage(c: Context, ports: PagePorts): Promise<Response> {
  const { from, text } = await readBody(c, MessageBody);
  return say(c, ports, { id: idOf(c.req.header('idempotency-key'), ports), from, text });
}

/**
 * POST /api/press: a button is a line that could have been typed, so pressing it says that line.
 * Where no answer is known that carried this button nothing is said, but a repeated press gets its first answer again.
 */
export async function takePress(c: Context, ports: PagePorts): Promise<Response> {
  const { from, reply, button } = await readBody(c, PressBody);
  const id = idOf(c.req.header('idempotency-key'), ports);
  if (!ports.desk.knows(id)) {
    const reader = { language: languageFor(ports.shop, ports.speaker(from).id) };
    const offered = ports.desk.offeredUnder(reply);
    if (offered === null) throw new Problem(409, sayPage(reader, 'refused-reply', { line: button }), 'reply');
    if (!offered.includes(button)) throw new Problem(400, sayPage(reader, 'refused-button', { line: button }), 'button');
  }
  return say(c, ports, { id, from, text: button });
}

/** GET /api/messages/:key: whether the message with that Idempotency-Key arrived, for a sender who heard no answer. */
export const knowsMessage = (c: Context, { desk }: PagePorts): Response => c.json({ known: desk.knows(messageId(`page:${c.req.param('key') ?? ''}`)) });

interface Said {
  readonly id: MessageId;
  readonly from: string;
  readonly text: string;
}

function say(c: Context, ports: PagePorts, { id, from, text }: Said): Response {
  const reply = ports.desk.say({ id, from: ports.speaker(from), text, thread: null, returnPath: { chat: 'page' }, mayRepeat: c.req.header('idempotency-key') !== undefined });
  return c.json({ reply: replyJson(reply.id, reply.answer) });
}

/** The sender's own key makes a repeated request the same message. */
function idOf(key: string | undefined, ports: PagePorts): MessageId {
  if (key === undefined) return messageId(`page:${ports.newId()}`);
  if (!/^[\x21-\x7e]{1,100}$/.test(key)) throw new Problem(400, 'Idempotency-Key must be 1 to 100 visible ASCII characters.', 'Idempotency-Key');
  return messageId(`page:${key}`);
}
