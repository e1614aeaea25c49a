import type { MilestoneKind } from '../cure/card.js';
import type { Celsius, Minutes } from '../cure/units.js';
import type { JointNo, StepId } from './ids.js';
import type { Role } from './shop.js';

/** What has to be true before a step may open. */
export type Need =
  | { readonly need: 'step'; readonly step: StepId }
  /** Confirmed by a person, on the joint named. */
  | { readonly need: 'confirmed'; readonly joint: JointNo; readonly milestone: MilestoneKind }
  | { readonly need: 'joint-below'; readonly joint: JointNo; readonly temperature: Celsius }
  /** Metal far enough above the dew point, by readings. */
  | { readonly need: 'dew-margin' }
  /** No longer ago than this; after it the other step has to be done again. */
  | { readonly need: 'within'; readonly step: StepId; readonly minutes: Minutes }
  | { readonly need: 'not-before'; readonly step: StepId; readonly minutes: Minutes }
  /** Nothing on the whole car waits for strength any more, and no fire watch goes on. */
  | { readonly need: 'cures-done' };

/** How a step is known to be done: somebody says so, or the book shows it. */
export type DoneBy =
  | { readonly by: 'word' }
  | { readonly by: 'entry'; readonly entry: 'pasted' | 'closed' | 'lamp-set' }
  | { readonly by: 'check'; readonly milestone: MilestoneKind };

/** What must be entered before a step counts as done. */
export const ENTERINGS = ['batch', 'expiry', 'opened', 'air', 'metal', 'photo'] as const;
export type Entering = (typeof ENTERINGS)[number];

/** What stands on a cartridge. */
export const LABEL_FIGURES = ['batch', 'expiry', 'opened'] as const;
export type LabelFigure = (typeof LABEL_FIGURES)[number];

export const isLabelFigure = (what: Entering): what is LabelFigure => LABEL_FIGURES.some((one) => one === what);

export const CAUTIONS = ['before-work', 'solvent', 'paste', 'clamps', 'weld-wet', 'weld-after', 'fire-watch', 'lamp', 'battery', 'reading', 'clamps-off', 'sanding', 'filler', 'isocyanate', 'bake', 'wax', 'glass'] as const;
export type CautionKind = (typeof CAUTIONS)[number];

/** One step of a repair. Steps without an order between them may go side by side. */
export interface ProcedureStep {
  readonly id: StepId;
  /** null: the whole car. */
  readonly joint: JointNo | null;
  /** What to do, in one line. */
  readonly act: string;
  /** Who may do it at the least. */
  readonly role: Extract<Role, 'apprentice' | 'technician' | 'foreman'>;
  readonly needs: readonly Need[];
  readonly done: DoneBy;
  readonly enter: readonly Entering[];
  /** So many days after it was opened a cartridge is held; null: nobody wrote down how long. */
  readonly openedDays: number | null;
  /** Each has to be tapped by a named person: `both components flow`. */
  readonly taps: readonly string[];
  readonly cautions: readonly CautionKind[];
  /** Hold point: who may sign; null: none. */
  readonly sign: readonly Role[] | null;
  /** Hot work begins a fire watch when it is done; wax bans heat and flame on this car from then on. */
  readonly starts: readonly ('fire-watch' | 'heat-ban')[];
}

/** The order of one kind of repair. Frozen into a job when it begins. */
export interface Procedure {
  readonly name: string;
  readonly title: string;
  readonly version: string;
  /** True for the examples that come with the program. */
  readonly example: boolean;
  readonly steps: readonly ProcedureStep[];
}
