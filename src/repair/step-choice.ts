import type { JobCommand } from './commands.js';
import type { Walk } from './course-for.js';
import type { JobNo } from './ids.js';
import { lineOf } from './line-of.js';
import { blockedOf } from './next-steps.js';
import type { ProcedureStep } from './procedure.js';
import type { Refusal } from './refusal.js';
import type { Role } from './shop.js';
import { isThrough, type StepAt } from './step-state.js';
import { stepsCalled } from './step-words.js';

type OnStep = Extract<JobCommand, { readonly step: string | null }>;
export type Chosen = { readonly ok: true; readonly one: StepAt } | { readonly ok: false; readonly refusal: Refusal };

const MOST_CHOICES = 4;
const RANK: Readonly<Record<Role, number>> = { apprentice: 0, technician: 1, foreman: 2, quality: -1, owner: -1 };

/** At least the role that the step asks for; quality and owner do no work at the car. */
export const mayDo = (role: Role | null, step: ProcedureStep): boolean => role !== null && RANK[role] >= RANK[step.role];

/** Everyone who may, from the least on. */
export const rolesFor = (step: ProcedureStep): Role[] => (['apprentice', 'technician', 'foreman'] as const).filter((role) => mayDo(role, step));

/** The step that was typed, or without one the only step that `fits`. Never a guess between two. For a word that is no step, those that `offers` are shown. */
export function chosenStep(command: OnStep, { job: { no }, course }: Walk, steps: readonly StepAt[], fits: (one: StepAt) => boolean, offers = (one: StepAt): boolean => fits(one) || (!isThrough(one) && course.steps.length <= MOST_CHOICES)): Chosen {
  const found = command.step === null ? steps.filter(fits) : stepsCalled(command.step, command.joint, steps);
  const [only] = found;
  if (only !== undefined && found.length === 1) return { ok: true, one: only };
  if (only === undefined && command.step === null) return { ok: false, refusal: { code: 'nothing-open', job: no, blocked: firstBlocked(steps) } };
  const offered = only === undefined ? steps.filter(offers) : found;
  return { ok: false, refusal: { code: 'which-step', job: no, typed: only === undefined ? command.step : null, choices: offered.slice(0, MOST_CHOICES).map(({ step }) => ({ label: step.id, line: lineOf({ ...command, job: no, step: step.id }) })) } };
}

function firstBlocked(steps: readonly StepAt[]): Extract<Refusal, { code: 'nothing-open' }>['blocked'] {
  const [first] = steps.flatMap(blockedOf);
  return first === undefined ? null : { step: first.step, blocks: first.state.blocks };
}

/** A button for each tap that is left. */
export const tapChoices = (job: JobNo, step: ProcedureStep, taps: readonly number[]): { readonly label: string; readonly line: string }[] =>
  taps.flatMap((tap) => {
    const label = step.taps[tap];
    return label === undefined ? [] : [{ label, line: lineOf({ kind: 'tap', job, joint: null, step: step.id, tap }) }];
  });
