import type { PagePorts, PracticeClock } from '../../src/chat/page/page-ports.js';
import { instant, plus, type Instant } from '../../src/cure/units.js';
import { personId } from '../../src/repair/ids.js';
import type { Person } from '../../src/repair/shop.js';
import { FakeDesk } from './fake-desk.js';

export const NOON: Instant = instant(Date.parse('2026-03-03T12:00:00Z'));

const person = (name: string, role: Person['role']): Person => ({ id: personId(name), name, role, chatId: null, language: 'en', unit: null });

/** An invented shop around a fake desk, at noon on a day that does not move unless told to. */
export interface PageRoom {
  readonly desk: FakeDesk;
  readonly ports: PagePorts;
  readonly reported: unknown[];
  now: Instant;
  practice: PracticeClock | null;
}

export function pageRoom(change: Partial<PagePorts> = {}): PageRoom {
  const desk = new FakeDesk();
  const reported: unknown[] = [];
  let ids = 0;
  const clock = {
    now: (): Instant => room.now,
    get practice(): PracticeClock | null {
      return room.practice;
    },
  };
  const ports: PagePorts = {
    desk,
    shop: { name: 'Brackenholt Body & Frame', zone: 'Europe/Dublin', language: 'en', people: [person('Ines', 'foreman'), person('Tomek', 'technician'), person('Wren', 'apprentice')] },
    clock,
    health: () => ({ ok: true }),
    practiceDay: null,
    newId: () => `made-${(ids += 1)}`,
    speaker: (from) => ({ id: personId(from), name: from }),
    report: (error) => reported.push(error),
    ...change,
  };
  const room: PageRoom = { desk, ports, reported, now: NOON, practice: null };
  return room;
}

/** A practice clock that stands until it is advanced. */
export const standingClock = (room: PageRoom): PracticeClock => ({
  standing: true,
  advance(by) {
    room.now = plus(room.now, by);
    room.desk.change();
  },
  advanceToNext(until) {
    if (until === null) return false;
    room.now = until;
    room.desk.change();
    return true;
  },
});
