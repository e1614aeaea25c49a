import type { Instant } from '../cure/units.js';
import type { Command } from '../repair/commands.js';
import { lampName, type LampName } from '../repair/ids.js';
import type { ReadingContext } from './reading.js';

/** The reading context, ready for look-ups: names by their lower-case spelling. */
export interface KnownNames {
  readonly now: Instant;
  readonly zone: string;
  readonly cards: ReadonlyMap<string, string>;
  readonly lamps: ReadonlyMap<string, LampName>;
  readonly pads: ReadonlyMap<string, LampName>;
  readonly openJobs: ReadonlySet<string>;
  /** By their name in lower case, words joined by hyphens. */
  readonly procedures: ReadonlyMap<string, string>;
  readonly allows: (command: Command) => boolean;
}

export function knownNames(context: ReadingContext): KnownNames {
  return {
    now: context.now,
    zone: context.zone,
    cards: new Map(context.cards.map((name) => [name.toLowerCase(), name])),
    lamps: new Map(context.lamps.map((name) => [name.toLowerCase(), lampName(name)])),
    pads: new Map(context.pads.map((name) => [name.toLowerCase(), lampName(name)])),
    openJobs: new Set(context.openJobs),
    procedures: new Map(context.procedures.map((name) => [hyphened(name), name])),
    allows: context.allows ?? (() => true),
  };
}

/** `Bonded panel` and `bonded-panel` are one procedure. */
export const hyphened = (name: string): string => name.toLowerCase().replaceAll(/[ _-]+/g, '-');
