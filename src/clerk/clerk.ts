import type { CureForm, Desk, JobSheet, Reply, WaitingCar } from './desk.js';
import { earlier, later, minutes, plus, type Instant } from '../cure/units.js';
import { runningOutlooks } from '../repair/book.js';
import { jobNo, type PersonId } from '../repair/ids.js';
import { nameOf } from '../repair/people.js';
import { nextBell } from '../repair/shop-hours.js';
import { waitingList, type Waiting } from '../repair/waiting.js';
import { composeHome, type HomeBoard } from '../reply/compose/home.js';
import { settingFor } from '../reply/compose/setting-for.js';
import { heatWords } from '../reply/compose/state.js';
import type { Setting } from '../reply/compose/words.js';
import { cureFormOf } from './cure-form.js';
import type { DeskPorts, DeskState } from './desk-ports.js';
import { fireReminder } from './fire-reminder.js';
import { handleMessage } from './handle-message.js';
import { pendingBell, ringBell } from './handle-tick.js';
import { jobSheetOf } from './job-sheet.js';
import { bookIn, JobShelf } from './loaded-book.js';
import type { Message, MessageId, Post } from './message.js';
import { shopIn } from './shop-in.js';
import { replan } from './write-facts.js';
import { readAtDesk } from './read-at-desk.js';

const AT_ONCE = 50;
const RETRY_AFTER = minutes(0.5);

/** The clerk at the desk: takes messages and the passing of time, one transaction each. Nothing else acts. */
export class Clerk implements Desk {
  #desk: DeskState;
  readonly #listeners = new Set<() => void>();
  /** Reminders whose handling failed; tried again at the next wake-up, never in the way of others. */
  readonly #failed = new Set<string>();

  constructor(ports: DeskPorts) {
    this.#desk = { ...ports, shelf: new JobShelf() };
  }

  say(message: Message): Reply {
    const { store, clock } = this.#desk;
    const handled = this.#transact(() => store.transact((tx) => handleMessage(tx, this.#desk, message, clock.now())));
    this.catchUp();
    this.#tell();
    return { id: message.id, answer: handled.answer, ...(handled.fault === undefined ? {} : { fault: handled.fault }) };
  }

  /** The cards of new cures from now on; what cures already keeps the card it began with. */
  useCards(cards: DeskState['cards']): void {
    this.#desk = { ...this.#desk, cards };
  }

  /** The procedures that jobs may begin from now on; a job that has begun one keeps it as it stood. */
  useProcedures(procedures: DeskState['procedures']): void {
    this.#desk = { ...this.#desk, procedures };
  }

  get cardNames(): readonly string[] {
    return this.#desk.cards.map((card) => card.name);
  }

  get procedureNames(): string[] {
    return this.#desk.procedures.map((procedure) => procedure.name);
  }

  /** Once at start: the shop's settings may have changed while nobody was at the desk, so every open job is planned anew. */
  resume(): void {
    const { store, clock } = this.#desk;
    this.#transact(() => { store.transact((tx) => { for (const job of tx.openJobs()) replan(tx, this.#desk, job, clock.now()); }); });
    this.catchUp();
  }

  /** Time has passed: everything that is due now is said, then the clock is armed for what comes next. */
  catchUp(): void {
    const said = this.#ringBells() + this.#ringReminders();
    if (said > 0) this.#tell();
    this.#arm();
  }

  waiting(reader?: PersonId): readonly WaitingCar[] {
    return this.#waitingNow(reader ?? 'channel', (list, setting) => list.map(({ outlook, waitsFor, state, dueAt }) => ({
      job: outlook.cure.job,
      joint: outlook.cure.ref.joint,
      card: outlook.cure.card.name,
      waitsFor,
      state,
      dueAt,
      owner: nameOf(setting.shop, outlook.cure.owner),
      heat: heatWords(outlook, setting),
    })));
  }

  home(person: PersonId): HomeBoard {
    return this.#waitingNow(person, (list, setting) => composeHome(list, person, setting));
  }

  /** `reader`: whose words they are; the channel's where everybody sees them. */
  #waitingNow<T>(reader: PersonId | 'channel', words: (list: readonly Waiting[], setting: Setting) => T): T {
    const { store, clock } = this.#desk;
    return store.transact((tx) => {
      const shop = shopIn(tx, this.#desk);
      const book = bookIn(tx, this.#desk.shelf);
      const now = clock.now();
      return words(waitingList(runningOutlooks(book, shop, book.openJobs()), now), settingFor(reader, { shop, now }));
    });
  }

  jobSheet(job: string): JobSheet | null {
    const { store, clock, shop, shelf } = this.#desk;
    return store.transact((tx) => {
      const book = bookIn(tx, shelf);
      const known = book.job(jobNo(job));
      return known === null ? null : jobSheetOf(known, shop, book.air, clock.now());
    });
  }

  cureForm(person: PersonId): CureForm {
    return this.#desk.store.transact((tx) => cureFormOf(tx, this.#desk, person));
  }

  postsAfter(seq: number, limit: number): readonly Post[] {
    return this.#desk.store.postsAfter(seq, limit);
  }

  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  knows(id: MessageId): boolean {
    return this.#desk.store.transact((tx) => tx.seen(id) !== null);
  }

  offeredUnder(reply: string): readonly string[] | null {
    return this.#desk.store.transact((tx) => tx.offeredUnder(reply));
  }

  understands(line: string): boolean {
    const { store, clock } = this.#desk;
    return store.transact((tx) => readAtDesk(tx, this.#desk, line, clock.now()).ok);
  }

  /** A bundle that cannot be written must not keep the reminders from being said; it is tried at the next wake-up. */
  #ringBells(): number {
    const { store, clock, log } = this.#desk;
    try {
      return this.#transact(() =>
        store.transact((tx) => {
          const now = clock.now();
          const bell = pendingBell(tx, this.#desk, now);
          if (bell !== null) ringBell(tx, this.#desk, bell, now);
          return bell === null ? 0 : 1;
        }),
      );
    } catch (error) {
      log.error({ error }, 'The bundle could not be written; it is tried again at the next wake-up.');
      return 0;
    }
  }

  #ringReminders(): number {
    const { store, clock, log } = this.#desk;
    let said = 0;
    this.#failed.clear();
    for (;;) {
      const ringing = store.transact((tx) => tx.ringing(clock.now(), AT_ONCE + this.#failed.size)).filter((one) => !this.#failed.has(one.key));
      if (ringing.length === 0) return said;
      for (const reminder of ringing) {
        try {
          this.#transact(() => { store.transact((tx) => { fireReminder(tx, this.#desk, reminder, clock.now()); }); });
          said += 1;
        } catch (error) {
          this.#failed.add(reminder.key);
          log.error({ error, key: reminder.key }, 'This reminder could not be said; it stays due and is tried again.');
        }
      }
    }
  }

  #arm(): void {
    const { store, clock, shop, clockRingsBells } = this.#desk;
    const next = store.transact((tx) => tx.nextRing());
    const bell = clockRingsBells ? (nextBell(shop, clock.now())?.at ?? null) : null;
    const times = [next, bell].filter((at): at is Instant => at !== null);
    const notBefore = this.#failed.size > 0 ? plus(clock.now(), RETRY_AFTER) : clock.now();
    clock.arm(times.length === 0 ? null : later(times.reduce((one, other) => earlier(one, other)), notBefore), () => { this.catchUp(); });
  }

  /** A transaction that failed leaves no half-folded job behind. */
  #transact<T>(work: () => T): T {
    try {
      return work();
    } catch (error) {
      this.#desk.shelf.forgetAll();
      throw error;
    }
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
