import type { AirStep } from './air.js';
import type { Celsius, Instant } from './units.js';

/** What heats the joint. A recipe's figures are lamp settings: a pad never runs a recipe. */
export const HEATERS = ['lamp', 'pad'] as const;
export type Heater = (typeof HEATERS)[number];

/** What happened to the heat on one joint, in order of happening. */
export type HeatEvent =
  | { readonly kind: 'lamp-set'; readonly at: Instant; readonly setting: Celsius; readonly heater: Heater }
  | { readonly kind: 'lamp-on'; readonly at: Instant }
  | { readonly kind: 'lamp-off'; readonly at: Instant }
  /** Found off; off since the last sign of life. */
  | { readonly kind: 'lamp-found-off'; readonly at: Instant }
  /** The shop closes and nobody stays: from here heat counts only when somebody sees it again. */
  | { readonly kind: 'closing'; readonly at: Instant }
  | { readonly kind: 'reading'; readonly at: Instant; readonly value: Celsius };

/** One joint's past: heat events (sorted) and the shop's air around it. */
export interface JointHistory {
  /** Strength clock zero: closed, or last moved (rule R1). */
  readonly start: Instant;
  readonly heat: readonly HeatEvent[];
  readonly air: readonly AirStep[];
  /** How deep a bead has to harden; null: nobody said. */
  readonly depthMillimetres: number | null;
}

/** Why a stretch counts at its temperature. */
export type StepSource = AirStep['source'] | 'reading' | 'colder of two readings' | 'over the maximum';

/** The joint's temperature on the safe side from `from` on; null counts nothing. */
export interface JointStep {
  readonly from: Instant;
  readonly temperature: Celsius | null;
  readonly source: StepSource;
}

/** A stretch in which the lamp (or pad) is believed on at a setting; `to` null: still on. */
export interface LampStretch {
  readonly from: Instant;
  readonly to: Instant | null;
  readonly setting: Celsius | null;
  readonly heater: Heater;
}
