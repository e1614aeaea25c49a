import type { Instant } from '../../cure/units.js';
import { sameCure, type CureRef } from '../../repair/cure-ref.js';
import type { NewFact } from '../../repair/decision.js';
import { FIRST_JOINT, type PersonId } from '../../repair/ids.js';
import { jobHoldOf } from '../../repair/job-hold.js';
import type { Job } from '../../repair/job.js';
import { nameOf } from '../../repair/people.js';
import type { Procedure } from '../../repair/procedure.js';
import type { Answer } from '../answer.js';
import type { Reader } from '../catalogue/speaker.js';
import { sayStanding } from '../catalogue/standing.js';
import { cautionLine } from './cautions.js';
import { fireFirst } from './fire-watch.js';
import { shortened } from './shortened.js';
import { smokeLine } from './smoke.js';
import { clock, line, type Setting } from './words.js';

const MOST_OVERRIDES = 2;

/** The foreman's word that one cure goes on. */
interface Release {
  readonly cure: CureRef;
  readonly at: Instant;
  readonly by: PersonId;
  readonly reason: string;
}

/** Who let what go on, and why: said with every later answer about the job. Null: nobody did. */
export function overridesLine(job: Job, setting: Setting): string | null {
  const said = [stepsLine(job, setting), decidedLine(job, setting)].flatMap((words) => words ?? []);
  return said.length === 0 ? null : said.join(' ');
}

/** Cures that the foreman let go on; what was scrapped after all is not told any more. */
function releasesIn({ live }: Job, only: CureRef | null = null): Release[] {
  const scrapped = live.flatMap(({ fact }) => (fact.type === 'scrapped' ? [fact.cure] : []));
  return live.flatMap(({ fact, happenedAt: at, by }) => (fact.type === 'released' && (only === null || sameCure(only, fact.cure)) && !scrapped.some((cure) => sameCure(cure, fact.cure)) ? [{ cure: fact.cure, at, by, reason: fact.reason }] : []));
}

function decidedLine(job: Job, setting: Setting): string | null {
  const all = releasesIn(job).map(({ cure: { joint, card }, at, by, reason }) => sayStanding(setting, 'decided-one', { what: joint === FIRST_JOINT ? card : `${joint} ${card}`, who: nameOf(setting.shop, by), at: clock(at, setting), reason }));
  const list = all.slice(-MOST_OVERRIDES).join('; ');
  if (all.length === 0) return null;
  return all.length > MOST_OVERRIDES ? sayStanding(setting, 'decided-more', { list, more: all.length - MOST_OVERRIDES }) : sayStanding(setting, 'decided', { list });
}

/** For a list: the foreman's last word on one cure, or on any of the job. Null: none. */
function decidedShort(job: Job, setting: Setting, cure: CureRef | null): string | null {
  const last = releasesIn(job, cure).at(-1);
  return last === undefined ? null : sayStanding(setting, 'decided-short', { who: nameOf(setting.shop, last.by), at: clock(last.at, setting), reason: shortened(last.reason) });
}

function stepsLine(job: Job, setting: Setting): string | null {
  const all = job.live.flatMap(({ fact, happenedAt, by }) => (fact.type === 'step-overridden' ? [sayStanding(setting, 'overridden-one', { step: fact.step, who: nameOf(setting.shop, by), at: clock(happenedAt, setting), reason: fact.reason })] : []));
  const list = all.slice(-MOST_OVERRIDES).join('; ');
  if (all.length === 0) return null;
  return all.length > MOST_OVERRIDES ? sayStanding(setting, 'overridden-more', { list, more: all.length - MOST_OVERRIDES }) : sayStanding(setting, 'overridden', { list });
}

/** Null: the job goes on. */
export const heldLine = (job: Job, setting: Setting): string | null => heldWords(job, 'held', setting);

/** For a list: who holds the whole job, and why. Null: it goes on. */
export const heldShort = (job: Job, setting: Setting): string | null => heldWords(job, 'held-short', setting);

function heldWords(job: Job, how: 'held' | 'held-short', setting: Setting): string | null {
  const hold = jobHoldOf(job);
  return hold === null ? null : sayStanding(setting, how, { job: job.no, at: clock(hold.at, setting), who: nameOf(setting.shop, hold.by), reason: hold.reason });
}

/** For a list: what the foreman let go on, of cures only the one named. Null: nothing. */
export function overriddenShort(job: Job, setting: Setting, cure: CureRef | null = null): string | null {
  const said = [stepsShort(job, setting), decidedShort(job, setting, cure)].flatMap((words) => words ?? []);
  return said.length === 0 ? null : said.join('; ');
}

function stepsShort(job: Job, setting: Setting): string | null {
  const all = job.live.flatMap(({ fact, happenedAt, by }) => (fact.type === 'step-overridden' ? [sayStanding(setting, 'overridden-short-one', { step: fact.step, who: nameOf(setting.shop, by), at: clock(happenedAt, setting), reason: shortened(fact.reason) })] : []));
  const list = all.slice(-MOST_OVERRIDES).join(', ');
  if (all.length === 0) return null;
  return all.length > MOST_OVERRIDES ? sayStanding(setting, 'overridden-short-more', { list, more: all.length - MOST_OVERRIDES }) : sayStanding(setting, 'overridden-short', { list });
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

/** Whatever was said about a job: that it smokes, first of all; who let what go on, and that it is held, each once. */
export function withWholeJob(said: Answer, job: Job, setting: Setting): Answer {
  const hold = jobHoldOf(job);
  const spoken = said.lines.map((one) => one.map(({ text }) => text).join(''));
  const held = hold === null || spoken.some((words) => words.includes(hold.reason)) ? null : heldLine(job, setting);
  const overridden = overridesLine(job, setting);
  const smoke = spoken.some((words) => words.includes(fireFirst(setting).replaceAll('**', ''))) ? null : smokeLine(job, setting);
  const more = [held, overridden].flatMap((words) => (words === null || spoken.includes(words.replaceAll('**', '')) ? [] : [line(words)]));
  const first = smoke === null ? [] : [line(smoke)];
  return more.length + first.length === 0 ? said : { ...said, lines: [...first, ...said.lines, ...more] };
}

/** Every caution that the book keeps as shown is shown: what the answer does not hold yet is added, by step. */
export function withCautionsShown(said: Answer, facts: readonly NewFact[], setting: Setting): Answer {
  const spoken = said.lines.map((one) => one.map(({ text }) => text).join('')).join(' ');
  const shown = facts.flatMap(({ fact }) => (fact.type === 'cautioned' && !spoken.includes(cautionLine(fact.caution, setting).replaceAll('**', '')) ? [fact] : []));
  const steps = [...new Set(shown.map(({ step }) => step))];
  const more = steps.map((step) => line(`**${step}**: ${[...new Set(shown.filter((fact) => fact.step === step).map(({ caution }) => cautionLine(caution, setting)))].join(' ')}`));
  return more.length === 0 ? said : { ...said, lines: [...said.lines, ...more] };
}

/** Said with every answer that rests on a procedure that only comes with the program. */
export const exampleProcedure = ({ example, name }: Procedure, reader: Reader): string | null => (example ? sayStanding(reader, 'example-procedure', { name }) : null);
