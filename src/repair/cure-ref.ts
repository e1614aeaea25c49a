import type { JointNo } from './ids.js';

/** A cure is one card on one joint; `run` counts up when the same card is started again there. */
export interface CureRef {
  readonly joint: JointNo;
  readonly card: string;
  readonly run: number;
}

export const sameCure = (one: CureRef, other: CureRef): boolean => one.joint === other.joint && one.card === other.card && one.run === other.run;
