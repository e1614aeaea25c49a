import type { CureCommand } from './commands.js';
import { walkOf, type Walk } from './course-for.js';
import { refuse, type Decision, type Situation } from './decision.js';
import type { JointNo } from './ids.js';
import { inCelsius } from './decide-lamp.js';
import { lineOf } from './line-of.js';
import { isUnderWay } from './step-state.js';

type Read = Extract<CureCommand, { readonly kind: 'read' }>;

/**
 * A reading of a joint on which nothing cures any more, or not yet: it counts for the steps of the procedure that ask how
 * warm the joint is. Null: the job walks through no procedure, or nobody can tell which joint is meant.
 */
export function readForStep(command: Read, situation: Situation): Decision | null {
  const no = command.job ?? situation.thread;
  const walk = no === null ? null : walkOf(no, situation);
  if (walk === null || !isUnderWay(walk.course)) return null;
  const job = walk.job.no;
  const joints = command.joint === null ? jointsMeant(walk) : [command.joint];
  const [joint, ...others] = joints;
  if (joint === undefined) return null;
  if (others.length > 0) return refuse({ code: 'which-joint', job, choices: joints.map((one) => ({ joint: one, line: lineOf({ ...command, job, joint: one }) })) });
  const value = inCelsius(command.value, situation);
  return {
    ok: true,
    facts: [{ job, happenedAt: command.when.latest, fact: { type: 'reading', joint, value, typed: command.value, method: command.method } }],
    about: null,
    notes: command.method === 'bare' ? [{ note: 'bare-metal' }] : [],
  };
}

/** Those that a step waits to be cold, else those of the car. */
function jointsMeant({ course, outlooks }: Walk): JointNo[] {
  const asked = course.steps.flatMap(({ step, passes }) => (passes.length > 0 ? [] : step.needs.flatMap((need) => (need.need === 'joint-below' ? [need.joint] : []))));
  const there = asked.length > 0 ? asked : outlooks.filter(({ cure }) => !cure.scrapped).map(({ cure }) => cure.ref.joint);
  return [...new Set(there)];
}
