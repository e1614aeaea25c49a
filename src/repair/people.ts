import type { PersonId } from './ids.js';
import { onShift } from './on-shift.js';
import type { Language, Role, Shop } from './shop.js';
import type { Instant } from '../cure/units.js';

/** Null: somebody whom neither shop.yaml nor the foreman has made one of the shop's people. */
export const knownRole = (shop: Shop, id: PersonId): Role | null => shop.people.find((person) => person.id === id)?.role ?? null;

/** A stranger counts as the least: they may ask, and enter nothing at all (`mayEnter`). */
export const roleOf = (shop: Shop, id: PersonId): Role => knownRole(shop, id) ?? 'apprentice';

export const isForeman = (shop: Shop, id: PersonId): boolean => knownRole(shop, id) === 'foreman';

/** Whom escalations go to: the first foreman on the list, or the whole channel. */
export const foremanOf = (shop: Shop): PersonId | 'channel' => shop.people.find((person) => person.role === 'foreman')?.id ?? 'channel';

/** The foreman at work at this moment; null: none. */
export const foremanOnDuty = (shop: Shop, at: Instant): PersonId | null => shop.people.find((person) => person.role === 'foreman' && onShift(shop, person.id, at))?.id ?? null;

/** Whom a matter goes to that waits for no shift: the foreman on duty, else the first on the list. */
export const foremanAt = (shop: Shop, at: Instant): PersonId | 'channel' => (shop.shifts.length === 0 ? null : foremanOnDuty(shop, at)) ?? foremanOf(shop);

/** What somebody reads: their own language, else the shop's; the channel reads the shop's. */
export const languageFor = (shop: Pick<Shop, 'people' | 'language'>, id: PersonId | 'channel'): Language => shop.people.find((person) => person.id === id)?.language ?? shop.language;

export function nameOf(shop: Shop, id: PersonId): string {
  const known = [...shop.people, ...(shop.guests ?? [])].find((person) => person.id === id)?.name;
  return known ?? id.charAt(0).toUpperCase() + id.slice(1);
}

/** The one of these people that a typed word means, by id or by name, whatever its capitals; null: nobody. */
export function personNamed<One extends { readonly id: PersonId; readonly name: string }>(people: readonly One[], typed: string): One | null {
  const word = typed.trim().toLowerCase();
  return people.find((person) => person.id === word) ?? people.find((person) => person.name.toLowerCase() === word) ?? null;
}

/** Whoever works at the cars, and so can own a cure. */
export const worksAtCars = (role: Role): boolean => role === 'apprentice' || role === 'technician' || role === 'foreman';
