import { outlooksOf } from './book.js';
import type { EntryCommand } from './commands.js';
import { refuse, type Decision, type NewFact, type Situation } from './decision.js';
import { fireWatchFacts, hotWorkBegins, runningWatch } from './fire-watch.js';
import { goingOn } from './hot-work.js';
import type { JobNo, JointNo } from './ids.js';
import { isAdhesive } from './decide-card.js';
import { isOver, type Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import { whichJob } from './subject.js';
import { untimely } from './timely.js';

type Of<K extends EntryCommand['kind']> = Extract<EntryCommand, { readonly kind: K }>;

/** Hot work is about to begin. It is noted whatever stands against it: what is wrong with it is said, and the foreman hears of it. */
export function decideWeld(command: Of<'weld'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const job = jobOf(command, situation);
  if (job === null) return refuse(whichJob(command, situation));
  const joint = command.joint ?? onlyJoint(job, situation);
  const at = command.when.latest;
  const watch = hotWorkBegins(job, joint, at, situation);
  const begun: NewFact = { job, happenedAt: at, fact: { type: 'weld-begun', joint } };
  return { ok: true, facts: [begun, ...watch], about: null, notes: [] };
}

/** `done 501 weld` about no step: the fire watch begins, whether anybody said before that they weld or not. */
export function decideWeldDone(command: Of<'done'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const job = jobOf(command, situation);
  if (job === null) return refuse(whichJob(command, situation));
  const at = command.when.latest;
  const watch = runningWatch(job, situation);
  const hot = watch === null ? [] : goingOn(watch.cure);
  const begun = hot[0]?.at ?? watch?.cure.hotWork.at(-1)?.at ?? null;
  if (begun !== null && at < begun) return refuse({ code: 'before-step', at, step: 'welded', stepAt: begun });
  const joint = command.joint ?? (hot.length > 0 ? null : onlyJoint(job, situation));
  return { ok: true, facts: fireWatchFacts(job, joint, at, situation), about: null, notes: [] };
}

/** A word for welding, as people finish a sentence with it. */
const HOT_WORD = /^(?:weld|hot work|schwei(?:ß|ss)|geschwei|solda)/i;
/** Without these the car has no procedure that a step could belong to. */
const NO_STEPS: readonly Refusal['code'][] = ['no-procedure', 'unknown-job', 'which-job', 'nothing-asked'];

/** What was decided about a step, and the fire watch that begins with it: hot work that was noted can always be ended, whether a step counts or not. */
export function withFireWatch(command: Of<'done'> | Of<'sign'>, decided: Decision, situation: Situation): Decision {
  const watches = decided.ok ? watchesFor(decided.facts, situation) : [];
  if (decided.ok && decided.facts.length > 0) return { ...decided, facts: [...decided.facts, ...watches] };
  if (command.kind !== 'done' || command.step === null || !HOT_WORD.test(command.step.trim())) return decided;
  if (!decided.ok && NO_STEPS.includes(decided.refusal.code) && (decided.refusal.code !== 'unknown-job' || decided.refusal.choices.length === 0)) return decideWeldDone(command, situation);
  const job = jobOf(command, situation);
  const watch = job === null ? null : runningWatch(job, situation);
  if (watch === null || goingOn(watch.cure).length === 0) return decided;
  const over = decideWeldDone(command, situation);
  if (!over.ok) return decided.ok ? over : decided;
  return { ...over, notes: decided.ok ? decided.notes : [{ note: 'step-refused', refusal: decided.refusal }] };
}

/** The fire watches of steps that became done. */
function watchesFor(facts: readonly NewFact[], situation: Situation): NewFact[] {
  return facts.flatMap(({ job, happenedAt, fact }) => {
    if (fact.type !== 'step-done' || job === null) return [];
    const procedures = situation.book.job(job)?.live.flatMap((record) => (record.fact.type === 'procedure-begun' ? [record.fact.procedure] : [])) ?? [];
    const step = procedures.at(-1)?.steps.find(({ id }) => id === fact.step);
    return step?.starts.includes('fire-watch') === true ? fireWatchFacts(job, step.joint, happenedAt, situation) : [];
  });
}

/** The job named, the thread's, or the only one that waits for anything. */
function jobOf(command: Of<'weld'> | Of<'done'>, { thread, book }: Situation): JobNo | null {
  const [only, ...others] = book.openJobs();
  return command.job ?? thread ?? (others.length === 0 ? only ?? null : null);
}

/** Where one joint alone carries glue that still waits, that is the place that is meant. */
function onlyJoint(no: JobNo, { book, shop }: Situation): JointNo | null {
  const job = book.job(no);
  const waiting = job === null ? [] : outlooksOf(job, shop, book.air).filter((outlook) => isAdhesive(outlook.cure.card) && !isOver(outlook));
  const joints = new Set(waiting.map(({ cure }: Outlook) => cure.ref.joint));
  return joints.size === 1 ? ([...joints].at(0) ?? null) : null;
}
