import type { webApi } from '@slack/bolt';
import type { Desk } from '../../clerk/desk.js';
import { messageId } from '../../clerk/message.js';
import type { Message, Speaker } from '../../clerk/message.js';
import type { Log } from '../../outbox/log.js';
import { sayReason } from '../../reply/catalogue/reason.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import { toText } from '../../reply/to-text.js';
import { clip } from './clip.js';
import type { Pressed, ReasonWanted } from './incoming.js';
import type { ReasonGiven } from './incoming-view.js';
import { REASON_FIELD, reasonView } from './reason-view.js';

export interface ReasonPorts {
  readonly desk: Pick<Desk, 'say' | 'knows'>;
  /** With a short time limit: a form can be opened for three seconds only. */
  readonly client: webApi.WebClient;
  /** In whose language the form speaks, without asking anybody. */
  readonly readerOf: (chatId: string) => Reader;
  readonly speaker: (chatId: string, handle: string | null) => Promise<Speaker>;
  /** What a press of a button there would be. */
  readonly pressedBy: (pressed: Pressed, from: Speaker) => Message;
  /** Tells whoever pressed, seen by them alone; never rejects. */
  readonly tellAlone: (pressed: Pressed, text: string) => Promise<void>;
  readonly log: Log;
}

/** What is said under the field; null: it is stored. */
export type ReasonErrors = Readonly<Record<typeof REASON_FIELD, string>>;

const ERROR_LIMIT = 400;

/** A button that asks for a reason: a form with one field, and the line with what was written behind it goes to the desk like any other. */
export class ReasonForms {
  readonly #ports: ReasonPorts;

  constructor(ports: ReasonPorts) {
    this.#ports = ports;
  }

  /** Opens the form; never rejects. */
  async open({ triggerId, pressed }: ReasonWanted): Promise<void> {
    const { client, readerOf, tellAlone, log } = this.#ports;
    const reader = readerOf(pressed.user);
    try {
      await client.views.open({ trigger_id: triggerId, view: reasonView(pressed, reader) });
    } catch (error) {
      log.warn({ error }, 'The form for a reason could not be opened.');
      await tellAlone(pressed, sayReason(reader, 'not-opened', { line: pressed.line }));
    }
  }

  /** Puts the line to the desk. Null when it is stored (now or before); otherwise what stands under the field. Never rejects. */
  async submit({ user, userName, viewId, asked, reason }: ReasonGiven): Promise<ReasonErrors | null> {
    const { desk, speaker, pressedBy, readerOf, log } = this.#ports;
    try {
      const from = await speaker(user, userName);
      const text = `${asked.line} ${reason ?? ''}`.trim();
      const pressed = pressedBy({ ...asked, user, userName, actionTs: viewId, line: text }, from);
      // Sent off twice with the same words it is the same message; a corrected one is another.
      const { returnPath: path } = pressed;
      const message: Message = { ...pressed, id: messageId(`slack:reason:${viewId}:${text}`), returnPath: path.chat === 'slack' ? { ...path, from: 'form' } : path, mayRepeat: false };
      const { answer } = desk.say(message);
      return desk.knows(message.id) ? null : { [REASON_FIELD]: clip(toText({ ...answer, lines: answer.lines.slice(0, 2) }).replaceAll('\n', ' '), ERROR_LIMIT) };
    } catch (error) {
      log.error({ error }, 'A reason could not be handled; nothing was written down.');
      return { [REASON_FIELD]: sayReason(readerOf(user), 'not-written') };
    }
  }
}
