import type { Speaker } from '../../clerk/message.js';
import type { OutboxStore } from '../../clerk/ports.js';
import type { Instant } from '../../cure/units.js';
import { personId, type PersonId } from '../../repair/ids.js';
import type { Person, Shop } from '../../repair/shop.js';
import type { Log } from '../../outbox/log.js';
import type { Reader } from '../../reply/catalogue/speaker.js';

export interface PeoplePorts {
  readonly shop: Shop;
  readonly outbox: OutboxStore;
  readonly realNow: () => Instant;
  /** The name in the platform's profile of a chat id, or null; throws when the platform does not answer in time. */
  readonly askName: (chatId: string) => Promise<string | null>;
  readonly log: Log;
}

/** Who is speaking: the person as shop.yaml knows them, else by the name of the platform's profile, else by the chat id. */
export class People {
  readonly #ports: PeoplePorts;

  constructor(ports: PeoplePorts) {
    this.#ports = ports;
  }

  /**
   * Who this is; asks the platform once for people it has never heard of. `handle` stands in when the platform does not
   * tell in time: it is what some payloads carry, and not the name of the profile.
   */
  async known(chatId: string, handle: string | null): Promise<Speaker> {
    const known = this.#listed(chatId) ?? this.#byProfile(chatId);
    if (known !== null) return known;
    try {
      const name = await this.#ports.askName(chatId);
      if (name !== null) return { id: personId(chatId), name: this.#keep(chatId, name) };
    } catch (error) {
      this.#ports.log.warn({ error, chatId }, 'The platform did not say who this is; the handle stands for the name.');
    }
    return { id: personId(chatId), name: handle === null || handle.trim() === '' ? chatId : handle };
  }

  /** Who this is, without asking anybody. */
  personOf(chatId: string): PersonId {
    return this.#listed(chatId)?.id ?? personId(chatId);
  }

  /** In which language they read: their own, else the shop's. */
  readerOf(chatId: string): Reader {
    return { language: this.#person(chatId)?.language ?? this.#ports.shop.language };
  }

  /** What a mention of this chat id means in a typed line. */
  wordFor(chatId: string): string {
    return this.#listed(chatId)?.id ?? chatId;
  }

  #listed(chatId: string): Speaker | null {
    const person = this.#person(chatId);
    return person === null ? null : { id: person.id, name: person.name };
  }

  #person(chatId: string): Person | null {
    return this.#ports.shop.people.find((one) => one.chatId === chatId) ?? null;
  }

  #byProfile(chatId: string): Speaker | null {
    const name = this.#ports.outbox.profileName(chatId);
    return name === null ? null : { id: personId(chatId), name };
  }

  #keep(chatId: string, name: string): string {
    if (this.#ports.outbox.profileName(chatId) !== name) this.#ports.outbox.saveProfileName(chatId, name, this.#ports.realNow());
    return name;
  }
}
