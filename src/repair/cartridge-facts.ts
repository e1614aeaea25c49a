import type { CartridgeLabel, EnteredFigure } from './commands.js';
import { walkOf } from './course-for.js';
import type { CureRef } from './cure-ref.js';
import type { NewFact, Situation } from './decision.js';
import type { JobFact } from './facts.js';
import type { JobNo } from './ids.js';
import { isBegunBy } from './opened-days.js';
import { isLabelFigure, LABEL_FIGURES, type LabelFigure, type ProcedureStep } from './procedure.js';
import type { Refusal } from './refusal.js';
import { fittingFigure } from './step-entering.js';
import type { Instant } from '../cure/units.js';

/** What was typed of a label, one figure after the other. */
export const figuresOf = (label: CartridgeLabel | undefined): EnteredFigure[] =>
  label === undefined ? [] : LABEL_FIGURES.flatMap((what) => (label[what] === null ? [] : [{ what, text: label[what] }]));

/** The same back; what was not said is null. */
export function labelFrom(figures: readonly EnteredFigure[]): CartridgeLabel | null {
  const text = (what: LabelFigure): string | null => figures.find((one) => one.what === what)?.text ?? null;
  return figures.some(({ what }) => isLabelFigure(what)) ? { batch: text('batch'), expiry: text('expiry'), opened: text('opened') } : null;
}

/** A date that nobody can read, or that is still to come for a cartridge that is open. */
export function oddFigure(figures: readonly EnteredFigure[], situation: Situation): Refusal | null {
  const odd = figures.find((one) => fittingFigure(one, { openedDays: null }, situation) === null);
  return odd === undefined ? null : { code: 'odd-figure', what: odd.what, text: odd.text };
}

export const cartridgeFact = (label: CartridgeLabel, { job, cure }: { readonly job: JobNo; readonly cure: CureRef }, happenedAt: Instant): NewFact => ({ job, happenedAt, fact: { type: 'cartridge', cure, ...label } });

/**
 * What is known of the cartridge when the bead is laid: typed with it, or entered for the step of the procedure before.
 * What was typed goes to the step that asks for it as well. What the foreman has let go on is not asked again.
 */
export function laidFrom(label: CartridgeLabel | undefined, about: { readonly job: JobNo; readonly cure: CureRef }, at: Instant, situation: Situation): NewFact[] {
  const typed = figuresOf(label);
  const steps = bondSteps(about, situation);
  const told = steps.filter(({ overridden }) => !overridden).flatMap(({ figures }) => figures);
  const all = [...typed, ...told.filter(({ what }) => !typed.some((one) => one.what === what))];
  const known = labelFrom(all);
  const asked = typed.flatMap((figure) => (steps.some(({ step }) => step.enter.includes(figure.what)) ? steps.filter(({ step }) => step.enter.includes(figure.what)).slice(0, 1).map(({ step }) => enteredFor(step, figure)) : []));
  return [...(known === null ? [] : [cartridgeFact(known, about, at)]), ...asked.map((fact): NewFact => ({ job: about.job, happenedAt: at, fact }))];
}

const enteredFor = ({ id }: ProcedureStep, { what, text }: EnteredFigure): JobFact => ({ type: 'step-entered', step: id, what, text: text.trim() });

interface BondStep {
  readonly step: ProcedureStep;
  /** What was entered for the doing that is to come. */
  readonly figures: readonly EnteredFigure[];
  readonly overridden: boolean;
}

/** Steps of the job's procedure in which a bead is laid on this joint, and that are not done yet. */
function bondSteps({ job, cure: { joint } }: { readonly job: JobNo; readonly cure: CureRef }, situation: Situation): BondStep[] {
  const walk = walkOf(job, situation);
  if (walk === null) return [];
  return walk.course.steps.filter(({ step, passes }) => isBegunBy(step, joint) && passes.length === 0).map(({ step, doings }) => {
    const next = doings.at(-1);
    return { step, figures: LABEL_FIGURES.flatMap((what) => figureOf(what, next?.figures.get(what)?.text)), overridden: (next?.overrides.length ?? 0) > 0 };
  });
}

const figureOf = (what: LabelFigure, text: string | undefined): EnteredFigure[] => (text === undefined ? [] : [{ what, text }]);
