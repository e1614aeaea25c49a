import { cartridgeFact, labelFrom, oddFigure } from './cartridge-facts.js';
import type { EnteredFigure, JobCommand } from './commands.js';
import { freeWalkFor, walkFor, type Walk } from './course-for.js';
import { refuse, type Decision, type NewFact, type Note, type Situation } from './decision.js';
import type { Cure } from './job.js';
import { isBegunBy, strictest } from './opened-days.js';
import { isOver } from './outlook.js';
import { isLabelFigure, type ProcedureStep } from './procedure.js';
import type { Refusal } from './refusal.js';
import { fittingFigure, stepToEnter } from './step-entering.js';
import { stepsAt } from './step-state.js';
import { cureFor } from './subject.js';

type Enter = Extract<JobCommand, { readonly kind: 'enter' }>;

/**
 * A figure goes to the step that asks for it; a label that is out of date holds that step. What stands on a cartridge stays
 * with the bead that was laid from it, and where no step asks, with that alone.
 */
export function decideEnter(command: Enter, situation: Situation): Decision {
  const figures = [{ what: command.what, text: command.text }, ...(command.more ?? [])];
  const found = walkFor(command, situation);
  const steps = found.ok ? figures.map((figure) => stepToEnter({ ...command, ...figure }, stepsAt(found.course, situation.now))) : [];
  if (!found.ok || steps.every((step) => step === null)) return ofCure(command, figures, found.ok ? { code: 'not-asked-for', job: found.job.no, what: command.what } : found.refusal, situation);
  const walk = freeWalkFor(command, situation);
  return walk.ok ? ofSteps(figures, steps, walk, situation) : refuse(walk.refusal);
}

function ofSteps(figures: readonly EnteredFigure[], steps: readonly (ProcedureStep | null)[], { job: { no }, outlooks }: Walk, situation: Situation): Decision {
  const facts: NewFact[] = [];
  const notes: Note[] = [];
  for (const [index, figure] of figures.entries()) {
    const step = steps[index] ?? null;
    if (step === null) return refuse({ code: 'not-asked-for', job: no, what: figure.what });
    const there = outlooks.map(({ cure }) => cure).filter((cure) => !cure.scrapped && isBegunBy(step, cure.ref.joint));
    const fitting = fittingFigure(figure, { openedDays: strictest(step.openedDays, ...there.map(({ card }) => card.openedDays)) }, situation);
    if (fitting === null) return refuse({ code: 'odd-figure', what: figure.what, text: figure.text });
    facts.push({ job: no, happenedAt: situation.now, fact: { type: 'step-entered', step: step.id, what: figure.what, text: fitting.text } });
    notes.push(...fitting.notes);
    const laid = outlooks.findLast((outlook) => !isOver(outlook) && there.includes(outlook.cure))?.cure;
    if (laid !== undefined && isLabelFigure(figure.what)) facts.push(...aboutCure([{ what: figure.what, text: fitting.text }], laid, situation));
  }
  return { ok: true, facts, about: null, notes };
}

/** Without a step that asks for it: only what stands on a cartridge, and only where something was laid from it. */
function ofCure(command: Enter, figures: readonly EnteredFigure[], otherwise: Refusal, situation: Situation): Decision {
  if (!figures.every(({ what }) => isLabelFigure(what))) return refuse(otherwise);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal.code === 'which-job' || found.refusal.code === 'which-joint' ? found.refusal : otherwise);
  const odd = oddFigure(figures, situation);
  if (odd !== null) return refuse(odd);
  const { cure } = found.outlook;
  return { ok: true, facts: aboutCure(figures, cure, situation), about: { job: cure.job, cure: cure.ref }, notes: [] };
}

function aboutCure(figures: readonly EnteredFigure[], { job, ref }: Cure, { now }: Situation): NewFact[] {
  const label = labelFrom(figures.map(({ what, text }) => ({ what, text: text.trim() })));
  return label === null ? [] : [cartridgeFact(label, { job, cure: ref }, now)];
}
