import { waysRound, reachedFrom, type Links } from './procedure-links.js';
import type { JointNo, StepId } from './ids.js';
import type { DoneBy, Need, ProcedureStep } from './procedure.js';

/** What is wrong between the steps of a procedure. */
export interface OrderProblem {
  /** Counted from 0. */
  readonly step: number;
  /** The field of the step as a shop writes it, and the member of it that is meant; empty: the step itself. */
  readonly field: readonly string[];
  readonly message: string;
  /** Words that would have been right, and the word that was written. */
  readonly known: { readonly known: readonly string[]; readonly typed: string } | null;
}

/** Everything that keeps the steps of a procedure from being gone through, in their order. */
export function orderProblems(steps: readonly ProcedureStep[]): readonly OrderProblem[] {
  const named = [...doubledSteps(steps), ...steps.flatMap((step, index) => [...strangers(step, index, steps), ...entryProblems(step, index, steps)])];
  // An order can only be followed when every name in it means one step.
  if (named.length > 0) return named;
  const links = linksOf(steps);
  return [...circles(steps, links), ...earlyBans(steps, links)];
}

const problem = (step: number, field: readonly string[], message: string, known: OrderProblem['known'] = null): OrderProblem => ({ step, field, message, known });

function doubledSteps(steps: readonly ProcedureStep[]): OrderProblem[] {
  return steps.flatMap(({ id }, index) => {
    const first = steps.findIndex((step) => step.id === id);
    return first === index ? [] : [problem(index, ['step'], `${id} is the name of step no. ${first + 1} already: give this one another`)];
  });
}

function strangers(step: ProcedureStep, index: number, steps: readonly ProcedureStep[]): OrderProblem[] {
  const ids = steps.map(({ id }) => id);
  const joints = [...new Set(steps.flatMap(({ joint }) => joint ?? []))];
  return step.needs.flatMap((need) => {
    const of = stepNeeded(need);
    if (of !== null && !ids.includes(of.step)) return [problem(index, [of.field, of.step], `${of.step} is no step of this procedure`, { known: ids, typed: of.step })];
    const joint = jointNeeded(need);
    if (joint === null || joints.includes(joint.joint)) return [];
    return [problem(index, [joint.field, joint.joint], `no step is about ${joint.joint}: ${joints.length === 0 ? 'give a step its joint' : `the joints here are ${joints.join(', ')}`}`)];
  });
}

function stepNeeded(need: Need): { readonly field: string; readonly step: StepId } | null {
  if (need.need === 'step') return { field: 'after', step: need.step };
  return need.need === 'within' || need.need === 'not-before' ? { field: need.need, step: need.step } : null;
}

function jointNeeded(need: Need): { readonly field: string; readonly joint: JointNo } | null {
  return need.need === 'confirmed' || need.need === 'joint-below' ? { field: need.need, joint: need.joint } : null;
}

/** An entry of the book is about one joint, and shows that one step is done. */
function entryProblems(step: ProcedureStep, index: number, steps: readonly ProcedureStep[]): OrderProblem[] {
  if (step.done.by === 'word') return [];
  if (step.joint === null) return [problem(index, ['done'], 'is an entry about one joint: write which, such as joint: j1')];
  const same = steps.findIndex((other) => other.joint === step.joint && doneKey(other.done) === doneKey(step.done));
  return same === index ? [] : [problem(index, ['done'], `shows already that ${steps[same]?.id ?? ''} is done, and the book could not tell the two apart: leave it out here, or write another joint`)];
}

const doneKey = (done: DoneBy): string => (done.by === 'entry' ? done.entry : done.by === 'check' ? `check ${done.milestone}` : '');

/** Which steps each step waits for; a confirmed milestone comes from the step that checks it. */
function linksOf(steps: readonly ProcedureStep[]): Links {
  const checks = (need: Need): StepId[] => (need.need === 'confirmed' ? steps.filter(({ joint, done }) => joint === need.joint && done.by === 'check' && done.milestone === need.milestone).map(({ id }) => id) : []);
  return new Map(steps.map(({ id, needs }) => [id, needs.flatMap((need) => stepNeeded(need)?.step ?? checks(need))]));
}

function circles(steps: readonly ProcedureStep[], links: Links): OrderProblem[] {
  return waysRound(links).map((way) => {
    const said = way.map((id, index) => `${id} waits for ${way[index + 1] ?? way[0] ?? id}`).join(', ');
    return problem(steps.findIndex(({ id }) => id === way[0]), [], `goes in a circle: ${said}; take one of them out`);
  });
}

/** After wax nobody welds or bakes, so the order has to bring all of that before it. */
function earlyBans(steps: readonly ProcedureStep[], links: Links): OrderProblem[] {
  return steps.flatMap((step, index) => {
    if (!step.starts.includes('heat-ban')) return [];
    const before = reachedFrom(links, step.id);
    const hot = steps.filter((other) => isHot(other) && !before.has(other.id)).map(({ id }) => id);
    return hot.length === 0 ? [] : [problem(index, ['starts'], `bans heat while ${hot.join(', ')} may still come: write it into after`)];
  });
}

const isHot = ({ starts, cautions }: ProcedureStep): boolean => starts.includes('fire-watch') || cautions.includes('bake');
