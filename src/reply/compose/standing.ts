import type { NewFact } from '../../repair/decision.js';
import { jobHoldOf } from '../../repair/job-hold.js';
import type { Job } from '../../repair/job.js';
import { nameOf } from '../../repair/people.js';
import type { Procedure } from '../../repair/procedure.js';
import type { Answer } from '../answer.js';
import { cautionLine } from './cautions.js';
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

/** For a list: who holds the whole job, and why. Null: it goes on. */
export function heldShort(job: Job, setting: Setting): string | null {
  const hold = jobHoldOf(job);
  return hold === null ? null : `**HELD** since ${clock(hold.at, setting)} by ${nameOf(setting.shop, hold.by)}: “${hold.reason}”, the foreman decides`;
}

/** For a list: what the foreman let go on. Null: nothing. */
export function overriddenShort(job: Job, setting: Setting): string | null {
  const all = job.live.flatMap(({ fact, happenedAt, by }) => (fact.type === 'step-overridden' ? [`${fact.step} (${nameOf(setting.shop, by)} ${clock(happenedAt, setting)})`] : []));
  const more = all.length > MOST_OVERRIDES ? ` and ${all.length - MOST_OVERRIDES} more` : '';
  return all.length === 0 ? null : `overridden: ${all.slice(-MOST_OVERRIDES).join(', ')}${more}`;
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

/** Whatever was said about a job: who let what go on, and that it is held, each once. */
export function withWholeJob(said: Answer, job: Job, setting: Setting): Answer {
  const hold = jobHoldOf(job);
  const spoken = said.lines.map((one) => one.map(({ text }) => text).join(''));
  const held = hold === null || spoken.some((words) => words.includes(hold.reason)) ? null : heldLine(job, setting);
  const overridden = overridesLine(job, setting);
  const more = [held, overridden].flatMap((words) => (words === null || spoken.includes(words.replaceAll('**', '')) ? [] : [line(words)]));
  return more.length === 0 ? said : { ...said, lines: [...said.lines, ...more] };
}

/** Every caution that the book keeps as shown is shown: what the answer does not hold yet is added, by step. */
export function withCautionsShown(said: Answer, facts: readonly NewFact[]): Answer {
  const spoken = said.lines.map((one) => one.map(({ text }) => text).join('')).join(' ');
  const shown = facts.flatMap(({ fact }) => (fact.type === 'cautioned' && !spoken.includes(cautionLine(fact.caution).replaceAll('**', '')) ? [fact] : []));
  const steps = [...new Set(shown.map(({ step }) => step))];
  const more = steps.map((step) => line(`**${step}**: ${[...new Set(shown.filter((fact) => fact.step === step).map(({ caution }) => cautionLine(caution)))].join(' ')}`));
  return more.length === 0 ? said : { ...said, lines: [...said.lines, ...more] };
}

/** Said with every answer that rests on a procedure that only comes with the program. */
export const exampleProcedure = ({ example, name }: Procedure): string | null => (example ? `${name} is an example procedure, not the vehicle maker's method.` : null);
