import type { Situation, NewFact } from '../repair/decision.js';
import { outlooksOf } from '../repair/book.js';
import type { EntryNo, JobNo, PersonId } from '../repair/ids.js';
import type { Outlook } from '../repair/outlook.js';
import { allOnShift } from '../repair/on-shift.js';
import { foremanAt, foremanOf } from '../repair/people.js';
import type { Answer } from '../reply/answer.js';
import { composeAccepted, composeHanded, composeOffer, composeStranger } from '../reply/compose/people.js';
import { settingFor } from '../reply/compose/setting-for.js';
import { composeFireCalled } from '../reply/compose/smoke.js';
import type { NewPost } from './ports.js';

type To = NewPost['to'];

/** What an entry about the people has to tell those who did not make it. `before`: the cures as they stood, the book as it is now. */
export function noticesOf(entry: EntryNo, facts: readonly NewFact[], before: readonly Outlook[], situation: Situation): NewPost[] {
  const [first] = facts;
  switch (first?.fact.type) {
    case 'handed':
      return first.job === null ? [] : handed(entry, first.job, first.fact.to, before, situation);
    case 'handover-offered': {
      const { to, jobs } = first.fact;
      return [notice(entry, to, null, composeOffer(situation.by, jobs, outlooks(jobs, situation), settingFor(to, situation)), situation)];
    }
    case 'handover-accepted':
      return accepted(entry, first.fact.offer, facts, situation);
    case 'fire-reported':
      return fireCalled(entry, situation);
    default:
      return [];
  }
}

/** Nobody said at which car: the foreman and everybody at work hear it once, at once. */
function fireCalled(entry: EntryNo, situation: Situation): NewPost[] {
  const { shop, now, by } = situation;
  const others: readonly To[] = shop.shifts.length === 0 ? shop.people.map(({ id }) => id) : allOnShift(shop, now);
  return [...new Set<To>([foremanAt(shop, now), ...others])].filter((to) => to !== by).map((to) => {
    const { about, ...post } = notice(entry, to, null, composeFireCalled(by, settingFor(to, situation)), situation);
    return { ...post, about: { ...about, kind: 'safety' } };
  });
}

/** Somebody who is not one of the shop's people wanted to enter something. */
export const strangerNotice = (entry: EntryNo, situation: Situation): NewPost => {
  const to = foremanOf(situation.shop);
  const { about, ...post } = notice(entry, to, null, composeStranger(situation.by, settingFor(to, situation)), situation);
  return { ...post, about: { ...about, kind: 'stranger' } };
};

function handed(entry: EntryNo, job: JobNo, to: PersonId, before: readonly Outlook[], situation: Situation): NewPost[] {
  const had = before.filter((outlook) => outlook.cure.job === job).map((outlook) => outlook.cure.owner);
  const others = [...new Set([to, ...had])].filter((person) => person !== situation.by);
  return others.map((person) => notice(entry, person, job, composeHanded(job, to, situation.by, outlooks([job], situation), settingFor(person, situation)), situation));
}

function accepted(entry: EntryNo, offer: EntryNo, facts: readonly NewFact[], situation: Situation): NewPost[] {
  const giver = situation.book.people.offers.find((one) => one.entry === offer)?.from;
  if (giver === undefined || giver === situation.by) return [];
  return [notice(entry, giver, null, composeAccepted(situation.by, facts.flatMap(({ job }) => job ?? []), settingFor(giver, situation)), situation)];
}

const outlooks = (jobs: readonly JobNo[], { book, shop }: Situation): Outlook[] =>
  jobs.flatMap((no) => {
    const job = book.job(no);
    return job === null ? [] : outlooksOf(job, shop, book.air);
  });

const notice = (entry: EntryNo, to: To, job: JobNo | null, answer: Answer, { now }: Situation): NewPost => ({
  key: `notice/${entry}/${to}`,
  at: now,
  dueAt: now,
  to,
  about: { job, joint: null, card: null, kind: 'handover' },
  answer,
});
