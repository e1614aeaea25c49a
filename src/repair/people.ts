import type { PersonId } from './ids.js';
import type { Role, Shop } from './shop.js';

/** A person the shop's list does not know may enter what a technician may. */
export const roleOf = (shop: Shop, id: PersonId): Role => shop.people.find((person) => person.id === id)?.role ?? 'technician';

export const isForeman = (shop: Shop, id: PersonId): boolean => roleOf(shop, id) === 'foreman';

/** Whom escalations go to: the first foreman on the list, or the whole channel. */
export const foremanOf = (shop: Shop): PersonId | 'channel' => shop.people.find((person) => person.role === 'foreman')?.id ?? 'channel';

export function nameOf(shop: Shop, id: PersonId): string {
  const known = shop.people.find((person) => person.id === id)?.name;
  return known ?? id.charAt(0).toUpperCase() + id.slice(1);
}
