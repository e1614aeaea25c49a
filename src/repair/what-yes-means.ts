import { MILESTONE_KINDS } from '../cure/card.js';
import { minus, minutes, type Instant } from '../cure/units.js';
import { runningOutlooks } from './book.js';
import type { EntryCommand } from './commands.js';
import type { Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { lineOf } from './line-of.js';
import { currentMilestone, stateOf, type Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import { openQuestionsTo } from './subject.js';

type Check = Extract<EntryCommand, { readonly kind: 'check' }>;
type Meant = { readonly ok: true; readonly command: EntryCommand } | { readonly ok: false; readonly refusal: Refusal };

/** An offer that nobody took for so long is no question any more. */
const OFFER_STANDS = minutes(24 * 60);
const MOST_CHOICES = 4;

/** One open question, and what yes says to it. */
interface Open {
  readonly yes: 'hard' | 'on' | 'accept';
  readonly job: JobNo | null;
  readonly command: EntryCommand;
}

/**
 * What a line means to whoever says it. A bare `ok` answers the one question that is open to this person: a check, a lamp, a handover.
 * The thread it stands in decides before anything else; where two are open it is asked about, never guessed.
 */
export function whatIsMeant(command: EntryCommand, situation: Situation): Meant {
  if (command.kind !== 'check' || command.yes !== true) return { ok: true, command };
  const here = aboutCures(command, situation).filter(({ command: said }) => situation.thread === null || ('job' in said && said.job === situation.thread));
  const open = situation.thread !== null ? here : [...offered(situation), ...here];
  const [only, ...others] = open;
  if (only === undefined) return notAsked(command, situation);
  if (others.length === 0) return { ok: true, command: only.command };
  return { ok: false, refusal: { code: 'which-question', choices: open.slice(0, MOST_CHOICES).map(({ yes, job, command: said }) => ({ yes, job, line: lineOf(said) })) } };
}

/** Whoever was not asked may have said it to a colleague: a strength is confirmed by its own word, never by a yes that met nobody's question. */
function notAsked(command: Check, { book, shop, now, thread }: Situation): Meant {
  const due = runningOutlooks(book, shop, thread === null ? book.openJobs() : [thread]).flatMap((outlook) => dueCheck(command, outlook, now) ?? []);
  if (due.length === 0) return { ok: true, command };
  return { ok: false, refusal: { code: 'which-question', choices: due.slice(0, MOST_CHOICES).map(({ yes, job, command: said }) => ({ yes, job, line: lineOf(said) })) } };
}

function dueCheck({ when }: Check, outlook: Outlook, now: Instant): Open | null {
  const due = currentMilestone(outlook, now);
  if (due === null || stateOf(outlook, due, now) !== 'due') return null;
  const { job, ref } = outlook.cure;
  return { yes: 'hard', job, command: { kind: 'check', job, joint: ref.joint, milestone: due.kind, result: 'hard', when } };
}

function offered({ book: { people }, by, now }: Situation): Open[] {
  const offer = people.offers.findLast((one) => one.to === by && one.at > minus(now, OFFER_STANDS));
  return offer === undefined || offer.accepted !== null ? [] : [{ yes: 'accept', job: null, command: { kind: 'accept' } }];
}

const aboutCures = (command: Check, { book, shop, by }: Situation): Open[] => runningOutlooks(book, shop, book.openJobs()).flatMap((outlook) => answerTo(command, outlook, by) ?? []);

function answerTo({ when }: Check, outlook: Outlook, by: string): Open | null {
  const asked = openQuestionsTo(outlook, by).at(-1)?.kind;
  const { job, ref } = outlook.cure;
  const subject = { job, joint: ref.joint };
  if (asked === 'still-on') return { yes: 'on', job, command: { kind: 'on', ...subject, lamp: null, when } };
  const milestone = MILESTONE_KINDS.find((kind) => kind === asked);
  return milestone === undefined ? null : { yes: 'hard', job, command: { kind: 'check', ...subject, milestone, result: 'hard', when } };
}
