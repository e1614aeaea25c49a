import type { JointNo } from './ids.js';
import type { ProcedureStep } from './procedure.js';

/** The earlier of what card and procedure allow for an opened cartridge, in days; null: neither says so. */
export function strictest(...days: readonly (number | null)[]): number | null {
  const stated = days.flatMap((one) => one ?? []);
  return stated.length === 0 ? null : Math.min(...stated);
}

/** A bead is laid in this step, on that joint. */
export const isBegunBy = ({ done, joint }: ProcedureStep, there: JointNo): boolean => done.by === 'entry' && done.entry !== 'lamp-set' && (joint === null || joint === there);
