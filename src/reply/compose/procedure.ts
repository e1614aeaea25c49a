import type { JobCommand } from '../../repair/commands.js';
import { courseOf, type Course } from '../../repair/course.js';
import type { Note } from '../../repair/decision.js';
import type { JobFact } from '../../repair/facts.js';
import type { StepId } from '../../repair/ids.js';
import type { Job } from '../../repair/job.js';
import { nextOn, nextShown, type NextSteps, type OpenStep } from '../../repair/next-steps.js';
import { nameOf } from '../../repair/people.js';
import type { Block } from '../../repair/step-needs.js';
import { stepsAt } from '../../repair/step-state.js';
import type { Answer, Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayProcedure } from '../catalogue/procedure.js';
import { saySteps } from '../catalogue/steps.js';
import { blocksWords, liftedWords } from './block-words.js';
import type { JobEntered } from './job-entry.js';
import { safetyTail } from './questions.js';
import { exampleProcedure, heldLine, overridesLine } from './standing.js';
import { leftLine, openButtons, openLine } from './step-line.js';
import { answer, button, clock, degrees, milestoneWord, type Setting } from './words.js';

type StepCommand = Extract<JobCommand, { readonly kind: 'begin' | 'done' | 'sign' | 'tap' | 'enter' | 'hold' | 'override' }>;
type StepEntered = JobEntered<StepCommand>;

const MOST_OPEN = 3;
const MOST_BUTTONS = 5;

/** Job first, what was noted, then the next thing to do with its caution and buttons. */
export function composeStep(entered: StepEntered, setting: Setting): Answer {
  const { job, outlooks, air, entry, command } = entered;
  if (job === null) return answer('plain', [sayProcedure(setting, 'nothing-to-note')]);
  const course = courseOf(job, outlooks, setting.shop, air);
  const undo = entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)];
  const tail = command.kind === 'begin' && isFirstBegin(job) ? safetyTail(setting) : null;
  const expired = entered.notes.some(({ note }) => note === 'label-held');
  const { lines, buttons } = course === null ? { lines: [heldLine(job, setting)], buttons: [] } : whatNext(entered, job, course, setting);
  const example = course === null ? null : exampleProcedure(course.procedure, setting);
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
  if (open !== null) return { lines: [sayProcedure(setting, 'next', { line: (isSame ? leftLine : openLine)(open, job.no, setting) })], buttons: openButtons(open, job.no, false, setting) };
  if (next.blocked?.step.id === about && entered.notes.some(({ note }) => note === 'label-held')) return { lines: [], buttons: [] };
  return { lines: [blockedLine(next, setting) ?? sayProcedure(setting, 'nothing-left')], buttons: [] };
}

function stepOf({ facts, notes }: StepEntered): string | null {
  const [told] = facts.flatMap(({ fact }) => ('step' in fact && fact.type !== 'reminder-raised' ? [fact.step] : []));
  const [already] = notes.flatMap((note) => (note.note === 'step-already' ? [note.step] : []));
  return told ?? already ?? null;
}

function blockedLine({ blocked }: NextSteps, setting: Setting): string | null {
  return blocked === null ? null : waitsLine(blocked.step.id, blocked.state.blocks, setting);
}

const waitsLine = (step: StepId, blocks: readonly Block[], setting: Setting): string => saySteps(setting, 'waits', { step, blocks: blocksWords(blocks, setting) });

/** What this entry noted. */
function noted({ facts, notes, by, job }: StepEntered, setting: Setting): string {
  const who = nameOf(setting.shop, by);
  const already = notes.find((note) => note.note === 'step-already');
  if (already?.note === 'step-already') return sayProcedure(setting, 'done-already', { step: already.step, at: clock(already.at, setting), who: nameOf(setting.shop, already.by) });
  const [first] = facts;
  if (first === undefined) return sayProcedure(setting, 'in-the-book');
  const opened = notes.flatMap((note) => (note.note === 'opened-long-ago' ? [sayProcedure(setting, 'opened-long-ago', { days: note.days })] : []));
  const signed = facts.length > 1 && facts.some(({ fact }) => fact.type === 'step-signed');
  const lifted = notes.find((note) => note.note === 'lifted');
  if (lifted?.note === 'lifted' && first.fact.type === 'step-overridden') return overridden({ step: first.fact.step, at: clock(first.happenedAt, setting), who }, lifted, setting);
  const more = facts.slice(1).flatMap(({ fact }) => (fact.type === 'step-entered' ? [enteredWords(fact, who, labelOf(fact, notes), setting)] : []));
  return [factWords(first.fact, { who, at: clock(first.happenedAt, setting), signed, label: first.fact.type === 'step-entered' ? labelOf(first.fact, notes) : null, job }, setting), ...more, ...opened].join(' ');
}

/** What is wrong with the figure that was entered. */
const labelOf = ({ what, text }: Extract<JobFact, { type: 'step-entered' }>, notes: readonly Note[]): Telling['label'] =>
  notes.find((note): note is Extract<Note, { note: 'label-held' }> => note.note === 'label-held' && note.what === what && note.text === text) ?? null;

/** What the foreman's word lifted, and nothing else. */
function overridden(what: { readonly step: StepId; readonly at: string; readonly who: string }, { blocks, waits }: Extract<Note, { note: 'lifted' }>, setting: Setting): string {
  const cures = waits.map(({ outlook: { cure }, milestone }) => sayProcedure(setting, 'cure-unconfirmed', { milestone: milestoneWord(milestone, setting), card: cure.card.name, joint: cure.ref.joint }));
  const past = [...blocks.map((block) => liftedWords(block, setting)), ...cures];
  return sayProcedure(setting, 'overridden-past', { ...what, past: past.length === 0 ? sayProcedure(setting, 'nobody-signed') : past.join('; ') });
}

interface Telling {
  readonly who: string;
  readonly at: string;
  readonly signed: boolean;
  /** What is wrong with the label that was entered; null: nothing. */
  readonly label: Extract<Note, { note: 'label-held' }> | null;
  readonly job: Job | null;
}

function factWords(fact: JobFact | { readonly type: string }, { who, at, signed, label, job }: Telling, setting: Setting): string {
  if (!('step' in fact || 'reason' in fact || 'procedure' in fact)) return sayProcedure(setting, 'noted');
  switch (fact.type) {
    case 'procedure-begun':
      return sayProcedure(setting, 'begun', { procedure: fact.procedure.name, at, who, title: fact.procedure.title, steps: fact.procedure.steps.length });
    case 'step-done':
      return sayProcedure(setting, signed ? 'done-signed' : 'done', { step: fact.step, at, who });
    case 'step-tapped':
      return sayProcedure(setting, 'tapped', { step: fact.step, tap: tapWords(job, fact), who, at });
    case 'step-signed':
      return sayProcedure(setting, 'signed', { step: fact.step, at, who, role: saySteps(setting, `role-${fact.role}`) });
    case 'step-entered':
      return enteredWords(fact, who, label, setting);
    case 'job-held':
      return sayProcedure(setting, 'held', { at, who, reason: fact.reason, job: job?.no ?? '' });
    case 'job-released':
      return sayProcedure(setting, 'released', { at, who, reason: fact.reason });
    case 'step-overridden':
      return sayProcedure(setting, 'overridden', { step: fact.step, at, who });
    default:
      return sayProcedure(setting, 'noted');
  }
}

function enteredWords({ step, what, text }: Extract<JobFact, { type: 'step-entered' }>, who: string, label: Telling['label'], setting: Setting): string {
  if (label === null) return sayProcedure(setting, `entered-${what}`, { step, text, who });
  return label.what === 'expiry' ? sayProcedure(setting, 'label-expired', { step, text }) : sayProcedure(setting, 'label-opened', { step, text, days: label.days ?? 0 });
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
  const bare = notes.some(({ note }) => note === 'bare-metal') ? sayProcedure(setting, 'bare-metal') : null;
  const next = nextOn(job, course, setting.now);
  const waiting = stepsAt(course, setting.now).find(({ step, state }) => state.is === 'blocked' && step.needs.some((need) => need.need === 'joint-below' && need.joint === joint));
  const [open] = next.open.filter(({ step }) => step.needs.some((need) => need.need === 'joint-below' && need.joint === joint));
  const blocked = waiting?.state.is === 'blocked' ? waitsLine(waiting.step.id, waiting.state.blocks, setting) : null;
  const undo = entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)];
  return answer('plain', [
    [sayProcedure(setting, 'joint-read', { job: job.no, joint, value: degrees(value, setting), at: clock(first.happenedAt, setting), who: nameOf(setting.shop, by) }), ...(bare === null ? [] : [bare])].join(' '),
    heldLine(job, setting) ?? (open === undefined ? blocked : sayProcedure(setting, 'next', { line: openLine(open, job.no, setting) })),
    overridesLine(job, setting),
    exampleProcedure(course.procedure, setting),
  ], [...(open === undefined || next.hold !== null ? [] : openButtons(open, job.no, false, setting)), ...undo].slice(0, MOST_BUTTONS));
}

/** At most three steps that are open, each with who and the caution, and the first that has to wait. */
export function composeNext(next: NextSteps, setting: Setting): Answer {
  const { job, record, course } = next;
  const example = exampleProcedure(course.procedure, setting);
  if (next.hold !== null) return answer('plain', [heldLine(record, setting), overridesLine(record, setting), example]);
  const shown = next.open.slice(0, MOST_OPEN);
  const more = next.open.length > MOST_OPEN ? ` ${sayProcedure(setting, 'and-more', { more: next.open.length - MOST_OPEN })}` : '';
  const open = shown.map((one, index) => `${index === 0 ? `${job} ` : ''}${openLine(one, job, setting)}${index === shown.length - 1 ? more : ''}`);
  const blocked = blockedLine(next, setting);
  const waits = blocked === null ? null : `${open.length === 0 ? `${job} ` : ''}${blocked}`;
  const nothing = open.length === 0 && waits === null ? sayProcedure(setting, 'nothing-left-of', { job, procedure: course.procedure.name }) : null;
  return answer('plain', [...open, waits, nothing, overridesLine(record, setting), example], buttonsFor(shown, job, setting));
}

/** One for each step first, the rest as far as there is room. */
function buttonsFor(shown: readonly OpenStep[], job: NextSteps['job'], setting: Setting): Button[] {
  const each = shown.map((one) => openButtons(one, job, shown.length > 1, setting));
  return [...each.flatMap((buttons) => buttons.slice(0, 1)), ...each.flatMap((buttons) => buttons.slice(1))].slice(0, MOST_BUTTONS);
}

/** A whole job goes on. */
export function composeReleased(job: Job, setting: Setting): Answer {
  const released = job.live.findLast(({ fact }) => fact.type === 'job-released');
  const words = released === undefined ? sayProcedure(setting, 'goes-on') : factWords(released.fact, { who: nameOf(setting.shop, released.by), at: clock(released.happenedAt, setting), signed: false, label: null, job }, setting);
  return answer('plain', [`${job.no} ${words}`, heldLine(job, setting), overridesLine(job, setting)]);
}
