import { nameOf } from '../../repair/people.js';
import type { Entering } from '../../repair/procedure.js';
import type { StepRefusal } from '../../repair/step-refusal.js';
import type { Answer } from '../answer.js';
import { sayProcedureRefusal } from '../catalogue/procedure-refusal.js';
import type { Reader } from '../catalogue/speaker.js';
import { saySteps } from '../catalogue/steps.js';
import { blocksWords } from './block-words.js';
import { enterWords, quotedTap, rolesWords, short, shownBy } from './step-line.js';
import { answer, button, capital, clock, milestoneWord, type Setting } from './words.js';

type Choices = readonly { readonly label: string; readonly line: string }[];
type Of<Code extends StepRefusal['code']> = Extract<StepRefusal, { readonly code: Code }>;

const MOST_BUTTONS = 5;

const namesIn = (choices: Choices): string => choices.map(({ label }) => label).join(', ');
const refused = (sentence: string): Answer => answer('refusal', [sentence]);
const asked = (sentence: string, choices: Choices): Answer => answer('question', [sentence], choices.slice(0, MOST_BUTTONS).map(({ label, line }) => button(short(capital(label)), line)));

/** Why nothing was stored about the steps of a job, and what to do. */
export const composeStepRefusal = (refusal: StepRefusal, setting: Setting): Answer => composed(refusal, { yet: sayProcedureRefusal(setting, 'nothing-stored-yet'), none: sayProcedureRefusal(setting, 'nothing-stored') }, setting);

/** The same where something else was stored with it: only the step is not noted. */
export function composeStepWaits(refusal: StepRefusal, setting: Setting): Answer {
  const none = sayProcedureRefusal(setting, 'step-not-noted');
  return composed(refusal, { yet: none, none }, setting);
}

/** What is said at the end: that nothing is stored, or nothing yet. */
interface Stored {
  readonly yet: string;
  readonly none: string;
}

function composed(refusal: StepRefusal, stored: Stored, setting: Setting): Answer {
  const say = (...said: Said): string => sayProcedureRefusal(setting, ...said);
  switch (refusal.code) {
    case 'which-procedure': {
      const [job, choices] = [refusal.job, namesIn(refusal.choices)];
      return asked(refusal.typed === null ? say('which-procedure', { job, choices }) : say('which-procedure-typed', { job, choices, typed: short(refusal.typed) }), refusal.choices);
    }
    case 'no-procedures':
    case 'nothing-begun':
    case 'reason-missing':
      return refused(say(refusal.code));
    case 'procedure-runs':
      return refused(say('procedure-runs', { job: refusal.job, procedure: refusal.procedure, since: clock(refusal.since, setting) }));
    case 'no-procedure':
      return asked(refusal.choices.length === 0 ? say('no-procedure', { job: refusal.job }) : say('no-procedure-begin', { job: refusal.job, choices: namesIn(refusal.choices) }), refusal.choices);
    case 'which-step':
      return asked(refusal.typed === null ? say('which-step', { job: refusal.job, stored: stored.yet }) : say(refusal.choices.length === 0 ? 'no-step-fits' : 'which-step-typed', { job: refusal.job, typed: short(refusal.typed), stored: refusal.choices.length === 0 ? stored.none : stored.yet }), refusal.choices);
    case 'nothing-open':
      return refused([say('nothing-open', { job: refusal.job }), ...(refusal.blocked === null ? [] : [saySteps(setting, 'waits', { step: refusal.blocked.step.id, blocks: blocksWords(refusal.blocked.blocks, setting) })])].join(' '));
    case 'step-blocked':
      return refused(say('step-blocked', { ...aboutStep(refusal), blocks: blocksWords(refusal.blocks, setting), stored: stored.none }));
    case 'step-role': {
      const names = namesOf(refusal.may, setting);
      const values = { ...aboutStep(refusal), roles: rolesWords(refusal.may, setting), stored: stored.none };
      return refused(names === null ? say('step-role', values) : say('step-role-named', { ...values, names }));
    }
    case 'step-missing': {
      const left = [...refusal.taps.map(({ label }) => saySteps(setting, 'left-tap', { taps: quotedTap(label, setting) })), ...(refusal.enter.length === 0 ? [] : [enterWords(refusal.enter, setting)])];
      return asked(say('step-missing', { ...aboutStep(refusal), left: left.join(', '), stored: stored.yet }), refusal.taps);
    }
    case 'step-again':
      return asked(say('step-again', { ...aboutStep(refusal), at: clock(refusal.at, setting), who: nameOf(setting.shop, refusal.by) }), [{ label: say('button-again'), line: refusal.line }]);
    case 'step-by-book': {
      const line = shownBy(refusal.step, refusal.job);
      return refused(line === null ? say('step-by-word', aboutStep(refusal)) : say('step-by-book', { ...aboutStep(refusal), line: refusal.step.done.by === 'check' ? `${line} hard` : line }));
    }
    case 'no-hold-point':
    case 'not-done-yet':
      return refused(say(refusal.code, aboutStep(refusal)));
    case 'unknown-tap':
      return asked(say(refusal.taps.length === 0 ? 'nothing-to-tap' : 'unknown-tap', aboutStep(refusal)), refusal.taps);
    case 'not-asked-for':
      return refused(say('not-asked-for', { job: refusal.job, what: figureWord(refusal.what, setting) }));
    case 'odd-figure':
      return refused(say('odd-figure', { text: short(refusal.text), what: figureWord(refusal.what, setting), example: EXAMPLES[refusal.what] ?? say('example-label') }));
    case 'one-moment': {
      const [earliest, latest] = [clock(refusal.earliest, setting), clock(refusal.latest, setting)];
      return asked(say('one-moment', { job: refusal.job, earliest, latest }), [{ label: earliest, line: refusal.earliestLine }, { label: latest, line: refusal.latestLine }]);
    }
    case 'job-held':
      return refused(jobHeld(refusal, stored, setting));
    case 'bond-unconfirmed':
      return refused(bondUnconfirmed(refusal, setting));
  }
}

type Said = [key: Parameters<typeof sayProcedureRefusal>[1], values?: Readonly<Record<string, string>>];

const aboutStep = ({ job, step }: Of<'step-blocked' | 'step-role' | 'step-missing' | 'step-again' | 'step-by-book' | 'no-hold-point' | 'not-done-yet' | 'unknown-tap'>): { readonly job: string; readonly step: string } => ({ job, step: step.id });

function jobHeld({ job, hold, foreman }: Of<'job-held'>, stored: Stored, setting: Setting): string {
  const values = { job, at: clock(hold.at, setting), who: nameOf(setting.shop, hold.by), reason: hold.reason, stored: stored.none };
  return foreman === 'channel' ? sayProcedureRefusal(setting, 'job-held', values) : sayProcedureRefusal(setting, 'job-held-named', { ...values, foreman: nameOf(setting.shop, foreman) });
}

function bondUnconfirmed({ job, card, waits: { outlook, milestone, dueAt } }: Of<'bond-unconfirmed'>, setting: Setting): string {
  const values = { job, card, milestone: milestoneWord(milestone, setting), material: outlook.cure.card.name, joint: outlook.cure.ref.joint };
  if (dueAt === null) return sayProcedureRefusal(setting, 'bond-unconfirmed', values);
  return sayProcedureRefusal(setting, dueAt <= setting.now ? 'bond-unconfirmed-due' : 'bond-unconfirmed-earliest', { ...values, at: clock(dueAt, setting) });
}

/** Null: nobody who may is on the list. */
function namesOf(roles: readonly string[], { shop }: Setting): string | null {
  const names = shop.people.filter(({ role }) => roles.includes(role) && role !== 'apprentice').map(({ name }) => name);
  return names.length === 0 ? null : names.slice(0, 3).join(', ');
}

const figureWord = (what: Entering, reader: Reader): string => (what === 'air' ? sayProcedureRefusal(reader, 'figure-air') : saySteps(reader, `enter-${what}`));

/** What a figure looks like; for a photo its own word. */
const EXAMPLES: Readonly<Record<Entering, string | null>> = { batch: '55-B', expiry: '2027-03', opened: '2026-02-28', air: '19 rh 55', metal: '18', photo: null };
