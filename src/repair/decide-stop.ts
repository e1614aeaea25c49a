import { outlooksOf } from './book.js';
import { bansOn, carBans, deedStep } from './car-bans.js';
import type { JobCommand } from './commands.js';
import { freeWalkFor, heldRefusal, unknownJob, walkOf } from './course-for.js';
import { refuse, type Decision, type Note, type Situation } from './decision.js';
import type { JobFact } from './facts.js';
import type { JobNo } from './ids.js';
import { jobHoldOf } from './job-hold.js';
import type { Job } from './job.js';
import { foremanOf, isForeman, knownRole } from './people.js';
import { chosenStep } from './step-choice.js';
import type { Block } from './step-needs.js';
import { stepsAt, type StepAt } from './step-state.js';
import { isNamed } from './step-words.js';
import { whichJob } from './subject.js';
import type { Unfinished } from './unfinished.js';

type Of<K extends JobCommand['kind']> = Extract<JobCommand, { readonly kind: K }>;

const HOLDERS = ['foreman', 'quality'] as const;
/** Work across the car that the foreman lets go on by its word. */
const LIFTED_BY_WORD = ['fill', 'bake', 'sand'] as const;
type LiftedDeed = (typeof LIFTED_BY_WORD)[number];

const stored = (job: JobNo, situation: Situation, fact: JobFact | null, notes: readonly Note[] = []): Decision => ({
  ok: true,
  facts: fact === null ? [] : [{ job, happenedAt: situation.now, fact }],
  about: null,
  notes,
});

/** The foreman, or whoever looks at quality, stops a whole job. */
export function decideHold(command: Of<'hold'>, situation: Situation): Decision {
  const role = knownRole(situation.shop, situation.by);
  if (role === null || !HOLDERS.some((one) => one === role)) return refuse({ code: 'wrong-role', role: role ?? 'apprentice', may: HOLDERS });
  const job = command.job ?? situation.thread;
  if (job === null) return refuse(whichJob(command, situation));
  const known = situation.book.job(job);
  if (known === null) return refuse(unknownJob(command, job, situation));
  if (!isReason(command.reason)) return refuse({ code: 'reason-missing' });
  if (jobHoldOf(known) !== null) return stored(job, situation, null, [{ note: 'already-so' }]);
  return stored(job, situation, { type: 'job-held', reason: command.reason });
}

/** The foreman lets one thing go on that stands against the rule, by name and with a reason; the answer says what was lifted, and nothing else is. */
export function decideOverride(command: Of<'override'>, situation: Situation): Decision {
  if (!isForeman(situation.shop, situation.by)) return refuse({ code: 'foreman-only', foreman: foremanOf(situation.shop) });
  if (!isReason(command.reason)) return refuse({ code: 'reason-missing' });
  const deed = deedOverride(command, situation);
  if (deed !== null) return deed;
  const walk = freeWalkFor(command, situation);
  if (!walk.ok) return refuse(walk.refusal);
  const chosen = chosenStep(command, walk, stepsAt(walk.course, situation.now), isOffered, isOffered);
  if (!chosen.ok) return refuse(chosen.refusal);
  if (waitsForStrength(chosen.one) && !isNamed(command.step ?? '', chosen.one)) return refuse({ code: 'which-step', job: walk.job.no, typed: command.step, choices: [] });
  if (!isHeld(chosen.one)) return refuse({ code: 'nothing-held', job: walk.job.no });
  const { step, state } = chosen.one;
  const blocks = state.is === 'blocked' ? state.blocks : [];
  const whys = blocks.map((block) => (block.why === 'out-of-turn' ? block.first.why : block.why));
  const pastDew = whys.includes('dew') ? { pastDew: true as const } : {};
  const pastLabel = whys.includes('expired') || whys.includes('opened') ? { pastLabel: true as const } : {};
  return stored(walk.job.no, situation, { type: 'step-overridden', step: step.id, reason: command.reason, ...pastDew, ...pastLabel }, [{ note: 'lifted', blocks, waits: [] }]);
}

const isUnsigned = ({ state }: StepAt): boolean => state.is === 'open' && state.work !== null && state.missing.sign;
const isHeld = (one: StepAt): boolean => one.state.is === 'blocked' || isUnsigned(one);

const STRENGTH: readonly Block['why'][] = ['confirmed', 'cures'];

/** Nothing but strength that has not come stands against it: that is lifted for nobody who has not typed its name. */
const waitsForStrength = ({ state }: StepAt): boolean =>
  state.is === 'blocked' && state.blocks.length > 0 && state.blocks.every((block) => STRENGTH.includes(block.why === 'out-of-turn' ? block.first.why : block.why));

const isOffered = (one: StepAt): boolean => isHeldByMore(one) && !waitsForStrength(one);

/** Waits for something else than the step before it, or for a signature. */
const isHeldByMore = (one: StepAt): boolean => (one.state.is === 'blocked' ? one.state.blocks.every(({ why }) => why !== 'step') : isUnsigned(one));

/**
 * `override 501 fill reason`: a hold across the car. Of a step of the same name only one is lifted at a time: the hold
 * that keeps filler from being entered comes before its step, and a step before the others.
 */
function deedOverride(command: Of<'override'>, situation: Situation): Decision | null {
  const no = command.job ?? situation.thread;
  const job = no === null ? null : situation.book.job(no);
  const deed = LIFTED_BY_WORD.find((one) => one === command.step?.toLowerCase());
  if (job === null || deed === undefined) return null;
  const waits = heldBy(deed, job, situation);
  const same = stepCalled(deed, job.no, situation);
  if (same !== null && (waits.length === 0 || (deed !== 'fill' && isHeld(same)))) return null;
  const held = heldRefusal(job, situation);
  if (held !== null) return refuse(held);
  if (waits.length === 0) return refuse({ code: 'nothing-held', job: job.no });
  return stored(job.no, situation, { type: 'step-overridden', step: deedStep(deed), reason: command.reason }, [{ note: 'lifted', blocks: [], waits }]);
}

function stepCalled(deed: LiftedDeed, no: JobNo, situation: Situation): StepAt | null {
  const walk = walkOf(no, situation);
  return walk === null ? null : (stepsAt(walk.course, situation.now).find(({ step }) => step.id === deed) ?? null);
}

/** A fire watch is lifted by nobody's word. */
const heldBy = (deed: LiftedDeed, job: Job, { shop, book }: Situation): Unfinished[] =>
  bansOn(deed, carBans(job, outlooksOf(job, shop, book.air))).flatMap((ban) => (ban.grade === 'hold' && ban.waits.milestone !== 'fire-watch' ? [ban.waits] : []));

/** A dot or `ok` explains nothing a year later. */
const isReason = (reason: string): boolean => (reason.match(/\p{L}/gu) ?? []).length >= 3;
