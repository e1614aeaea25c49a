import type { MaterialCard } from '../cure/card.js';
import type { Instant } from '../cure/units.js';
import { bansOn, carBans, isFiller } from './car-bans.js';
import { lookupCard } from './cards.js';
import { outlooksOf } from './book.js';
import type { EntryCommand } from './commands.js';
import { refuse, type Decision, type NewFact, type Situation } from './decision.js';
import { runsOf } from './correct-cards.js';
import type { CureRef } from './cure-ref.js';
import type { Cure, Job } from './job.js';
import { FIRST_JOINT, jointNo, type JobNo, type JointNo } from './ids.js';
import { lineOf } from './line-of.js';
import { figuresOf, laidFrom, oddFigure } from './cartridge-facts.js';
import { labelHold } from './label-hold.js';
import { isAdhesive } from './decide-card.js';
import { depthFacts, wrongDepth } from './decide-depth.js';
import { settingFor } from './decide-lamp.js';
import { lampAlone, staysWith } from './lamp-alone.js';
import { isOver, type Outlook } from './outlook.js';
import { plannedCure } from './planned-cure.js';
import { foremanOf } from './people.js';
import type { Refusal } from './refusal.js';
import { cureFor, isSwapped, nearJobs, whichJob } from './subject.js';
import { untimely } from './timely.js';
import type { Unfinished } from './unfinished.js';
import { isFireWatch } from './watch-card.js';
import { whichLamp } from './which-lamp.js';

type Of<K extends EntryCommand['kind']> = Extract<EntryCommand, { readonly kind: K }>;
type Opening = { readonly ok: true; readonly job: JobNo; readonly ref: CureRef; readonly card: MaterialCard; readonly facts: readonly NewFact[] } | { readonly ok: false; readonly decision: Decision };

/** First paste out of the mixer: the open-time clock starts. */
export function decidePaste(command: Of<'paste'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const odd = oddFigure(figuresOf(command.label), situation);
  if (odd !== null) return refuse(odd);
  if (command.again === true) return decideSecondCartridge(command, situation);
  const opening = openCure(command, situation);
  if (!opening.ok) return opening.decision;
  const { job, ref } = opening;
  const about = { job, cure: ref };
  const pasted: NewFact = { job, happenedAt: command.when.latest, fact: { type: 'pasted', cure: ref, earliest: command.when.earliest } };
  return { ok: true, facts: [...opening.facts, ...laidFrom(command.label, about, command.when.latest, situation), pasted, ...depthFacts(command.depth, about, command.when.latest)], about, notes: [] };
}

/** More paste onto a joint that is open: its clock goes on from the first one. */
function decideSecondCartridge(command: Of<'paste'>, situation: Situation): Decision {
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { job, ref, closed, pasted } = found.outlook.cure;
  const { earliest, latest } = command.when;
  if (closed !== null) return refuse({ code: 'already-closed', job, at: closed, line: lineOf({ kind: 'moved', job, joint: ref.joint, when: command.when }) });
  if (pasted !== null && earliest < pasted) return refuse({ code: 'before-step', at: earliest, step: 'pasted', stepAt: pasted });
  const about = { job, cure: ref };
  return { ok: true, facts: [...laidFrom(command.label, about, latest, situation), { job, happenedAt: latest, fact: { type: 'pasted', cure: ref, earliest } }, ...depthFacts(command.depth, about, latest)], about, notes: [{ note: 'second-cartridge' }] };
}

/** Panel set: the strength clock starts; also for a panel whose paste nobody entered. */
export function decideClosed(command: Of<'closed'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor({ ...command, card: null }, situation);
  if (!found.ok) return command.card === null ? refuse(found.refusal) : closedAtOnce(command, situation);
  const { cure } = found.outlook;
  if (command.card !== null && cure.card.name !== command.card) return closedAtOnce(command, situation);
  if (cure.closed !== null) return refuse({ code: 'already-closed', job: cure.job, at: cure.closed, line: lineOf({ kind: 'moved', job: cure.job, joint: cure.ref.joint, when: command.when }) });
  if (cure.lastPasted !== null && command.when.latest < cure.lastPasted) return refuse({ code: 'before-step', at: command.when.latest, step: 'pasted', stepAt: cure.lastPasted });
  const wrong = wrongDepth(command.depth, cure.card);
  if (wrong !== null) return refuse(wrong);
  const about = { job: cure.job, cure: cure.ref };
  const closed: NewFact = { job: cure.job, happenedAt: command.when.latest, fact: { type: 'closed', cure: cure.ref } };
  return { ok: true, facts: [closed, ...depthFacts(command.depth, about, command.when.latest)], about, notes: [] };
}

function closedAtOnce(command: Of<'closed'>, situation: Situation): Decision {
  return decideCure({ kind: 'cure', job: command.job, joint: command.joint, card: command.card, depth: command.depth, setting: null, heater: 'lamp', lamp: null, when: command.when }, situation);
}

/** The panel was shifted: the strength clock starts again, the open clock goes on. */
export function decideMoved(command: Of<'moved'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { cure } = found.outlook;
  const { latest } = command.when;
  if (cure.closed === null) return refuse({ code: 'not-closed', job: cure.job, line: lineOf({ kind: 'closed', job: cure.job, joint: cure.ref.joint, card: null, depth: null, when: command.when }) });
  if (latest < cure.closed) return refuse({ code: 'before-step', at: latest, step: 'closed', stepAt: cure.closed });
  return { ok: true, facts: onThatJoint(cure, latest, situation).map((ref) => ({ job: cure.job, happenedAt: latest, fact: { type: 'moved', cure: ref } })), about: { job: cure.job, cure: cure.ref }, notes: [] };
}

/** A joint that moves takes every cure with it that still runs there. */
function onThatJoint({ job: no, ref }: Cure, moved: Instant, { shop, book }: Situation): CureRef[] {
  const job = book.job(no);
  const running = job === null ? [] : outlooksOf(job, shop, book.air).filter((outlook) => !isOver(outlook) && !isFireWatch(outlook.cure.card)).map(({ cure }) => cure);
  return running.filter((cure) => cure.ref.joint === ref.joint && cure.closed !== null && cure.closed <= moved).map((cure) => cure.ref);
}

/** Short form: closed, and lamp on if one is named, at once. */
export function decideCure(command: Of<'cure'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const odd = oddFigure(figuresOf(command.label), situation);
  if (odd !== null) return refuse(odd);
  const pasted = pastedAlready(command, situation);
  const opening = pasted ?? openCure(command, situation);
  if (!opening.ok) return opening.decision;
  const { job, ref, card } = opening;
  const about = { job, cure: ref };
  const cartridge = pasted === null || command.label !== undefined ? laidFrom(command.label, about, command.when.latest, situation) : [];
  const closed: NewFact[] = [{ job, happenedAt: command.when.latest, fact: { type: 'closed', cure: ref } }, ...depthFacts(command.depth, about, command.when.latest)];
  const wrong = wrongDepth(command.depth, card);
  if (wrong !== null) return refuse(wrong);
  if (command.setting === null) return { ok: true, facts: [...opening.facts, ...cartridge, ...closed], about, notes: [] };
  const setting = settingFor(command.setting, card, { ...command, job, joint: ref.joint }, situation);
  if (!setting.ok) return refuse(setting.refusal);
  const which = whichLamp({ ...command, card: card.name }, job, ref.joint, situation);
  if (which !== null) return refuse(which);
  const lamp: NewFact = { job, happenedAt: command.when.latest, fact: { type: 'lamp-set', joint: ref.joint, setting: setting.value, typed: command.setting, lamp: command.lamp, heater: command.heater } };
  const alone = lampAlone(command, heatedCure(opening, command, situation), setting.value, situation);
  if (alone !== null) return refuse(alone);
  return { ok: true, facts: [...setting.moved, ...opening.facts, ...cartridge, ...closed, lamp, ...staysWith(command, job, ref.joint, situation)], about, notes: setting.notes };
}

/** The cure as it would stand, for the question how long its lamp is needed. */
const heatedCure = ({ job, ref, card }: Extract<Opening, { readonly ok: true }>, { depth, when }: Of<'cure'>, { by }: Situation): Cure =>
  plannedCure({ job, joint: ref.joint, card, by, depthMillimetres: depth }, when.latest, []);

/** `cure 501 P2 lamp 35` after `paste 501 P2` closes that very joint. */
function pastedAlready(command: Of<'cure'>, situation: Situation): Opening | null {
  if (command.job === null) return null;
  const job = situation.book.job(command.job);
  const open = job === null ? [] : outlooksOf(job, situation.shop, situation.book.air);
  const waiting = open.find(({ cure }) => !cure.scrapped && cure.closed === null && cure.lastPasted !== null && cure.lastPasted <= command.when.latest && (command.card === null || cure.card.name === command.card) && (command.joint === null || cure.ref.joint === command.joint));
  return waiting === undefined ? null : { ok: true, job: command.job, ref: waiting.cure.ref, card: waiting.cure.card, facts: [] };
}

/** Opens a cure: freezes the card as it stands now (rule R14). */
function openCure(command: Of<'paste'> | Of<'cure'>, situation: Situation): Opening {
  // A new cure is never put onto whatever job happens to run: the number is typed, or the thread gives it.
  const job = command.job ?? situation.thread;
  if (job === null) return { ok: false, decision: refuse(whichJob(command, situation)) };
  const card = lookupCard(situation.cards, command.card);
  if (card === null) return { ok: false, decision: refuse({ code: 'which-card', job, choices: situation.cards.map((one) => ({ card: one.name, line: lineOf({ ...command, job, card: one.name }) })) }) };
  const wrong = wrongDepth(command.depth, card);
  if (wrong !== null) return { ok: false, decision: refuse(wrong) };
  const known = situation.book.job(job);
  const turned = known === null && !command.when.confirmed ? turnedRound(job, command, situation) : null;
  if (turned !== null) return { ok: false, decision: refuse(turned) };
  const joint = command.joint ?? FIRST_JOINT;
  const outlooks = known === null ? [] : outlooksOf(known, situation.shop, situation.book.air);
  const same = outlooks.filter(({ cure }) => cure.ref.joint === joint && cure.card.name === card.name);
  const running = same.find((outlook) => !isOver(outlook));
  const free = freeJoint(outlooks.map(({ cure }) => cure.ref.joint));
  const otherJoint = lineOf({ ...command, job, joint: free, card: card.name });
  if (running !== undefined) {
    const { cure } = running;
    const cartridge = command.kind === 'paste' && cure.closed === null ? lineOf({ ...command, job, joint, card: card.name, again: true }) : null;
    return { ok: false, decision: refuse({ code: 'already-running', job, joint, card: card.name, since: cure.start ?? cure.openedAt, otherJoint, cartridge }) };
  }
  const other = command.joint === null && isAdhesive(card) ? outlooks.find((outlook) => !isOver(outlook) && isAdhesive(outlook.cure.card)) : undefined;
  if (other !== undefined) {
    const { cure } = other;
    const sameJoint = lineOf({ ...command, job, joint, card: card.name });
    return { ok: false, decision: refuse({ code: 'second-cure', job, joint: cure.ref.joint, card: cure.card.name, since: cure.start ?? cure.openedAt, otherJoint, sameJoint }) };
  }
  const under = known === null ? null : unconfirmedBond(card, known, outlooks);
  if (under !== null) return { ok: false, decision: refuse({ code: 'bond-unconfirmed', job, card: card.name, waits: under, foreman: foremanOf(situation.shop) }) };
  const label = labelHold(job, joint, situation);
  if (label !== null) return { ok: false, decision: refuse(label) };
  const ref: CureRef = { joint, card: card.name, run: runsOf({ joint, card: card.name }, known?.all ?? []) + 1 };
  return { ok: true, job, ref, card, facts: [{ job, happenedAt: command.when.latest, fact: { type: 'cure-opened', cure: ref, card, owner: situation.by } }] };
}

/** Filler over a bond that nobody confirmed lifts and shows through later; the foreman may let it go on. */
function unconfirmedBond(card: MaterialCard, job: Job, outlooks: readonly Outlook[]): Unfinished | null {
  if (!isFiller(card)) return null;
  return bansOn('fill', carBans(job, outlooks)).flatMap((ban) => (ban.grade === 'hold' ? [ban.waits] : []))[0] ?? null;
}

/** The first joint number that nothing stands on. */
function freeJoint(taken: readonly JointNo[]): JointNo {
  const numbers = Array.from({ length: taken.length + 1 }, (_, index) => jointNo(`j${index + 1}`));
  return numbers.find((joint) => !taken.includes(joint)) ?? FIRST_JOINT;
}

/** A new number that is an open one with two figures changed over is a slip more often than a car. Numbers one digit apart follow each other every day. */
function turnedRound(job: JobNo, command: Of<'paste'> | Of<'cure'>, { book }: Situation): Refusal | null {
  const open = book.openJobs();
  if (!open.some((other) => isSwapped(job, other))) return null;
  const choices = nearJobs(job, open).map((near) => ({ job: near, line: lineOf({ ...command, job: near }) }));
  return { code: 'new-job', job, choices: choices.slice(0, 3), newLine: lineOf({ ...command, job, when: { ...command.when, stated: true, confirmed: true } }) };
}
