import { jobHoldOf } from '../../repair/job-hold.js';
import type { Job } from '../../repair/job.js';
import { nameOf } from '../../repair/people.js';
import type { Procedure } from '../../repair/procedure.js';
import type { Answer } from '../answer.js';
import { clock, line, type Setting } from './words.js';

const MOST_OVERRIDES = 2;

/** Who let what go on, and why: said with every later answer about the job. Null: nobody did. */
export function overridesLine(job: Job, setting: Setting): string | null {
  const all = job.live.flatMap(({ fact, happenedAt, by }) => (fact.type === 'step-overridden' ? [`${fact.step}, ${nameOf(setting.shop, by)} ${clock(happenedAt, setting)}: “${fact.reason}”`] : []));
  if (all.length === 0) return null;
  const more = all.length > MOST_OVERRIDES ? `; and ${all.length - MOST_OVERRIDES} more` : '';
  return `**Overridden**: ${all.slice(-MOST_OVERRIDES).join('; ')}${more}.`;
}

/** Null: the job goes on. */
export function heldLine(job: Job, setting: Setting): string | null {
  const hold = jobHoldOf(job);
  return hold === null ? null : `${job.no} **HELD** since ${clock(hold.at, setting)} by ${nameOf(setting.shop, hold.by)}: “${hold.reason}”. Nothing goes on until the foreman releases it: \`release ${job.no} reason\`.`;
}

/** An answer about a job, with what has to be said of the whole job besides. While it is held, nothing is offered. */
export function withStanding(said: Answer, job: Job | null, setting: Setting): Answer {
  if (job === null) return said;
  const held = heldLine(job, setting);
  const whole = withOverrides(said, job, setting);
  return held === null ? whole : { ...whole, lines: [line(held), ...whole.lines], buttons: [] };
}

/** The same for an answer that says by itself that a job is held. */
export function withOverrides(said: Answer, job: Job | null, setting: Setting): Answer {
  const overridden = job === null ? null : overridesLine(job, setting);
  return overridden === null ? said : { ...said, lines: [...said.lines, line(overridden)] };
}

/** Said with every answer that rests on a procedure that only comes with the program. */
export const exampleProcedure = ({ example, name }: Procedure): string | null => (example ? `${name} is an example procedure, not the vehicle maker's method.` : null);
