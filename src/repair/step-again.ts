import type { Instant } from '../cure/units.js';
import type { JobCommand } from './commands.js';
import type { Walk } from './course-for.js';
import type { JobNo } from './ids.js';
import { lineOf } from './line-of.js';
import type { ProcedureStep } from './procedure.js';
import type { Refusal } from './refusal.js';
import { chosenStep, type Chosen } from './step-choice.js';
import type { Mark } from './step-doings.js';
import { isRepeatable, type StepAt } from './step-state.js';
import { plain } from './step-words.js';

type Done = Extract<JobCommand, { readonly kind: 'done' }>;

const AGAIN = /^(.*\S)\s+(?:once more|again|nochmals?|noch einmal|erneut|otra vez|de nuevo)$/iu;

/** The step that was typed; `clean again` is the step `clean`, unless one is called that. */
export function chosenAgain(command: Done, walk: Walk, steps: readonly StepAt[], fits: (one: StepAt) => boolean): Chosen {
  const chosen = chosenStep(command, walk, steps, fits);
  const [, without] = AGAIN.exec(command.step ?? '') ?? [];
  return chosen.ok || without === undefined ? chosen : chosenStep({ ...command, step: without }, walk, steps, fits);
}

/** Somebody says that they have done it once more. */
export const saysAgain = (typed: string | null, { id }: ProcedureStep): boolean => typed !== null && AGAIN.test(typed) && plain(typed) !== plain(id);

/**
 * It was done, and somebody says later that it is: the surface may have been cleaned once more before its time ran out,
 * and that time then begins anew. What must follow soon errs early, so it is never taken to be so.
 */
export function isRepeat({ step, state }: StepAt, at: Instant, { course }: Walk, now: Instant): boolean {
  const mark = markOf(state);
  return mark !== null && step.done.by === 'word' && at > mark.at && isRepeatable(step.id, course, now);
}

/** Cleaned again, or only said twice? */
export function askAgain({ step, state }: StepAt, command: Done, job: JobNo): Refusal {
  const mark = markOf(state);
  const line = lineOf({ ...command, job, step: step.id, when: { ...command.when, stated: true, confirmed: true } });
  return mark === null ? { code: 'not-done-yet', job, step } : { code: 'step-again', job, step, by: mark.by, at: mark.at, line };
}

function markOf(state: StepAt['state']): Pick<Mark, 'at' | 'by'> | null {
  switch (state.is) {
    case 'done':
      return state;
    case 'signed':
    case 'overridden':
      return state.done;
    default:
      return null;
  }
}
