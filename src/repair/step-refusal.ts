import type { Instant } from '../cure/units.js';
import type { JobNo, PersonId } from './ids.js';
import type { JobHold } from './job-hold.js';
import type { Entering, ProcedureStep } from './procedure.js';
import type { Role } from './shop.js';
import type { Block } from './step-needs.js';
import type { Unfinished } from './unfinished.js';

interface Choice {
  readonly label: string;
  readonly line: string;
}

/** Why something about the steps of a job was not carried out; nothing is stored. */
export type StepRefusal =
  | { readonly code: 'which-procedure'; readonly job: JobNo; readonly typed: string | null; readonly choices: readonly Choice[] }
  | { readonly code: 'no-procedures' }
  | { readonly code: 'procedure-runs'; readonly job: JobNo; readonly procedure: string; readonly since: Instant }
  | { readonly code: 'no-procedure'; readonly job: JobNo; readonly choices: readonly Choice[] }
  /** Nobody said for which job, and no job has begun a procedure. */
  | { readonly code: 'nothing-begun' }
  /** `typed` null: several could be meant. */
  | { readonly code: 'which-step'; readonly job: JobNo; readonly typed: string | null; readonly choices: readonly Choice[] }
  | { readonly code: 'nothing-open'; readonly job: JobNo; readonly blocked: { readonly step: ProcedureStep; readonly blocks: readonly Block[] } | null }
  | { readonly code: 'step-blocked'; readonly job: JobNo; readonly step: ProcedureStep; readonly blocks: readonly Block[] }
  | { readonly code: 'step-role'; readonly job: JobNo; readonly step: ProcedureStep; readonly may: readonly Role[] }
  /** Taps and figures that are left; `taps` as buttons. */
  | { readonly code: 'step-missing'; readonly job: JobNo; readonly step: ProcedureStep; readonly taps: readonly Choice[]; readonly enter: readonly Entering[] }
  /** Done, and its time has not run out: done once more, or only said twice? */
  | { readonly code: 'step-again'; readonly job: JobNo; readonly step: ProcedureStep; readonly by: PersonId; readonly at: Instant; readonly line: string }
  /** The book shows it by itself. */
  | { readonly code: 'step-by-book'; readonly job: JobNo; readonly step: ProcedureStep }
  | { readonly code: 'no-hold-point'; readonly job: JobNo; readonly step: ProcedureStep }
  | { readonly code: 'not-done-yet'; readonly job: JobNo; readonly step: ProcedureStep }
  | { readonly code: 'unknown-tap'; readonly job: JobNo; readonly step: ProcedureStep; readonly taps: readonly Choice[] }
  | { readonly code: 'not-asked-for'; readonly job: JobNo; readonly what: Entering }
  | { readonly code: 'odd-figure'; readonly what: Entering; readonly text: string }
  | { readonly code: 'reason-missing' }
  /** A wait counts from the later end, a limit from the earlier one: this step has both. */
  | { readonly code: 'one-moment'; readonly job: JobNo; readonly earliest: Instant; readonly latest: Instant; readonly earliestLine: string; readonly latestLine: string }
  | { readonly code: 'job-held'; readonly job: JobNo; readonly hold: JobHold; readonly foreman: PersonId | 'channel' }
  /** Filler over a bond that nobody confirmed. */
  | { readonly code: 'bond-unconfirmed'; readonly job: JobNo; readonly card: string; readonly waits: Unfinished; readonly foreman: PersonId | 'channel' };

const CODES: Readonly<Record<StepRefusal['code'], true>> = {
  'which-procedure': true,
  'no-procedures': true,
  'procedure-runs': true,
  'no-procedure': true,
  'nothing-begun': true,
  'which-step': true,
  'nothing-open': true,
  'step-blocked': true,
  'step-role': true,
  'step-missing': true,
  'step-again': true,
  'step-by-book': true,
  'no-hold-point': true,
  'not-done-yet': true,
  'unknown-tap': true,
  'not-asked-for': true,
  'odd-figure': true,
  'reason-missing': true,
  'one-moment': true,
  'job-held': true,
  'bond-unconfirmed': true,
};

export const isStepRefusal = (refusal: { readonly code: string }): refusal is StepRefusal => refusal.code in CODES;
