import type { JobCommand } from '../../repair/commands.js';
import type { EntryNo, JobNo, PersonId } from '../../repair/ids.js';
import { isOver, type Outlook } from '../../repair/outlook.js';
import { nameOf, personNamed } from '../../repair/people.js';
import { waitingList } from '../../repair/waiting.js';
import type { Answer, Button } from '../answer.js';
import type { JobEntered } from './job-entry.js';
import { waitingWords } from './lists.js';
import { markedExample, title } from './state.js';
import { answer, button, capital, clock, type Setting } from './words.js';

type PeopleCommand = Extract<JobCommand, { readonly kind: 'hand' | 'handover' | 'accept' | 'busy' | 'adopt' | 'turn-away' }>;

/** So many cars fit into the one line that says what comes next. */
const MOST_NEXT = 4;

/** Who has what from now on, and what comes next for them, worst first. */
export function composePeople(entered: JobEntered<PeopleCommand>, setting: Setting): Answer {
  const { command } = entered;
  switch (command.kind) {
    case 'hand':
      return handed({ ...entered, command }, setting);
    case 'handover':
      return offered({ ...entered, command }, setting);
    case 'accept':
      return accepted({ ...entered, command }, setting);
    case 'busy':
      return busy(entered, setting);
    case 'adopt':
      return adopted({ ...entered, command }, setting);
    case 'turn-away':
      return turnedAway(entered, setting);
  }
}

type Of<K extends PeopleCommand['kind']> = JobEntered<Extract<PeopleCommand, { readonly kind: K }>>;

function handed({ command, facts, entry, outlooks }: Of<'hand'>, setting: Setting): Answer {
  const [first] = facts;
  if (first?.fact.type !== 'handed') return answer('plain', [`${capital(typedName(command.to, setting))} has it already. Nothing changed.`]);
  const name = nameOf(setting.shop, first.fact.to);
  return listed([`**${first.job ?? ''}** is **${name}'s** now; ${name} is told.`], nextFor(null, outlooks, setting), outlooks, undo(entry), setting);
}

function offered({ command, facts, entry, outlooks }: Of<'handover'>, setting: Setting): Answer {
  const [first] = facts;
  if (first?.fact.type !== 'handover-offered') return answer('plain', ['Nothing changed.']);
  const name = nameOf(setting.shop, first.fact.to);
  const stays = command.except.length === 0 ? '' : ` ${command.except.join(', ')} ${command.except.length === 1 ? 'stays' : 'stay'} with you.`;
  return listed([`Offered to **${name}**: ${first.fact.jobs.join(', ')}. They stay yours until ${name} accepts.${stays}`], nextFor(first.fact.to, outlooks, setting), outlooks, undo(entry), setting);
}

function accepted({ by, facts, notes, entry, outlooks }: Of<'accept'>, setting: Setting): Answer {
  const already = notes.find((note) => note.note === 'already-accepted');
  if (already !== undefined) return answer('plain', [`Already accepted by **${nameOf(setting.shop, already.by)}** ${clock(already.at, setting)}. Nothing changed.`]);
  const taken = facts.some(({ fact }) => fact.type === 'handed');
  return listed([`Accepted **${clock(setting.now, setting)}**.${taken ? '' : ' Nothing of it is open any more.'}`], nextFor(by, outlooks, setting), outlooks, undo(entry), setting);
}

function busy({ by, facts, entry }: JobEntered<PeopleCommand>, setting: Setting): Answer {
  const until = facts.flatMap(({ fact }) => (fact.type === 'busy' ? [fact.until] : []))[0] ?? setting.now;
  return answer('plain', [`${nameOf(setting.shop, by)} busy until **${clock(until, setting)}**: what can wait waits. Too hot and open limits come all the same.`], undo(entry));
}

function adopted({ command, facts, entry }: Of<'adopt'>, setting: Setting): Answer {
  const [first] = facts;
  if (first?.fact.type !== 'adopted') return answer('plain', [`${capital(typedName(command.person, setting))} is one of the shop's people already. Nothing changed.`]);
  return answer('plain', [`**${first.fact.name}** is ${first.fact.role} here from now on, and may enter.`], undo(entry));
}

function turnedAway({ facts, entry }: JobEntered<PeopleCommand>, setting: Setting): Answer {
  const [first] = facts;
  if (first?.fact.type !== 'adoption-refused') return answer('plain', ['They do not wait for an answer. Nothing changed.']);
  return answer('plain', [`**${nameOf(setting.shop, first.fact.person)}** is not taken on: may ask, enters nothing.`], undo(entry));
}

/** To whoever got a job, or had it until now. */
export function composeHanded(job: JobNo, to: PersonId, by: PersonId, outlooks: readonly Outlook[], setting: Setting): Answer {
  return listed([`**${job}** is **${nameOf(setting.shop, to)}'s** now (${nameOf(setting.shop, by)} ${clock(setting.now, setting)}).`], nextFor(null, outlooks, setting), outlooks, [], setting);
}

/** To whoever is to take over. */
export function composeOffer(from: PersonId, jobs: readonly JobNo[], outlooks: readonly Outlook[], setting: Setting): Answer {
  const asked = listed([`**Handover** from ${nameOf(setting.shop, from)}: ${jobs.join(', ')}. Yours once you accept.`], nextFor(null, outlooks, setting), outlooks, [button('Accept', 'accept')], setting);
  return { ...asked, tone: 'question' };
}

/** To whoever gave. */
export const composeAccepted = (by: PersonId, jobs: readonly JobNo[], setting: Setting): Answer =>
  answer('plain', [`**${nameOf(setting.shop, by)}** has taken over${jobs.length === 0 ? '' : ` ${jobs.join(', ')}`} (${clock(setting.now, setting)}).`]);

/** To the foreman, about somebody who wanted to enter something. */
export function composeStranger(person: PersonId, setting: Setting): Answer {
  const name = nameOf(setting.shop, person);
  return answer('question', [`**${name}** is not one of the shop's people and wanted to enter something. Nothing was stored. Take them on?`], [button('Technician', `adopt ${person} technician`), button('Apprentice', `adopt ${person} apprentice`), button('Not ours', `refuse ${person}`)]);
}

function nextFor(person: PersonId | null, outlooks: readonly Outlook[], setting: Setting): string | null {
  const waiting = waitingList(outlooks.filter((outlook) => !isOver(outlook)), setting.now);
  if (waiting.length === 0) return null;
  const cars = waiting.slice(0, MOST_NEXT).map((one) => `${title(one.outlook)} ${waitingWords(one, setting)}`);
  const more = waiting.length > MOST_NEXT ? [`and ${waiting.length - MOST_NEXT} more`] : [];
  return `Next${person === null ? '' : ` for ${nameOf(setting.shop, person)}`}: ${[...cars, ...more].join('; ')}.`;
}

const listed = (first: readonly string[], next: string | null, outlooks: readonly Outlook[], buttons: readonly Button[], setting: Setting): Answer =>
  markedExample(answer('plain', [...first, next], buttons), next === null ? [] : outlooks.map((outlook) => outlook.cure.card), setting);

const undo = (entry: EntryNo | null): Button[] => (entry === null ? [] : [button('Undo', `undo ${entry}`)]);

const typedName = (typed: string, { shop }: Setting): string => personNamed(shop.people, typed)?.name ?? typed;
