import type { Celsius, Minutes } from './units.js';

/**
 * Strength and waiting milestones that end a wait ("not before"), in the order in which people meet them: a later one that
 * is confirmed includes the earlier ones. A card has only those its sheet states.
 */
export const MILESTONE_KINDS = ['flash-off', 'handling', 'full', 'sand', 'drive-away', 'recoat-from', 'skin', 'through', 'dwell', 'drip-free', 'dry', 'fire-watch'] as const;
export type MilestoneKind = (typeof MILESTONE_KINDS)[number];

/** One printed row: at this panel temperature the milestone takes this long. */
export interface SheetRow {
  readonly temperature: Celsius;
  readonly minutes: Minutes;
}

/** One lamp setting of a recipe, held for its printed minutes; `reaches` is the milestone its end means. */
export interface RecipeStage {
  readonly lamp: Celsius;
  readonly minutes: Minutes;
  readonly reaches: MilestoneKind | null;
}

/** One row of a table that is looked up and never interpolated: at least this warm and at least this humid. */
export interface TableRow {
  readonly atLeast: Celsius;
  readonly humidity: number;
  readonly minutes: Minutes;
}

/**
 * How a milestone's wait is worked out.
 * - `credit`: rows (panel °C, minutes), summed as minutes / row minutes.
 * - `recipe`: printed minutes at lamp settings from switch-on, stage by stage.
 * - `table`: worse row, no interpolation.   - `depth-root`: depth grows with the square root of time.
 * - `above`: real minutes at or above a temperature.   - `dwell`: the same, measured on the object itself.
 * - `elapsed`: real minutes.
 */
export type RateLaw =
  | { readonly law: 'credit'; readonly rows: readonly SheetRow[] }
  | { readonly law: 'recipe'; readonly stages: readonly RecipeStage[] }
  | { readonly law: 'table'; readonly rows: readonly TableRow[] }
  | { readonly law: 'depth-root'; readonly depthMillimetres: number; readonly minutes: Minutes; readonly reference: { readonly temperature: Celsius; readonly humidity: number } }
  | { readonly law: 'above'; readonly temperature: Celsius; readonly minutes: Minutes }
  /** Nothing counts before the flash-off (`after` the start) is over. */
  | { readonly law: 'dwell'; readonly temperature: Celsius; readonly minutes: Minutes; readonly after: Minutes }
  | { readonly law: 'elapsed'; readonly minutes: Minutes };

/** A milestone is reached by whichever of its laws is fulfilled first (heated or unheated). */
export interface MilestoneRule {
  readonly kind: MilestoneKind;
  readonly laws: readonly RateLaw[];
}

/** Open time: by rows (the next hotter row counts, rule R3) or a plain number of minutes. */
export type OpenTime =
  | { readonly by: 'rows'; readonly rows: readonly SheetRow[] }
  | { readonly by: 'minutes'; readonly minutes: Minutes };

/** What the figures of the card refer to; the kinds never share a row. */
export const CARD_BASES = ['panel-temperature', 'lamp-set', 'table', 'depth', 'window', 'dwell', 'above-temperature'] as const;
export type CardBasis = (typeof CARD_BASES)[number];

/** The figures of one data sheet. Frozen into a cure at its start (rule R14). */
export interface MaterialCard {
  readonly name: string;
  readonly title: string;
  readonly version: string;
  /** True for the invented cards that come with the program; every answer based on one says so. */
  readonly example: boolean;
  readonly basis: CardBasis;
  readonly milestones: readonly MilestoneRule[];
  readonly openTime: OpenTime | null;
  /** Highest allowed panel temperature. */
  readonly maxPanel: Celsius | null;
  /** Highest allowed lamp setting. */
  readonly maxLamp: Celsius | null;
  /** Latest moment for the next coat, from the start; null where the sheet states none. */
  readonly recoatBy: Minutes | null;
  /**
   * Percent that a shop adds to every wait by rows, since adding up shares of different temperatures is exact only for
   * chemistries with one rate; 0: the sheet's own figures.
   */
  readonly marginPercent: number;
  /** Wax and the like: from then on no heat and no flame on this car. */
  readonly noHeatAfter: boolean;
  /** How many days a cartridge may be used once it was opened; null where the sheet states none. */
  readonly openedDays: number | null;
}
