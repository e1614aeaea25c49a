import type { JobCommand } from './commands.js';
import { beginChoices, freeWalkFor, heldRefusal, walkOf, type Walk } from './course-for.js';
import { missingFigures, missingTaps, openBlocks } from './course.js';
import { refuse, type Decision, type NewFact, type Note, type Situation } from './decision.js';
import type { JobFact } from './facts.js';
import type { JobNo } from './ids.js';
import { lineOf } from './line-of.js';
import { knownRole } from './people.js';
import { procedureCalled } from './procedure-words.js';
import type { ProcedureStep } from './procedure.js';
import type { Refusal } from './refusal.js';
import { chosenStep, mayDo, rolesFor, tapChoices } from './step-choice.js';
import { askAgain, chosenAgain, isRepeat, saysAgain } from './step-again.js';
import type { Doing } from './step-doings.js';
import { isRepeatable, isThrough, isUnderWay, stepsAt, type StepAt } from './step-state.js';
import { whichJob } from './subject.js';
import { untimely } from './timely.js';
import { minutes, plus, type Instant } from '../cure/units.js';

type Of<K extends JobCommand['kind']> = Extract<JobCommand, { readonly kind: K }>;

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
  const chosen = chosenAgain(command, walk, stepsAt(walk.course, situation.now), (one) => waitsForWord(one) && mayDo(role, one.step));
  if (!chosen.ok) return refuse(chosen.refusal);
  const { step, state } = chosen.one;
  const job = walk.job.no;
  const repeat = isRepeat(chosen.one, command.when.latest, walk, situation.now);
  if (repeat && !command.when.confirmed && !saysAgain(command.step, step)) return refuse(askAgain(chosen.one, command, job));
  const already = repeat ? null : alreadyDone(chosen.one, walk, situation);
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
  if (state.is === 'blocked' && !state.blocks.every(({ why }) => why === 'out-of-turn' || why === 'expired' || why === 'opened')) return refuse({ code: 'step-blocked', job, step, blocks: state.blocks });
  const again = isThrough(chosen.one) && isTapAgain(step, command.tap, walk, situation.now);
  if (!again && (isThrough(chosen.one) || (state.is === 'open' && !state.missing.taps.includes(command.tap)))) return stored(job, situation.now, [], [{ note: 'already-so' }]);
  return stored(job, situation.now, [{ type: 'step-tapped', step: step.id, tap: command.tap }]);
}

/** Two people say the same within so long: that is one answer. */
const SAME_TAP = minutes(2);

/** About a step that may be done once more before its time has run out. */
function isTapAgain({ id }: ProcedureStep, tap: number, { course }: Walk, now: Instant): boolean {
  const doings = course.steps.find(({ step }) => step.id === id)?.doings ?? [];
  const said = doings.at(-2)?.taps.get(tap);
  return said !== undefined && doings.at(-1)?.taps.has(tap) === false && now >= plus(said.at, SAME_TAP) && isRepeatable(id, course, now);
}
