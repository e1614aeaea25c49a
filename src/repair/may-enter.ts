import type { EntryCommand } from './commands.js';
import type { Situation } from './decision.js';
import { foremanOf, knownRole } from './people.js';
import type { Refusal } from './refusal.js';
import { ROLES, type Role } from './shop.js';

const AT_THE_CARS = ['apprentice', 'technician', 'foreman'] as const;
const FOREMAN = ['foreman'] as const;

/**
 * Who may enter what. An apprentice's `check` is a first check at most, and what a step or a milestone asks of a role
 * besides is decided where it is known. The owner reads.
 */
export const WHO_MAY: Readonly<Record<EntryCommand['kind'], readonly Role[]>> = {
  paste: AT_THE_CARS,
  closed: AT_THE_CARS,
  moved: AT_THE_CARS,
  cure: AT_THE_CARS,
  lamp: AT_THE_CARS,
  off: AT_THE_CARS,
  on: AT_THE_CARS,
  read: AT_THE_CARS,
  air: AT_THE_CARS,
  check: AT_THE_CARS,
  later: AT_THE_CARS,
  depth: AT_THE_CARS,
  'build-up': AT_THE_CARS,
  'wrong-card': AT_THE_CARS,
  stay: AT_THE_CARS,
  scrap: ['technician', 'foreman'],
  // Whoever may write something may take it back.
  undo: [...AT_THE_CARS, 'quality'],
  release: FOREMAN,
  begin: AT_THE_CARS,
  done: AT_THE_CARS,
  sign: [...AT_THE_CARS, 'quality'],
  tap: AT_THE_CARS,
  enter: AT_THE_CARS,
  hold: ['foreman', 'quality'],
  override: FOREMAN,
  weld: AT_THE_CARS,
  // Whoever smells it says so, on the list or not.
  smoke: ROLES,
  hand: AT_THE_CARS,
  handover: AT_THE_CARS,
  accept: AT_THE_CARS,
  busy: AT_THE_CARS,
  // A mistake must be easier to report than to hide.
  move: AT_THE_CARS,
  adopt: FOREMAN,
  'turn-away': FOREMAN,
};

/** Why this person may not enter this at all; null: they may. Asking is free to everyone. */
export function mayEnter({ kind }: Pick<EntryCommand, 'kind'>, { shop, by }: Pick<Situation, 'shop' | 'by'>): Refusal | null {
  if (kind === 'smoke') return null;
  const role = knownRole(shop, by);
  if (role === null) return { code: 'stranger', person: by, foreman: foremanOf(shop) };
  const may = WHO_MAY[kind];
  if (may.includes(role)) return null;
  return may.every((one) => one === 'foreman') ? { code: 'foreman-only', foreman: foremanOf(shop) } : { code: 'wrong-role', role, may };
}
