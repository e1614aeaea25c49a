import type { Subject } from './commands.js';
import type { Situation } from './decision.js';
import { outlooksOf, runningOutlooks } from './book.js';
import { MILESTONE_KINDS } from '../cure/card.js';
import type { JobNo, LampName } from './ids.js';
import type { Job, Raised } from './job.js';
import { isLeftOn, litOutlooks } from './left-on.js';
import { lineOf, type LineCommand } from './line-of.js';
import { meantCures } from './meant-cures.js';
import { currentMilestone, isOver, type Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import type { ReminderKind } from './reminder.js';
import { isFireWatch } from './watch-card.js';

type Aimed = Extract<LineCommand, Subject>;
type Found = { readonly ok: true; readonly outlook: Outlook } | { readonly ok: false; readonly refusal: Refusal };

const MOST_CHOICES = 4;

/**
 * The one cure a command is about: the job named, the thread's job, the newest question put to this person,
 * or the only cure that fits. Never a guess between two: then it asks.
 */
export function cureFor(command: Aimed, situation: Situation): Found {
  const job = jobFor(command, situation);
  if (typeof job !== 'string') return { ok: false, refusal: job };
  const known = situation.book.job(job);
  if (known === null) return { ok: false, refusal: { code: 'unknown-job', job, choices: choicesOf(command, nearJobs(job, situation.book.openJobs())) } };
  const all = outlooksOf(known, situation.shop, situation.book.air);
  const isLamps = command.kind === 'on' || command.kind === 'off';
  const running = all.filter((outlook) => !isOver(outlook) || (!outlook.cure.scrapped && outlook.overMaximum !== null) || (isLamps && isLeftOn(outlook, situation.now)));
  const asked = meantCures(command, command.kind === 'check' ? all.filter((outlook) => !outlook.cure.scrapped) : command.kind === 'when' || command.kind === 'why' ? (running.length > 0 ? running : all) : running);
  const onJoint = asked.filter((outlook) => command.joint === null || outlook.cure.ref.joint === command.joint || isFireWatch(outlook.cure.card));
  if (onJoint.length === 0 && command.kind === 'check' && command.result === 'hard' && all.some(({ cure }) => isFireWatch(cure.card) && !cure.scrapped)) return { ok: false, refusal: { code: 'watch-own-word', job } };
  if (onJoint.length === 0) return { ok: false, refusal: all.length === 0 ? wentAway(known) ?? { code: 'nothing-runs', job } : { code: 'nothing-runs', job } };
  const joints = [...new Set(onJoint.map((outlook) => outlook.cure.ref.joint))];
  const fitting = bestFit(command, onJoint, situation);
  if (joints.length > 1 && fitting.length !== 1) {
    return { ok: false, refusal: { code: 'which-joint', job, choices: joints.map((joint) => ({ joint, line: redirected(command, { job, joint }) })) } };
  }
  const outlook = fitting.at(-1) ?? onJoint.at(-1);
  return outlook === undefined ? { ok: false, refusal: { code: 'nothing-runs', job } } : { ok: true, outlook };
}

/** Everything that was entered there belonged to another job. */
function wentAway({ no, live }: Job): Refusal | null {
  const gone = live.flatMap(({ fact, happenedAt, by }) => (fact.type === 'moved-away' ? [{ to: fact.toJob, card: fact.cure.card, at: happenedAt, by }] : []));
  const last = gone.at(-1);
  if (last === undefined) return null;
  return { code: 'moved-away', job: no, to: last.to, cards: gone.filter(({ to, at }) => to === last.to && at === last.at).map(({ card }) => card), at: last.at, by: last.by };
}

/** The job a command means; a refusal when two would fit. */
function jobFor(command: Subject & { readonly kind: string } & Aimed, situation: Situation): JobNo | Refusal {
  if (command.job !== null) return command.job;
  if (situation.thread !== null) return situation.thread;
  const open = situation.book.openJobs();
  const lamp = 'lamp' in command ? command.lamp : null;
  const running = meantCures(command, standing(command, open, situation));
  const candidates = lamp === null ? mine(command, running, situation) : withLamp(running, lamp);
  const jobs = [...new Set(candidates.map((outlook) => outlook.cure.job))];
  const [only] = jobs;
  if (only !== undefined && jobs.length === 1) return only;
  if (running.length === 0) return { code: 'nothing-asked' };
  return { code: 'which-job', choices: choicesOf(command, jobs.length > 0 ? jobs : open) };
}

/** What runs; for a word about a lamp also where nothing waits any more and the lamp was left on. */
const standing = ({ kind }: Aimed, open: readonly JobNo[], { book, shop, now }: Situation): Outlook[] => (kind === 'on' || kind === 'off' ? litOutlooks(book, shop, open, now) : runningOutlooks(book, shop, open));

/** Asks for the job of a command that must name one. */
export function whichJob(command: Aimed, { book }: Situation): Refusal {
  const open = book.openJobs();
  return open.length === 0 ? { code: 'nothing-asked' } : { code: 'which-job', choices: choicesOf(command, open) };
}

const withLamp = (running: readonly Outlook[], lamp: LampName): Outlook[] => running.filter((outlook) => outlook.cure.lamp === lamp);

/** Questions put to this person first, then their own cures, then the only one in the shop. */
function mine(command: Aimed, running: readonly Outlook[], { by }: Situation): readonly Outlook[] {
  const questioned = running.filter((outlook) => openQuestionTo(outlook, by).some((kind) => answers(command, kind)));
  if (questioned.length > 0) return questioned;
  const own = running.filter((outlook) => outlook.cure.owner === by);
  return own.length > 0 ? own : running;
}

const openQuestionTo = (outlook: Outlook, by: string): ReminderKind[] => openQuestionsTo(outlook, by).map((raised) => raised.kind);

/** What this person was asked about a cure since anybody last entered something about it. */
export const openQuestionsTo = ({ cure }: Outlook, by: string): Raised[] =>
  cure.raised.filter((raised) => (raised.to === by || raised.to === 'channel') && raised.at >= cure.touchedAt);

/** Whether a bare word can be the answer to a question of this kind. */
function answers(command: Aimed, kind: ReminderKind): boolean {
  switch (command.kind) {
    case 'check':
      return kind === 'decision' || MILESTONE_KINDS.some((milestone) => milestone === kind);
    case 'on':
    case 'off':
      return kind !== 'open-limit' && kind !== 'decision' && kind !== 'handover';
    case 'later':
      return kind !== 'handover';
    case 'closed':
      return kind === 'open-limit';
    case 'read':
      return kind === 'reading' || kind === 'still-on';
    case 'lamp':
      return kind === 'stage';
    default:
      return false;
  }
}

function bestFit(command: Aimed, outlooks: readonly Outlook[], situation: Situation): Outlook[] {
  if (command.kind === 'closed') return outlooks.filter((outlook) => outlook.cure.closed === null);
  if (command.kind === 'check') {
    const due = outlooks.filter((outlook) => waitsForAnswer(outlook, situation));
    const named = due.filter((outlook) => command.milestone === null || outlook.milestones.some((one) => one.kind === command.milestone));
    return newestLast(named.length > 0 ? named : outlooks);
  }
  if (command.kind === 'later') {
    const asked = outlooks.filter((outlook) => openQuestionTo(outlook, situation.by).length > 0);
    return newestLast(asked.length > 0 ? asked : outlooks);
  }
  if (command.kind === 'off' || command.kind === 'on') return heated(command.lamp, outlooks);
  return [...outlooks];
}

/** The one that was asked about last comes last. */
const newestLast = (outlooks: readonly Outlook[]): Outlook[] => [...outlooks].sort((one, other) => askedAt(one) - askedAt(other));

const askedAt = ({ cure }: Outlook): number => cure.raised.at(-1)?.at ?? 0;

/** The lamp named, else the joints that have any heat. */
function heated(lamp: LampName | null, outlooks: readonly Outlook[]): Outlook[] {
  const under = outlooks.filter((outlook) => (lamp === null ? outlook.heat.lamp !== 'never' || outlook.heat.counted !== null : outlook.cure.lamp === lamp));
  const joints = new Set(under.map((outlook) => outlook.cure.ref.joint));
  return joints.size === 1 || (lamp !== null && joints.size > 1) ? under.slice(-1) : [...outlooks];
}

function waitsForAnswer(outlook: Outlook, { now }: Situation): boolean {
  const current = currentMilestone(outlook, now);
  return current?.check.dueAt != null && now >= current.check.dueAt;
}

/** The same command for another job or joint. */
const redirected = (command: Aimed, to: Subject): string => lineOf({ ...command, ...to });

const choicesOf = (command: Aimed, jobs: readonly JobNo[]): { job: JobNo; line: string }[] =>
  jobs.slice(0, MOST_CHOICES).map((job) => ({ job, line: redirected(command, { job, joint: command.joint }) }));

/** Open jobs that differ by one digit, or in which two neighbouring digits changed places. */
export function nearJobs(job: JobNo, open: readonly JobNo[]): JobNo[] {
  return open.filter((other) => other.length === job.length && differences(job, other) <= 1).concat(open.filter((other) => isSwapped(job, other)));
}

const differences = (one: string, other: string): number => Array.from(one).filter((letter, index) => letter !== other[index]).length;

/** The same figures, two of them changed over. */
export const isSwapped = (one: string, other: string): boolean =>
  one !== other && one.length === other.length && differences(one, other) === 2 && Array.from(one).sort().join('') === Array.from(other).sort().join('');
