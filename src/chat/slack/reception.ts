import type { ReceiverEvent } from '@slack/bolt';
import type { Message } from '../../clerk/message.js';
import type { Log } from '../../outbox/log.js';
import { sayForm } from '../../reply/catalogue/form.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import type { CureForms } from './cure-forms.js';
import { readIncoming } from './incoming.js';
import type { Heard, Pressed, Typed } from './incoming.js';
import type { HomePressed } from './incoming-view.js';
import type { HomeTabs } from './home-tabs.js';
import type { Inbox } from './inbox.js';
import type { ReasonForms } from './reason-forms.js';

export interface ReceptionPorts {
  readonly inbox: Inbox;
  readonly say: (message: Message) => void;
  /** False for what people say to each other in a thread. */
  readonly isForUs: (heard: Heard) => boolean;
  /** Asks for an unknown person's name, for two seconds at most. */
  readonly fromTyped: (typed: Typed) => Promise<Message>;
  readonly fromPressed: (pressed: Pressed) => Promise<Message>;
  /** Tells somebody, seen by them alone, that their press changed nothing; never rejects. */
  readonly tellAlone: (pressed: Pressed, text: string) => Promise<void>;
  readonly forms: CureForms;
  readonly reasons: ReasonForms;
  readonly homes: HomeTabs;
  readonly fromHome: (pressed: HomePressed) => Promise<Message>;
  /** Tells somebody in their direct messages; never rejects. */
  readonly tell: (user: string, text: string) => Promise<void>;
  readonly readerOf: (chatId: string) => Reader;
  readonly log: Log;
}

/**
 * Takes one verified payload: into the database, then the acknowledgement, then the work. Commands and presses are
 * one synchronous transaction at the desk; events are kept and worked off after the acknowledgement.
 */
export function reception(ports: ReceptionPorts): (event: ReceiverEvent) => Promise<void> {
  const { inbox, log } = ports;
  const notWritten = (user: string): string => sayForm(ports.readerOf(user), 'not-written-type');

  const attempt = async (build: () => Promise<Message>): Promise<boolean> => {
    try {
      ports.say(await build());
      return true;
    } catch (error) {
      log.error({ error }, 'A command could not be handled; nothing was written down.');
      return false;
    }
  };

  return async ({ body, ack }) => {
    const incoming = readIncoming(body);
    switch (incoming.kind) {
      case 'typed':
        if (await attempt(() => ports.fromTyped(incoming.typed))) await ack();
        else await ack({ response_type: 'ephemeral', text: notWritten(incoming.typed.user) });
        return;
      case 'pressed': {
        const done = await attempt(() => ports.fromPressed(incoming.pressed));
        await ack();
        if (!done) await ports.tellAlone(incoming.pressed, notWritten(incoming.pressed.user));
        return;
      }
      case 'heard': {
        if (!ports.isForUs(incoming.heard)) {
          await ack();
          return;
        }
        const isNew = inbox.keep(incoming.heard);
        await ack();
        if (isNew) await inbox.workOff();
        return;
      }
      case 'form-wanted':
        await ack();
        await ports.forms.open(incoming.wanted);
        return;
      case 'form-touched':
        await ack();
        await ports.forms.touched(incoming.touched);
        return;
      case 'form-submitted': {
        const errors = await ports.forms.submit(incoming.submitted);
        if (errors === null) await ack();
        else await ack({ response_action: 'errors', errors });
        return;
      }
      case 'reason-wanted':
        await ack();
        await ports.reasons.open(incoming.wanted);
        return;
      case 'reason-given': {
        const errors = await ports.reasons.submit(incoming.given);
        if (errors === null) await ack();
        else await ack({ response_action: 'errors', errors });
        return;
      }
      case 'home-opened':
        await ack();
        await ports.homes.opened(incoming.user);
        return;
      case 'home-pressed': {
        const done = await attempt(() => ports.fromHome(incoming.pressed));
        await ack();
        if (!done) await ports.tell(incoming.pressed.user, notWritten(incoming.pressed.user));
        return;
      }
      case 'not-for-us':
        await ack();
        return;
      case 'malformed':
        await ack();
        log.warn({ problem: incoming.problem }, 'The chat platform sent something unreadable; it was left alone.');
        return;
    }
  };
}
