import { App } from '@slack/bolt';
import type { Logger, Receiver, ReceiverEvent } from '@slack/bolt';

/**
 * Bolt's application, entered at its one door. Its receivers bring signature, size and time limits and the
 * WebSocket; its listeners are not used, because they run after an event has been acknowledged, and what is
 * acknowledged must already stand in the database. A throw here leaves the payload unacknowledged, so the
 * platform delivers it again.
 */
export class ClerkApp extends App {
  readonly #take: (event: ReceiverEvent) => Promise<void>;

  constructor(receiver: Receiver, botToken: string, logger: Logger, take: (event: ReceiverEvent) => Promise<void>) {
    // With an own authorize the constructor calls no auth.test, whose failure nobody could catch.
    super({ receiver, logger, convoStore: false, authorize: () => Promise.resolve({ botToken }) });
    this.#take = take;
  }

  override async processEvent(event: ReceiverEvent): Promise<void> {
    await this.#take(event);
  }
}
