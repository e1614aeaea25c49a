import type { JobCommand } from '../../repair/commands.js';
import type { EntryNo, JobNo, PersonId } from '../../repair/ids.js';
import { isOver, type Outlook } from '../../repair/outlook.js';
import { nameOf, personNamed } from '../../repair/people.js';
import { waitingList } from '../../repair/waiting.js';
import type { Answer, Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayLists } from '../catalogue/lists.js';
import { sayPeople } from '../catalogue/people.js';
import { saySteps } from '../catalogue/steps.js';
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
  if (first?.fact.type !== 'handed') return answer('plain', [sayPeople(setting, 'has-it-already', { name: capital(typedName(command.to, setting)) })]);
  const name = nameOf(setting.shop, first.fact.to);
  return listed([sayPeople(setting, 'handed', { job: first.job ?? '', name })], nextFor(null, outlooks, setting), outlooks, undo(entry, setting), setting);
}

function offered({ command, facts, entry, outlooks }: Of<'handover'>, setting: Setting): Answer {
  const [first] = facts;
  if (first?.fact.type !== 'handover-offered') return answer('plain', [sayPeople(setting, 'nothing-changed')]);
  const name = nameOf(setting.shop, first.fact.to);
  const offer = { name, jobs: first.fact.jobs.join(', ') };
  const { except } = command;
  const said = except.length === 0 ? sayPeople(setting, 'offered', offer) : sayPeople(setting, 'offered-except', { ...offer, kept: except.join(', '), count: except.length });
  return listed([said], nextFor(first.fact.to, outlooks, setting), outlooks, undo(entry, setting), setting);
}

function accepted({ by, facts, notes, entry, outlooks }: Of<'accept'>, setting: Setting): Answer {
  const already = notes.find((note) => note.note === 'already-accepted');
  if (already !== undefined) return answer('plain', [sayPeople(setting, 'accepted-already', { who: nameOf(setting.shop, already.by), at: clock(already.at, setting) })]);
  const taken = facts.flatMap(({ job, fact }) => (fact.type === 'handed' && job !== null ? [job] : []));
  const at = clock(setting.now, setting);
  return listed([taken.length === 0 ? sayPeople(setting, 'accepted-nothing', { at }) : sayPeople(setting, 'accepted', { at, jobs: taken.join(', ') })], nextFor(by, outlooks, setting), outlooks, undo(entry, setting), setting);
}

function busy({ by, facts, entry }: JobEntered<PeopleCommand>, setting: Setting): Answer {
  const until = facts.flatMap(({ fact }) => (fact.type === 'busy' ? [fact.until] : []))[0] ?? setting.now;
  return answer('plain', [sayPeople(setting, 'busy', { who: nameOf(setting.shop, by), until: clock(until, setting) })], undo(entry, setting));
}

function adopted({ command, facts, entry }: Of<'adopt'>, setting: Setting): Answer {
  const [first] = facts;
  if (first?.fact.type !== 'adopted') return answer('plain', [sayPeople(setting, 'one-of-us-already', { name: capital(typedName(command.person, setting)) })]);
  return answer('plain', [sayPeople(setting, 'adopted', { name: first.fact.name, role: saySteps(setting, `role-${first.fact.role}`) })], undo(entry, setting));
}

function turnedAway({ facts, entry }: JobEntered<PeopleCommand>, setting: Setting): Answer {
  const [first] = facts;
  if (first?.fact.type !== 'adoption-refused') return answer('plain', [sayPeople(setting, 'not-waiting')]);
  return answer('plain', [sayPeople(setting, 'turned-away', { name: nameOf(setting.shop, first.fact.person) })], undo(entry, setting));
}

/** To whoever got a job, or had it until now. */
export function composeHanded(job: JobNo, to: PersonId, by: PersonId, outlooks: readonly Outlook[], setting: Setting): Answer {
  return listed([sayPeople(setting, 'handed-by', { job, name: nameOf(setting.shop, to), who: nameOf(setting.shop, by), at: clock(setting.now, setting) })], nextFor(null, outlooks, setting), outlooks, [], setting);
}

/** To whoever is to take over. */
export function composeOffer(from: PersonId, jobs: readonly JobNo[], outlooks: readonly Outlook[], setting: Setting): Answer {
  const asked = listed([sayPeople(setting, 'offer', { who: nameOf(setting.shop, from), jobs: jobs.join(', ') })], nextFor(null, outlooks, setting), outlooks, [button(sayPeople(setting, 'button-accept'), 'accept')], setting);
  return { ...asked, tone: 'question' };
}

/** To whoever gave. */
export function composeAccepted(by: PersonId, jobs: readonly JobNo[], setting: Setting): Answer {
  const values = { who: nameOf(setting.shop, by), at: clock(setting.now, setting) };
  return answer('plain', [jobs.length === 0 ? sayPeople(setting, 'taken-over-nothing', values) : sayPeople(setting, 'taken-over', { ...values, jobs: jobs.join(', ') })]);
}

/** To the foreman, about somebody who wanted to enter something. */
export function composeStranger(person: PersonId, setting: Setting): Answer {
  return answer('question', [sayPeople(setting, 'stranger', { name: nameOf(setting.shop, person) })], [
    button(sayPeople(setting, 'button-technician'), `adopt ${person} technician`),
    button(sayPeople(setting, 'button-apprentice'), `adopt ${person} apprentice`),
    button(sayPeople(setting, 'button-not-ours'), `refuse ${person}`),
  ]);
}

function nextFor(person: PersonId | null, outlooks: readonly Outlook[], setting: Setting): string | null {
  const waiting = waitingList(outlooks.filter((outlook) => !isOver(outlook)), setting.now);
  if (waiting.length === 0) return null;
  const first = waiting.slice(0, MOST_NEXT).map((one) => `${title(one.outlook)} ${waitingWords(one, setting)}`);
  const more = waiting.length > MOST_NEXT ? [sayLists(setting, 'more', { more: `${waiting.length - MOST_NEXT}` })] : [];
  const cars = [...first, ...more].join('; ');
  return person === null ? sayPeople(setting, 'next', { cars }) : sayPeople(setting, 'next-for', { who: nameOf(setting.shop, person), cars });
}

const listed = (first: readonly string[], next: string | null, outlooks: readonly Outlook[], buttons: readonly Button[], setting: Setting): Answer =>
  markedExample(answer('plain', [...first, next], buttons), next === null ? [] : outlooks.map((outlook) => outlook.cure.card), setting);

const undo = (entry: EntryNo | null, setting: Setting): Button[] => (entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)]);

const typedName = (typed: string, { shop }: Setting): string => personNamed(shop.people, typed)?.name ?? typed;
