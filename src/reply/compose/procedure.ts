import type { JobCommand } from '../../repair/commands.js';
import { courseOf, type Course } from '../../repair/course.js';
import type { Note } from '../../repair/decision.js';
import type { JobFact } from '../../repair/facts.js';
import type { StepId } from '../../repair/ids.js';
import type { Job } from '../../repair/job.js';
import { nextOn, nextShown, type NextSteps, type OpenStep } from '../../repair/next-steps.js';
import { nameOf } from '../../repair/people.js';
import { stepsAt } from '../../repair/step-state.js';
import type { Answer, Button } from '../answer.js';
import type { JobEntered } from './job-entry.js';
import { SAFETY_TAIL } from './questions.js';
import { exampleProcedure, heldLine, overridesLine } from './standing.js';
import { blocksWords, leftLine, liftedWords, openButtons, openLine } from './step-line.js';
import { answer, button, clock, degrees, MILESTONE_WORDS, type Setting } from './words.js';

type StepCommand = Extract<JobCommand, { readonly kind: 'begin' | 'done' | 'sign' | 'tap' | 'enter' | 'hold' | 'override' }>;
type StepEntered = JobEntered<StepCommand>;

const MOST_OPEN = 3;
const MOST_BUTTONS = 5;

/** Job first, what was noted, then the next thing to do with its caution and buttons. */
export function composeStep(entered: StepEntered, setting: Setting): Answer {
  const { job, outlooks, air, entry, command } = entered;
  if (job === null) return answer('plain', ['Nothing to note.']);
  const course = courseOf(job, outlooks, setting.shop, air);
  const undo = entry === null ? [] : [button('Undo', `undo ${entry}`)];
  const tail = command.kind === 'begin' && isFirstBegin(job) ? SAFETY_TAIL : null;
  const expired = entered.notes.some(({ note }) => note === 'label-held');
  const { lines, buttons } = course === null ? { lines: [heldLine(job, setting)], buttons: [] } : whatNext(entered, job, course, setting);
  const example = course === null ? null : exampleProcedure(course.procedure);
  return answer(expired || command.kind === 'hold' ? 'alarm' : 'plain', [`${job.no} ${noted(entered, setting)}`, ...lines, overridesLine(job, setting), tail, example], [...buttons.slice(0, MOST_BUTTONS - undo.length), ...undo]);
}

/** Once a job, whatever was taken back since. */
const isFirstBegin = ({ all }: Job): boolean => all.filter(({ fact }) => fact.type === 'procedure-begun').length === 1;

/** The step just spoken of while it is open, else the first that is. */
function whatNext(entered: StepEntered, job: Job, course: Course, setting: Setting): { readonly lines: (string | null)[]; readonly buttons: Button[] } {
  const next = nextOn(job, course, setting.now);
  if (next.hold !== null) return { lines: entered.command.kind === 'hold' && entered.facts.length > 0 ? [] : [heldLine(job, setting)], buttons: [] };
  const about = stepOf(entered);
  const open = nextShown(job, course, setting.now, about);
  const isSame = open !== null && open.step.id === about && (entered.command.kind === 'tap' || entered.command.kind === 'enter');
  if (open !== null) return { lines: [`Next: ${(isSame ? leftLine : openLine)(open, job.no, setting)}`], buttons: openButtons(open, job.no, false) };
  if (next.blocked?.step.id === about && entered.notes.some(({ note }) => note === 'label-held')) return { lines: [], buttons: [] };
  return { lines: [blockedLine(next, setting) ?? 'Nothing is left to do in this procedure.'], buttons: [] };
}

function stepOf({ facts, notes }: StepEntered): string | null {
  const [told] = facts.flatMap(({ fact }) => ('step' in fact && fact.type !== 'reminder-raised' ? [fact.step] : []));
  const [already] = notes.flatMap((note) => (note.note === 'step-already' ? [note.step] : []));
  return told ?? already ?? null;
}

function blockedLine({ blocked }: NextSteps, setting: Setting): string | null {
  return blocked === null ? null : `**${blocked.step.id}** waits: ${blocksWords(blocked.state.blocks, setting)}.`;
}

/** What this entry noted. */
function noted({ facts, notes, by, job }: StepEntered, setting: Setting): string {
  const who = nameOf(setting.shop, by);
  const already = notes.find((note) => note.note === 'step-already');
  if (already?.note === 'step-already') return `**${already.step}** is done already: ${clock(already.at, setting)}, ${nameOf(setting.shop, already.by)}.`;
  const [first] = facts;
  if (first === undefined) return 'That stands in the book already.';
  const opened = notes.flatMap((note) => (note.note === 'opened-long-ago' ? [` Opened ${note.days} days ago: within its opened life? See the sheet.`] : [])).join('');
  const signed = facts.length > 1 && facts.some(({ fact }) => fact.type === 'step-signed') ? ' and signed' : '';
  const lifted = notes.find((note) => note.note === 'lifted');
  if (lifted?.note === 'lifted' && first.fact.type === 'step-overridden') return overridden(first.fact.step, `${clock(first.happenedAt, setting)}, ${who}`, lifted, setting);
  return `${factWords(first.fact, { who, at: clock(first.happenedAt, setting), signed, expired: labelWords(notes), job })}${opened}`;
}

function labelWords(notes: StepEntered['notes']): string | null {
  const held = notes.find((note) => note.note === 'label-held');
  if (held?.note !== 'label-held') return null;
  return held.what === 'expiry' ? 'expired' : `open too long (${held.days ?? 0} days at most)`;
}

/** What the foreman's word lifted, and nothing else. */
function overridden(step: StepId, when: string, { blocks, waits }: Extract<Note, { note: 'lifted' }>, setting: Setting): string {
  const cures = waits.map(({ outlook: { cure }, milestone }) => `${MILESTONE_WORDS[milestone]} of ${cure.card.name} on ${cure.ref.joint} not confirmed`);
  const past = [...blocks.map((block) => liftedWords(block, setting)), ...cures];
  return `**${step} overridden** ${when}, past this only: ${past.length === 0 ? 'nobody signed' : past.join('; ')}. It may go on; every answer about the job shows it.`;
}

interface Telling {
  readonly who: string;
  readonly at: string;
  readonly signed: string;
  /** What is wrong with the label that was entered; null: nothing. */
  readonly expired: string | null;
  readonly job: Job | null;
}

function factWords(fact: JobFact | { readonly type: string }, { who, at, signed, expired, job }: Telling): string {
  if (!('step' in fact || 'reason' in fact || 'procedure' in fact)) return 'noted.';
  switch (fact.type) {
    case 'procedure-begun':
      return `**${fact.procedure.name}** begun ${at}, ${who}: ${fact.procedure.title}, ${fact.procedure.steps.length} steps.`;
    case 'step-done':
      return `**${fact.step}** done${signed} ${at}, ${who}.`;
    case 'step-tapped':
      return `${fact.step}: “${tapWords(job, fact)}”, ${who} ${at}.`;
    case 'step-signed':
      return `**${fact.step}** signed ${at}, ${who} (${fact.role}).`;
    case 'step-entered':
      return expired !== null ? `${fact.step}: **${expired}: HOLD**, ${fact.text}. Take a new one and enter its date; only the foreman can go on with this one, with a reason.` : `${fact.step}: ${fact.what} ${fact.text} noted, ${who}.`;
    case 'job-held':
      return `**HELD** ${at}, ${who}: “${fact.reason}”. Nothing goes on until the foreman releases it: \`release ${job?.no ?? ''} reason\`.`;
    case 'job-released':
      return `released ${at}, ${who}: “${fact.reason}”.`;
    case 'step-overridden':
      return `**${fact.step} overridden** ${at}, ${who}: it may go on. This is shown with every answer about the job.`;
    default:
      return 'noted.';
  }
}

function tapWords(job: Job | null, { step, tap }: Extract<JobFact, { type: 'step-tapped' }>): string {
  const procedures = job?.live.flatMap(({ fact }) => (fact.type === 'procedure-begun' ? [fact.procedure] : [])) ?? [];
  return procedures.at(-1)?.steps.find(({ id }) => id === step)?.taps[tap] ?? `${tap + 1}`;
}

/** A reading on which nothing cures: it only says how warm the joint is, for the steps that wait for that. */
export function composeStepReading({ facts: [first], notes, entry, job, outlooks, air, by }: Omit<StepEntered, 'command'>, setting: Setting): Answer | null {
  const course = job === null ? null : courseOf(job, outlooks, setting.shop, air);
  if (job === null || course === null || first?.fact.type !== 'reading') return null;
  const { joint, value } = first.fact;
  const bare = notes.some(({ note }) => note === 'bare-metal') ? ' **Not counted**: bare shiny metal lies. Use matt tape or a contact probe.' : '';
  const next = nextOn(job, course, setting.now);
  const waiting = stepsAt(course, setting.now).find(({ step, state }) => state.is === 'blocked' && step.needs.some((need) => need.need === 'joint-below' && need.joint === joint));
  const [open] = next.open.filter(({ step }) => step.needs.some((need) => need.need === 'joint-below' && need.joint === joint));
  const blocked = waiting?.state.is === 'blocked' ? `**${waiting.step.id}** waits: ${blocksWords(waiting.state.blocks, setting)}.` : null;
  const undo = entry === null ? [] : [button('Undo', `undo ${entry}`)];
  return answer('plain', [
    `${job.no} ${joint} read **${degrees(value, setting)}** ${clock(first.happenedAt, setting)}, ${nameOf(setting.shop, by)}. Nothing cures there now.${bare}`,
    heldLine(job, setting) ?? (open === undefined ? blocked : `Next: ${openLine(open, job.no, setting)}`),
    overridesLine(job, setting),
    exampleProcedure(course.procedure),
  ], [...(open === undefined || next.hold !== null ? [] : openButtons(open, job.no, false)), ...undo].slice(0, MOST_BUTTONS));
}

/** At most three steps that are open, each with who and the caution, and the first that has to wait. */
export function composeNext(next: NextSteps, setting: Setting): Answer {
  const { job, record, course } = next;
  const example = exampleProcedure(course.procedure);
  if (next.hold !== null) return answer('plain', [heldLine(record, setting), overridesLine(record, setting), example]);
  const shown = next.open.slice(0, MOST_OPEN);
  const more = next.open.length > MOST_OPEN ? ` And ${next.open.length - MOST_OPEN} more.` : '';
  const open = shown.map((one, index) => `${index === 0 ? `${job} ` : ''}${openLine(one, job, setting)}${index === shown.length - 1 ? more : ''}`);
  const blocked = blockedLine(next, setting);
  const waits = blocked === null ? null : `${open.length === 0 ? `${job} ` : ''}${blocked}`;
  const nothing = open.length === 0 && waits === null ? `${job} ${course.procedure.name}: **nothing is left to do.**` : null;
  return answer('plain', [...open, waits, nothing, overridesLine(record, setting), example], buttonsFor(shown, job));
}

/** One for each step first, the rest as far as there is room. */
function buttonsFor(shown: readonly OpenStep[], job: NextSteps['job']): Button[] {
  const each = shown.map((one) => openButtons(one, job, shown.length > 1));
  return [...each.flatMap((buttons) => buttons.slice(0, 1)), ...each.flatMap((buttons) => buttons.slice(1))].slice(0, MOST_BUTTONS);
}

/** A whole job goes on. */
export function composeReleased(job: Job, setting: Setting): Answer {
  const released = job.live.findLast(({ fact }) => fact.type === 'job-released');
  const words = released === undefined ? 'goes on.' : factWords(released.fact, { who: nameOf(setting.shop, released.by), at: clock(released.happenedAt, setting), signed: '', expired: null, job });
  return answer('plain', [`${job.no} ${words}`, heldLine(job, setting), overridesLine(job, setting)]);
}
