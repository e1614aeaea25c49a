import { personId, type PersonId } from '../repair/ids.js';
import type { Adopted } from '../repair/people-facts.js';
import type { Guest, Person, Shop } from '../repair/shop.js';
import type { DeskState } from './desk-ports.js';
import type { BookTransaction } from './ports.js';

/** The shop as the book knows it at this moment: shop.yaml, whom the foreman took on since, and who else has spoken here. */
export const shopIn = (tx: BookTransaction, { shop, shelf }: Pick<DeskState, 'shop' | 'shelf'>): Shop => shopWithPeople(shop, shelf.people(tx).adopted, tx.guests());

/** Adopted people count as people of the shop, with the role they were given last; other guests are known by name only. */
export function shopWithPeople(shop: Shop, adopted: readonly Adopted[], guests: readonly Guest[]): Shop {
  const listed = new Set(shop.people.map((person) => person.id));
  const taken = new Map<PersonId, Adopted>(adopted.filter(({ person }) => !listed.has(person)).map((one) => [one.person, one]));
  const people = [...shop.people, ...[...taken.values()].map((one) => personOf(one, guests, shop))];
  return { ...shop, people, guests: guests.filter(({ id }) => !people.some((person) => person.id === id)) };
}

/** They read what the shop reads, until shop.yaml says otherwise; the chat finds them by their id. */
const personOf = ({ person, name, role }: Adopted, guests: readonly Guest[], { language }: Shop): Person => ({
  id: personId(person),
  name: guests.find(({ id }) => id === person)?.name ?? name,
  role,
  chatId: null,
  language,
  unit: null,
});
