import type { Need, Procedure, ProcedureStep } from '../../src/repair/procedure.js';

/** How a walk chooses among the steps that are open: as written, or from the end. */
export type Choice = 'first' | 'last';

const MINUTES_PER_STEP = 1;
const LONGEST_PAUSE = 48 * 60;

/**
 * Goes through a procedure step by step, as people do who measure when they are asked and check when it is time; `without`
 * is never done. Returns the steps that were done, in order; a step that never opens is not among them.
 */
export function walk({ steps }: Procedure, choice: Choice = 'first', without: string | null = null): readonly string[] {
  const doneAt = new Map<string, number>();
  let pause = 0;
  for (let now = 0; doneAt.size < steps.length && pause <= LONGEST_PAUSE; now += MINUTES_PER_STEP) {
    const open = steps.filter((step) => step.id !== without && !doneAt.has(step.id) && isOpen(step, { steps, doneAt, now }));
    const next = choice === 'first' ? open[0] : open.at(-1);
    pause = next === undefined ? pause + MINUTES_PER_STEP : 0;
    if (next !== undefined) doneAt.set(next.id, now);
  }
  return [...doneAt.keys()];
}

interface Walked {
  readonly steps: readonly ProcedureStep[];
  readonly doneAt: ReadonlyMap<string, number>;
  readonly now: number;
}

const isOpen = (step: ProcedureStep, walked: Walked): boolean => step.needs.every((need) => isMet(need, walked)) && (step.done.by !== 'check' || begins(step.joint, walked.steps).some(({ id }) => walked.doneAt.has(id)));

function isMet(need: Need, walked: Walked): boolean {
  const { steps, doneAt, now } = walked;
  const since = 'step' in need ? now - (doneAt.get(need.step) ?? Infinity) : 0;
  switch (need.need) {
    case 'step':
      return doneAt.has(need.step);
    case 'within':
      return since >= 0 && since <= need.minutes;
    case 'not-before':
      return since >= need.minutes;
    case 'confirmed':
      return steps.some(({ id, joint, done }) => joint === need.joint && done.by === 'check' && done.milestone === need.milestone && doneAt.has(id));
    case 'cures-done':
      return begins(null, steps).every(({ id, joint }) => !doneAt.has(id) || steps.every((other) => other.joint !== joint || other.done.by !== 'check' || doneAt.has(other.id)));
    case 'joint-below':
    case 'dew-margin':
      return true;
  }
}

/** The steps with which something begins to wait, on one joint or on all. */
const begins = (joint: string | null, steps: readonly ProcedureStep[]): ProcedureStep[] => steps.filter(({ joint: on, done }) => (joint === null || on === joint) && done.by === 'entry' && done.entry !== 'lamp-set');
