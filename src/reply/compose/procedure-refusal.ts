import { nameOf } from '../../repair/people.js';
import type { Entering } from '../../repair/procedure.js';
import type { StepRefusal } from '../../repair/step-refusal.js';
import type { Answer } from '../answer.js';
import { blocksWords, enterWords, rolesWords, short } from './step-line.js';
import { answer, button, capital, clock, MILESTONE_WORDS, type Setting } from './words.js';

type Choices = readonly { readonly label: string; readonly line: string }[];

const MOST_BUTTONS = 5;

const namesIn = (choices: Choices): string => choices.map(({ label }) => label).join(', ');
const refused = (sentence: string): Answer => answer('refusal', [sentence]);
const asked = (sentence: string, choices: Choices): Answer => answer('question', [sentence], choices.slice(0, MOST_BUTTONS).map(({ label, line }) => button(short(capital(label)), line)));

/** Why nothing was stored about the steps of a job, and what to do. */
export function composeStepRefusal(refusal: StepRefusal, setting: Setting): Answer {
  switch (refusal.code) {
    case 'which-procedure':
      return asked(`${refusal.job}: ${refusal.typed === null ? 'which procedure?' : `no procedure **${short(refusal.typed)}** here. Which one?`} ${namesIn(refusal.choices)}. Nothing stored yet.`, refusal.choices);
    case 'no-procedures':
      return refused('No procedures are written down for this shop. Nothing stored.');
    case 'procedure-runs':
      return refused(`${refusal.job}: **${refusal.procedure}** runs since ${clock(refusal.since, setting)}. Go on with it: \`next ${refusal.job}\`. Nothing stored.`);
    case 'no-procedure':
      return asked(`${refusal.job} has begun no procedure.${refusal.choices.length === 0 ? '' : ` Begin one? ${namesIn(refusal.choices)}.`} Nothing stored.`, refusal.choices);
    case 'nothing-begun':
      return refused('No job has begun a procedure. Begin one: `begin 501`.');
    case 'which-step':
      return asked(`${refusal.job}: ${refusal.typed === null ? 'which step?' : `no step **${short(refusal.typed)}** here. Which one?`} Nothing stored yet.`, refusal.choices);
    case 'nothing-open':
      return refused(`${refusal.job}: nothing of that is open for you.${refusal.blocked === null ? '' : ` **${refusal.blocked.step.id}** waits: ${blocksWords(refusal.blocked.blocks, setting)}.`}`);
    case 'step-blocked':
      return refused(`${refusal.job} ${refusal.step.id} **NOT yet**: ${blocksWords(refusal.blocks, setting)}. Nothing stored.`);
    case 'step-role':
      return refused(`${refusal.job} ${refusal.step.id}: that is for ${rolesWords(refusal.may)}${namesOf(refusal.may, setting)}. Nothing stored.`);
    case 'step-missing':
      return asked(`${refusal.job} ${refusal.step.id}: first ${[...refusal.taps.map(({ label }) => `tap “${label}”`), ...(refusal.enter.length === 0 ? [] : [enterWords(refusal.enter)])].join(', ')}. Nothing stored yet.`, refusal.taps);
    case 'step-again':
      return asked(`${refusal.job} **${refusal.step.id}** is done already: ${clock(refusal.at, setting)}, ${nameOf(setting.shop, refusal.by)}. Done **once more**? Then its time begins anew, and what followed it is done again. Nothing stored yet.`, [{ label: 'Done again', line: refusal.line }]);
    case 'step-by-book':
      return refused(`${refusal.job} ${refusal.step.id}: the book shows that by itself, when ${byBook(refusal)} is entered. Nothing stored.`);
    case 'no-hold-point':
      return refused(`${refusal.job} ${refusal.step.id} needs no signature.`);
    case 'not-done-yet':
      return refused(`${refusal.job} ${refusal.step.id} is not done yet: sign it after that. Nothing stored.`);
    case 'unknown-tap':
      return asked(`${refusal.job} ${refusal.step.id} has ${refusal.taps.length === 0 ? 'nothing to tap' : 'no such tap'}. Nothing stored.`, refusal.taps);
    case 'not-asked-for':
      return refused(`${refusal.job}: no step asks for ${FIGURE_WORDS[refusal.what]}. Nothing stored.`);
    case 'odd-figure':
      return refused(`**${short(refusal.text)}** is no ${FIGURE_WORDS[refusal.what]} that I can read. Example: \`${EXAMPLES[refusal.what]}\`. Nothing stored.`);
    case 'reason-missing':
      return refused('Write the reason behind it, in words: it stays in the record. Nothing stored.');
    case 'one-moment':
      return asked(`${refusal.job}: this step needs one time. ${clock(refusal.earliest, setting)} or ${clock(refusal.latest, setting)}? Nothing stored yet.`, [{ label: clock(refusal.earliest, setting), line: refusal.earliestLine }, { label: clock(refusal.latest, setting), line: refusal.latestLine }]);
    case 'job-held':
      return refused(`${refusal.job} **HELD** since ${clock(refusal.hold.at, setting)} by ${nameOf(setting.shop, refusal.hold.by)}: “${refusal.hold.reason}”. Only the foreman releases it${foremanWords(refusal.foreman, setting)}. Nothing stored.`);
    case 'bond-unconfirmed': {
      const { outlook, milestone, dueAt } = refusal.waits;
      const when = dueAt === null ? '' : dueAt <= setting.now ? ` (due since ${clock(dueAt, setting)}: check it)` : ` (earliest **${clock(dueAt, setting)}**)`;
      return refused(`${refusal.job} **HOLD**: ${MILESTONE_WORDS[milestone]} of ${outlook.cure.card.name} on ${outlook.cure.ref.joint} is not confirmed${when}. ${refusal.card} over it lifts and shows later. Only the foreman can go on: \`override ${refusal.job} fill reason\`. Nothing stored.`);
    }
  }
}

function namesOf(roles: readonly string[], { shop }: Setting): string {
  const names = shop.people.filter(({ role }) => roles.includes(role) && role !== 'apprentice').map(({ name }) => name);
  return names.length === 0 ? '' : ` (${names.slice(0, 3).join(', ')})`;
}

const foremanWords = (foreman: Extract<StepRefusal, { code: 'job-held' }>['foreman'], { shop }: Setting): string => (foreman === 'channel' ? '' : ` (${nameOf(shop, foreman)})`);

function byBook({ job, step }: Extract<StepRefusal, { code: 'step-by-book' }>): string {
  const there = `${job}${step.joint === null ? '' : ` ${step.joint}`}`;
  if (step.done.by === 'check') return `\`check ${there} ${step.done.milestone} hard\``;
  return step.done.by === 'entry' ? `\`${{ pasted: 'paste', closed: 'closed', 'lamp-set': 'lamp' }[step.done.entry]} ${there}\`` : 'it';
}

const FIGURE_WORDS: Readonly<Record<Entering, string>> = { batch: 'batch', expiry: 'expiry date', opened: 'opened date', air: 'air', metal: 'metal temperature', photo: 'photo' };
const EXAMPLES: Readonly<Record<Entering, string>> = { batch: '55-B', expiry: '2027-03', opened: '2026-02-28', air: '19 rh 55', metal: '18', photo: 'label' };
