import { minutes, plus } from '../cure/units.js';
import { outlooksOf } from './book.js';
import type { JobCommand } from './commands.js';
import { refuse, type Decision, type NewFact, type Situation } from './decision.js';
import type { Fact } from './facts.js';
import type { JobNo, PersonId } from './ids.js';
import type { Job } from './job.js';
import { isOver } from './outlook.js';
import { knownRole, personNamed, worksAtCars } from './people.js';
import type { Offer } from './people-facts.js';
import type { Refusal } from './refusal.js';
import { lineOf } from './line-of.js';
import { nearJobs, whichJob } from './subject.js';

type Of<K extends JobCommand['kind']> = Extract<JobCommand, { readonly kind: K }>;

/** Nobody is in the booth for longer. */
const LONGEST_BUSY = minutes(12 * 60);
/** What a stranger is taken on as where nothing is said. */
const USUAL_ROLE = 'technician';

/** A job goes to somebody else, at once: every cure of it is theirs from now on. */
export function decideHand(command: Of<'hand'>, situation: Situation): Decision {
  const to = takerOf(command.to, situation);
  if (!to.ok) return refuse(to.refusal);
  const no = jobMeant(command, situation);
  if (no === null) return refuse(whichJob(command, situation));
  const job = situation.book.job(no);
  if (job === null) return refuse({ code: 'unknown-job', job: no, choices: nearJobs(no, situation.book.openJobs()).map((near) => ({ job: near, line: lineOf({ ...command, job: near }) })) });
  const owners = ownersOf(job, situation);
  if (owners.length === 0) return refuse({ code: 'nothing-runs', job: no });
  if (owners.every((owner) => owner === to.person)) return unchanged();
  return stored([{ job: no, happenedAt: situation.now, fact: { type: 'handed', to: to.person } }]);
}

/** The giver's open jobs are offered; they stay the giver's until the other accepts (rule R22). */
export function decideHandover(command: Of<'handover'>, situation: Situation): Decision {
  const to = takerOf(command.to, situation);
  if (!to.ok) return refuse(to.refusal);
  if (to.person === situation.by) return refuse({ code: 'to-yourself' });
  const mine = jobsOf(situation.by, situation);
  const strange = command.except.filter((job) => !mine.includes(job));
  if (strange.length > 0) return refuse({ code: 'not-in-handover', jobs: strange });
  const jobs = mine.filter((job) => !command.except.includes(job));
  if (jobs.length === 0) return refuse({ code: 'nothing-to-hand' });
  return stored([shopFact({ type: 'handover-offered', to: to.person, jobs }, situation)]);
}

/** The newest offer of each giver to this person: what is still the giver's is theirs from now on. */
export function decideAccept(_command: Of<'accept'>, situation: Situation): Decision {
  const { people } = situation.book;
  const mine = people.offers.filter((one) => one.to === situation.by);
  const open = mine.filter((one) => one.accepted === null && mine.findLast((other) => other.from === one.from) === one);
  if (open.length > 0) return stored(open.flatMap((offer) => takenOver(offer, situation)));
  // What was accepted long ago is not what anybody means now.
  const last = people.offers.at(-1);
  if (last === undefined) return refuse({ code: 'nothing-offered' });
  if (last.accepted !== null) return { ok: true, facts: [], about: null, notes: [{ note: 'already-accepted', ...last.accepted }] };
  return refuse({ code: 'offered-to-another', to: last.to });
}

function takenOver(offer: Offer, situation: Situation): NewFact[] {
  const still = jobsOf(offer.from, situation).filter((job) => offer.jobs.includes(job));
  return [shopFact({ type: 'handover-accepted', offer: offer.entry }, situation), ...still.map((job): NewFact => ({ job, happenedAt: situation.now, fact: { type: 'handed', to: offer.to } }))];
}

/** In the booth: what can wait waits until then. */
export function decideBusy(command: Of<'busy'>, situation: Situation): Decision {
  if (command.minutes > LONGEST_BUSY) return refuse({ code: 'too-long-busy', most: LONGEST_BUSY });
  return stored([shopFact({ type: 'busy', until: plus(situation.now, command.minutes) }, situation)]);
}

/** A stranger who has spoken here becomes one of the shop's people. */
export function decideAdopt(command: Of<'adopt'>, situation: Situation): Decision {
  const { people, guests = [] } = situation.shop;
  const guest = personNamed(guests, command.person);
  if (guest !== null) return stored([shopFact({ type: 'adopted', person: guest.id, name: guest.name, role: command.role ?? USUAL_ROLE }, situation)]);
  if (personNamed(people, command.person) !== null) return unchanged();
  return refuse({ code: 'unknown-person', typed: command.person, known: guests.map(({ id }) => id) });
}

/** The foreman does not take a stranger on: they may go on asking, and wait in no list any more. */
export function decideTurnAway({ person }: Of<'turn-away'>, situation: Situation): Decision {
  const { people, guests = [] } = situation.shop;
  const { strangers } = situation.book.people;
  const guest = personNamed(guests, person);
  if (guest !== null) return strangers.includes(guest.id) ? stored([shopFact({ type: 'adoption-refused', person: guest.id }, situation)]) : unchanged();
  const known = personNamed(people, person);
  return refuse(known === null ? { code: 'unknown-person', typed: person, known: strangers } : { code: 'one-of-us', person: known.id });
}

/** The job named, the thread's, or the only one that is this person's. */
function jobMeant({ job }: Of<'hand'>, situation: Situation): JobNo | null {
  const [only, ...others] = jobsOf(situation.by, situation);
  return job ?? situation.thread ?? (others.length === 0 ? only ?? null : null);
}

type Taker = { readonly ok: true; readonly person: PersonId } | { readonly ok: false; readonly refusal: Refusal };

/** Who is meant to take over: somebody of the shop who works at the cars. */
function takerOf(typed: string, { shop }: Situation): Taker {
  const found = personNamed(shop.people, typed);
  const known = shop.people.filter(({ role }) => worksAtCars(role)).map(({ id }) => id);
  if (found === null) return { ok: false, refusal: { code: 'unknown-person', typed, known } };
  const role = knownRole(shop, found.id) ?? found.role;
  return worksAtCars(role) ? { ok: true, person: found.id } : { ok: false, refusal: { code: 'cannot-take', person: found.id, role } };
}

/** Owners of what still waits on a job. */
const ownersOf = (job: Job, { shop, book }: Situation): PersonId[] => outlooksOf(job, shop, book.air).flatMap((outlook) => (isOver(outlook) ? [] : [outlook.cure.owner]));

/** Open jobs in which something is this person's. */
const jobsOf = (person: PersonId, situation: Situation): JobNo[] =>
  situation.book.openJobs().filter((no) => {
    const job = situation.book.job(no);
    return job !== null && ownersOf(job, situation).includes(person);
  });

const shopFact = (fact: Fact, { now }: Situation): NewFact => ({ job: null, happenedAt: now, fact });
const stored = (facts: readonly NewFact[]): Decision => ({ ok: true, facts, about: null, notes: [] });
const unchanged = (): Decision => ({ ok: true, facts: [], about: null, notes: [{ note: 'already-so' }] });
