import { bansOn, carBans, deedStep } from './car-bans.js';
import type { JobCommand } from './commands.js';
import { beginChoices, freeWalkFor, heldRefusal, unknownJob, walkOf, type Walk } from './course-for.js';
import { missingFigures, missingTaps, openBlocks } from './course.js';
import { outlooksOf } from './book.js';
import { refuse, type Decision, type NewFact, type Note, type Situation } from './decision.js';
import type { JobFact } from './facts.js';
import type { JobNo } from './ids.js';
import { jobHoldOf } from './job-hold.js';
import type { Job } from './job.js';
import { lineOf } from './line-of.js';
import { foremanOf, isForeman, knownRole } from './people.js';
import { procedureCalled } from './procedure-words.js';
import type { ProcedureStep } from './procedure.js';
import type { Refusal } from './refusal.js';
import { chosenStep, mayDo, rolesFor, tapChoices } from './step-choice.js';
import type { Doing } from './step-doings.js';
import { fittingFigure, stepToEnter } from './step-entering.js';
import { isThrough, isUnderWay, stepsAt, type StepAt } from './step-state.js';
import { whichJob } from './subject.js';
import { untimely } from './timely.js';
import type { Instant } from '../cure/units.js';

type Of<K extends JobCommand['kind']> = Extract<JobCommand, { readonly kind: K }>;

const HOLDERS = ['foreman', 'quality'] as const;
const LIFTED_BY_WORD = ['fill', 'bake', 'sand'] as const;

const stored = (job: JobNo, at: Instant, facts: readonly JobFact[], notes: readonly Note[] = []): Decision => ({
  ok: true,
  facts: facts.map((fact): NewFact => ({ job, happenedAt: at, fact })),
  about: null,
  notes,
});

/** A procedure is frozen into a job; none is begun while another is under way. */
export function decideBegin(command: Of<'begin'>, situation: Situation): Decision {
  const job = command.job ?? situation.thread;
  if (job === null) return refuse(whichJob(command, situation));
  const known = situation.book.job(job);
  const held = known === null ? null : heldRefusal(known, situation);
  if (held !== null) return refuse(held);
  const walk = walkOf(job, situation);
  if (walk !== null && isUnderWay(walk.course)) return refuse({ code: 'procedure-runs', job, procedure: walk.course.procedure.name, since: walk.course.begun.at });
  if (situation.procedures.length === 0) return refuse({ code: 'no-procedures' });
  const procedure = procedureCalled(command.procedure, situation.procedures);
  if (procedure === null) return refuse({ code: 'which-procedure', job, typed: command.procedure, choices: beginChoices(job, situation) });
  return stored(job, situation.now, [{ type: 'procedure-begun', procedure }]);
}

/** Somebody says that a step is done; only in its turn, with its taps and figures. */
export function decideDone(command: Of<'done'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const walk = freeWalkFor(command, situation);
  if (!walk.ok) return refuse(walk.refusal);
  const role = knownRole(situation.shop, situation.by);
  const chosen = chosenStep(command, walk, stepsAt(walk.course, situation.now), (one) => waitsForWord(one) && mayDo(role, one.step));
  if (!chosen.ok) return refuse(chosen.refusal);
  const { step, state } = chosen.one;
  const job = walk.job.no;
  const already = alreadyDone(chosen.one, walk, situation);
  if (already !== null) return already;
  const letGo = state.is === 'open' && state.override !== null;
  if (step.done.by !== 'word' && !letGo) return refuse({ code: 'step-by-book', job, step });
  if (!mayDo(role, step)) return refuse({ code: 'step-role', job, step, may: rolesFor(step) });
  const moment = momentOf(command, step, walk);
  if (typeof moment !== 'number') return refuse(moment);
  const problem = notYet(step, moment, walk);
  return problem === null ? stored(job, moment, [{ type: 'step-done', step: step.id }]) : refuse(problem);
}

/** Steps that become done by somebody's word, and wait for it. */
const waitsForWord = ({ step, state }: StepAt): boolean => state.is === 'open' && state.work === null && (step.done.by === 'word' || state.override !== null);

function alreadyDone({ step, state }: StepAt, walk: Walk, situation: Situation): Decision | null {
  if (state.is === 'blocked' || (state.is === 'open' && state.work === null)) return null;
  const job = walk.job.no;
  if (state.is === 'open') {
    const left = missingRefusal(job, step, state.missing.taps, state.missing.enter);
    if (left !== null) return refuse(left);
  }
  const mark = state.is === 'open' ? state.work : state;
  return stored(job, situation.now, [], mark === null ? [] : [{ note: 'step-already', step: step.id, by: mark.by, at: mark.at }]);
}

function missingRefusal(job: JobNo, step: ProcedureStep, taps: readonly number[], enter: Extract<Refusal, { code: 'step-missing' }>['enter']): Refusal | null {
  return taps.length === 0 && enter.length === 0 ? null : { code: 'step-missing', job, step, taps: tapChoices(job, step, taps), enter };
}

/** Why a step may not have been done at that moment; null: nothing is left. */
function notYet(step: ProcedureStep, at: Instant, { job, course }: Walk): Refusal | null {
  const doing = nextDoing(step, course);
  if (doing === null) return null;
  const blocks = openBlocks(step, doing, at, course.ground).map(({ block }) => block);
  if (blocks.length > 0) return { code: 'step-blocked', job: job.no, step, blocks };
  return missingRefusal(job.no, step, missingTaps(step, doing), missingFigures(step, doing, at, course.ground));
}

const nextDoing = ({ id }: ProcedureStep, course: Walk['course']): Doing | null => course.steps.find(({ step }) => step.id === id)?.doings.at(-1) ?? null;

/** Of `20-30 min ago` a wait counts from the later end, and what has to follow soon from the earlier one. */
function momentOf(command: Of<'done'>, step: ProcedureStep, { job, course }: Walk): Instant | Refusal {
  const { earliest, latest } = command.when;
  const waits = (need: 'within' | 'not-before'): boolean => course.procedure.steps.some((other) => other.needs.some((one) => one.need === need && 'step' in one && one.step === step.id));
  if (earliest === latest || !waits('within')) return latest;
  if (!waits('not-before')) return earliest;
  const lineAt = (at: Instant): string => lineOf({ ...command, job: job.no, step: step.id, when: { earliest: at, latest: at, stated: true, confirmed: command.when.confirmed } });
  return { code: 'one-moment', job: job.no, earliest, latest, earliestLine: lineAt(earliest), latestLine: lineAt(latest) };
}

/** A hold point is signed by one of those who may; where only somebody's word was missing, signing gives it. */
export function decideSign(command: Of<'sign'>, situation: Situation): Decision {
  const walk = freeWalkFor(command, situation);
  if (!walk.ok) return refuse(walk.refusal);
  const role = knownRole(situation.shop, situation.by);
  const chosen = chosenStep(command, walk, stepsAt(walk.course, situation.now), ({ step, state }) => state.is === 'open' && state.missing.sign && state.work !== null && role !== null && step.sign?.includes(role) === true);
  if (!chosen.ok) return refuse(chosen.refusal);
  const { step, state } = chosen.one;
  const job = walk.job.no;
  if (step.sign === null) return refuse({ code: 'no-hold-point', job, step });
  if (isThrough(chosen.one)) return alreadyDone(chosen.one, walk, situation) ?? refuse({ code: 'not-done-yet', job, step });
  if (role === null || !step.sign.includes(role)) return refuse({ code: 'step-role', job, step, may: step.sign });
  if (state.is === 'blocked') return refuse({ code: 'step-blocked', job, step, blocks: state.blocks });
  if (state.is !== 'open') return refuse({ code: 'not-done-yet', job, step });
  if (state.work === null && (step.done.by !== 'word' || !mayDo(role, step))) return refuse({ code: 'not-done-yet', job, step });
  const left = missingRefusal(job, step, state.missing.taps, state.missing.enter);
  if (left !== null) return refuse(left);
  const signed: JobFact = { type: 'step-signed', step: step.id, role };
  return stored(job, situation.now, state.work === null ? [{ type: 'step-done', step: step.id }, signed] : [signed]);
}

/** One of the things that a named person has to say about a step. */
export function decideTap(command: Of<'tap'>, situation: Situation): Decision {
  const walk = freeWalkFor(command, situation);
  if (!walk.ok) return refuse(walk.refusal);
  const chosen = chosenStep(command, walk, stepsAt(walk.course, situation.now), ({ state }) => state.is === 'open' && state.missing.taps.length > 0);
  if (!chosen.ok) return refuse(chosen.refusal);
  const { step, state } = chosen.one;
  const job = walk.job.no;
  if (step.taps[command.tap] === undefined) return refuse({ code: 'unknown-tap', job, step, taps: tapChoices(job, step, step.taps.map((_, tap) => tap)) });
  if (state.is === 'blocked' && !state.blocks.every(({ why }) => why === 'out-of-turn' || why === 'expired')) return refuse({ code: 'step-blocked', job, step, blocks: state.blocks });
  if (isThrough(chosen.one) || (state.is === 'open' && !state.missing.taps.includes(command.tap))) return stored(job, situation.now, [], [{ note: 'already-so' }]);
  return stored(job, situation.now, [{ type: 'step-tapped', step: step.id, tap: command.tap }]);
}

/** A figure goes to the step that asks for it; a label that is out of date holds that step. */
export function decideEnter(command: Of<'enter'>, situation: Situation): Decision {
  const walk = freeWalkFor(command, situation);
  if (!walk.ok) return refuse(walk.refusal);
  const job = walk.job.no;
  const step = stepToEnter(command, stepsAt(walk.course, situation.now));
  if (step === null) return refuse({ code: 'not-asked-for', job, what: command.what });
  const figure = fittingFigure(command, situation);
  if (figure === null) return refuse({ code: 'odd-figure', what: command.what, text: command.text });
  return stored(job, situation.now, [{ type: 'step-entered', step: step.id, what: command.what, text: figure.text }], figure.notes);
}

/** The foreman, or whoever looks at quality, stops a whole job. */
export function decideHold(command: Of<'hold'>, situation: Situation): Decision {
  const role = knownRole(situation.shop, situation.by);
  if (role === null || !HOLDERS.some((one) => one === role)) return refuse({ code: 'wrong-role', role: role ?? 'apprentice', may: HOLDERS });
  const job = command.job ?? situation.thread;
  if (job === null) return refuse(whichJob(command, situation));
  const known = situation.book.job(job);
  if (known === null) return refuse(unknownJob(command, job, situation));
  if (!isReason(command.reason)) return refuse({ code: 'reason-missing' });
  if (jobHoldOf(known) !== null) return stored(job, situation.now, [], [{ note: 'already-so' }]);
  return stored(job, situation.now, [{ type: 'job-held', reason: command.reason }]);
}

/** The foreman lets one thing go on that stands against the rule, by name and with a reason. */
export function decideOverride(command: Of<'override'>, situation: Situation): Decision {
  if (!isForeman(situation.shop, situation.by)) return refuse({ code: 'foreman-only', foreman: foremanOf(situation.shop) });
  if (!isReason(command.reason)) return refuse({ code: 'reason-missing' });
  const deed = deedOverride(command, situation);
  if (deed !== null) return deed;
  const walk = freeWalkFor(command, situation);
  if (!walk.ok) return refuse(walk.refusal);
  const chosen = chosenStep(command, walk, stepsAt(walk.course, situation.now), isHeldByMore);
  if (!chosen.ok) return refuse(chosen.refusal);
  const { step, state } = chosen.one;
  const unsigned = state.is === 'open' && state.work !== null && state.missing.sign;
  if (state.is !== 'blocked' && !unsigned) return refuse({ code: 'nothing-held', job: walk.job.no });
  return stored(walk.job.no, situation.now, [{ type: 'step-overridden', step: step.id, reason: command.reason }]);
}

/** Waits for something else than the step before it, or for a signature. */
const isHeldByMore = ({ state }: StepAt): boolean =>
  state.is === 'blocked' ? state.blocks.every(({ why }) => why !== 'step') : state.is === 'open' && state.work !== null && state.missing.sign;

/** `override 501 fill reason`: a hold across the car that no step of the procedure stands for. */
function deedOverride(command: Of<'override'>, situation: Situation): Decision | null {
  const no = command.job ?? situation.thread;
  const job = no === null ? null : situation.book.job(no);
  const deed = LIFTED_BY_WORD.find((one) => one === command.step?.toLowerCase());
  if (job === null || deed === undefined || isStepOf(deed, job.no, situation)) return null;
  const held = heldRefusal(job, situation);
  if (held !== null) return refuse(held);
  if (heldDeeds(job, situation, deed) === 0) return refuse({ code: 'nothing-held', job: job.no });
  return stored(job.no, situation.now, [{ type: 'step-overridden', step: deedStep(deed), reason: command.reason }]);
}

const isStepOf = (deed: (typeof LIFTED_BY_WORD)[number], no: JobNo, situation: Situation): boolean => walkOf(no, situation)?.course.procedure.steps.some(({ id }) => id === deedStep(deed)) === true;

const heldDeeds = (job: Job, { shop, book }: Situation, deed: (typeof LIFTED_BY_WORD)[number]): number =>
  bansOn(deed, carBans(job, outlooksOf(job, shop, book.air))).filter(({ grade }) => grade === 'hold').length;

/** A dot or `ok` explains nothing a year later. */
const isReason = (reason: string): boolean => (reason.match(/\p{L}/gu) ?? []).length >= 3;
