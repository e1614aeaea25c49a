import type { Celsius, Minutes } from '../cure/units.js';
import type { LampName, PersonId } from './ids.js';

export const ROLES = ['apprentice', 'technician', 'foreman', 'quality', 'owner'] as const;
export type Role = (typeof ROLES)[number];

export const LANGUAGES = ['en', 'de', 'es'] as const;
/** Which words a person reads; commands are understood from anyone in any of them. */
export type Language = (typeof LANGUAGES)[number];

export interface Person {
  readonly id: PersonId;
  readonly name: string;
  readonly role: Role;
  /** The person's id on the chat platform, or null. */
  readonly chatId: string | null;
  readonly language: Language;
  /** What they read and type without a unit; null: the shop's. */
  readonly unit: 'C' | 'F' | null;
}

/** Somebody who spoke here and is not one of the shop's people: known by name, may ask and enters nothing. */
export interface Guest {
  readonly id: PersonId;
  readonly name: string;
}

/** Who works when. Minutes after local midnight; `ends` may be on the next day (more than 1440). */
export interface ShopShift {
  readonly name: string;
  /** Monday = 1 … Sunday = 7. */
  readonly days: readonly number[];
  readonly begins: number;
  readonly ends: number;
  readonly people: readonly PersonId[];
}

/** Minutes after local midnight. */
export interface OpeningHours {
  readonly opens: number;
  readonly closes: number;
}

/** How long the clerk waits before it asks or repeats; shop settings with a cautious default. */
export interface Rhythm {
  /** Before the open limit (10). */
  readonly openWarning: Minutes;
  /** After lamp on, without a reading (20). */
  readonly readingDue: Minutes;
  /** After the last sign of life of a lamp (60). */
  readonly stillOn: Minutes;
  /** After a check was confirmed and the next lamp stage not begun (10). */
  readonly stageDue: Minutes;
  /** Repeats to the owner, counted from the first post (10, 30). */
  readonly repeats: readonly Minutes[];
  /** Then once to the foreman (50). */
  readonly foreman: Minutes;
  /** A put-off check comes back after (10). */
  readonly putOff: Minutes;
  /** An entry dated back further than this asks first (120, rule R9). */
  readonly backdating: Minutes;
}

export interface Shop {
  readonly name: string;
  /** IANA zone; all times people read are in it. */
  readonly zone: string;
  /** By weekday, Monday = 1 … Sunday = 7; null is closed. */
  readonly hours: Readonly<Record<1 | 2 | 3 | 4 | 5 | 6 | 7, OpeningHours | null>>;
  /** What the air usually has in working hours; null: never assumed. */
  readonly air: Celsius | null;
  /** What the shop falls to after closing; null: unknown, so nothing counts at night (rule R7). */
  readonly night: Celsius | null;
  /** What the shop falls to when it stays closed for a whole day or more (weekend, holiday); null: as in any night. */
  readonly closedDays: Celsius | null;
  /** Days on which the shop stays closed, `2026-12-25`, in the shop's zone. */
  readonly holidays: readonly string[];
  readonly unit: 'C' | 'F';
  /** What the channel reads, and whoever has no language of their own. */
  readonly language: Language;
  readonly people: readonly Person[];
  /** Strangers who have spoken here, as the book knows them; shop.yaml has none. */
  readonly guests?: readonly Guest[];
  readonly lamps: readonly LampName[];
  /** Heating pads; no pad has the name of a lamp. */
  readonly pads: readonly LampName[];
  readonly rhythm: Rhythm;
  /** None: everybody is on shift while the shop is open. */
  readonly shifts: readonly ShopShift[];
  readonly bays: readonly string[];
  /** How long somebody watches after hot work (60). */
  readonly fireWatch: Minutes;
  /** A lamp or pad hotter than this brings the battery caution (60 °C); common practice, no source. */
  readonly batteryCaution: Celsius;
}
