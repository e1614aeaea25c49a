import { outlooksOf } from './book.js';
import type { JobCommand } from './commands.js';
import { runsOf } from './correct-cards.js';
import { sameCure, type CureRef } from './cure-ref.js';
import { refuse, type Decision, type NewFact, type Situation } from './decision.js';
import type { FactRecord, JobFact } from './facts.js';
import { jointNo, type JobNo, type JointNo } from './ids.js';
import type { Job } from './job.js';
import { lineOf } from './line-of.js';
import { isOver, type Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import { nearJobs } from './subject.js';
import { isFireWatch } from './watch-card.js';

type Move = Extract<JobCommand, { readonly kind: 'move' }>;

/** A cure and where it goes. */
interface Moving {
  readonly outlook: Outlook;
  readonly as: CureRef;
}

/** What the bot said and what was put off there was about the other car; a card that was corrected is told as it stands. */
const STAYS: readonly JobFact['type'][] = ['reminder-raised', 'put-off', 'card-corrected', 'moved-away', 'moved-here'];

/** It was another job all along (rule R21): everything that still runs is entered anew there with its own times, and both jobs show it. */
export function decideMove(command: Move, situation: Situation): Decision {
  const { from, to } = command;
  if (from === to) return refuse({ code: 'onto-itself', job: from });
  const job = situation.book.job(from);
  if (job === null) return refuse({ code: 'unknown-job', job: from, choices: nearJobs(from, situation.book.openJobs()).map((near) => ({ job: near, line: lineOf({ ...command, from: near }) })) });
  const running = all(job, situation).filter((outlook) => !isOver(outlook));
  const [first] = running;
  if (first === undefined) return refuse({ code: 'nothing-runs', job: from });
  const target = situation.book.job(to);
  const there = target === null ? [] : all(target, situation);
  const clash = clashOf(running, there, to);
  if (clash !== null) return refuse(clash);
  const moving = placed(running, target, there);
  const gone = moving.map(({ outlook }): NewFact => ({ job: from, happenedAt: situation.now, fact: { type: 'moved-away', cure: outlook.cure.ref, toJob: to } }));
  const here = moving.flatMap((one) => [...retold(one, job, to), { job: to, happenedAt: situation.now, fact: { type: 'moved-here' as const, cure: one.as, fromJob: from } }]);
  const about = moving.at(0)?.as;
  return { ok: true, facts: [...gone, ...onJoints(moving, job, to), ...here], about: about === undefined ? null : { job: to, cure: about }, notes: [] };
}

const all = (job: Job, { shop, book }: Situation): Outlook[] => outlooksOf(job, shop, book.air).filter(({ cure }) => !cure.scrapped);

function clashOf(running: readonly Outlook[], there: readonly Outlook[], to: JobNo): Refusal | null {
  const found = there.find((other) => !isOver(other) && running.some(({ cure }) => isFireWatch(cure.card) ? isFireWatch(other.cure.card) : cure.ref.joint === other.cure.ref.joint && cure.ref.card === other.cure.ref.card));
  if (found === undefined) return null;
  const { ref, card, start, openedAt } = found.cure;
  return { code: 'card-runs-there', job: to, joint: ref.joint, card: card.name, since: start ?? openedAt };
}

/** The same joint, unless something runs or was heated there: neither may be counted with the other's heat. */
function placed(running: readonly Outlook[], target: Job | null, there: readonly Outlook[]): Moving[] {
  const entered = target?.live.flatMap(({ fact }) => ('joint' in fact && fact.joint !== null ? [fact.joint] : [])) ?? [];
  const used = new Set<JointNo>([...entered, ...there.map(({ cure }) => cure.ref.joint)]);
  const joints = [...new Set(running.map(({ cure }) => cure.ref.joint))];
  const places = new Map<JointNo, JointNo>();
  for (const joint of joints) {
    const taken = new Set<JointNo>([...used, ...joints.filter((other) => other !== joint), ...places.values()]);
    places.set(joint, used.has(joint) ? firstFree(taken) : joint);
  }
  return running.map((outlook) => {
    const { ref } = outlook.cure;
    const place = { joint: places.get(ref.joint) ?? ref.joint, card: ref.card };
    return { outlook, as: { ...place, run: runsOf(place, target?.all ?? []) + 1 } };
  });
}

function firstFree(taken: ReadonlySet<JointNo>): JointNo {
  let number = 1;
  while (taken.has(jointNo(`j${number}`))) number += 1;
  return jointNo(`j${number}`);
}

/** Everything about the cure itself, told of where it belongs; whoever said it said it. */
function retold({ outlook: { cure }, as }: Moving, { live }: Job, to: JobNo): NewFact[] {
  return live.flatMap(({ fact, happenedAt, by }): NewFact[] => {
    if (!('cure' in fact) || !sameCure(fact.cure, cure.ref) || STAYS.includes(fact.type)) return [];
    const told: JobFact = fact.type === 'cure-opened' ? { ...fact, cure: as, owner: cure.owner } : { ...fact, cure: as };
    return [{ job: to, happenedAt, by, fact: told }];
  });
}

/** Heat, readings and who stays, once for every joint; hot work goes with its fire watch. */
function onJoints(moving: readonly Moving[], { live }: Job, to: JobNo): NewFact[] {
  return live.flatMap((record): NewFact[] => {
    const { fact, happenedAt, by } = record;
    const goes = moving.find(({ outlook }) => isAbout(record, outlook));
    if (goes === undefined) return [];
    if (fact.type === 'weld-ended') return [{ job: to, happenedAt, by, fact }];
    if (!('joint' in fact)) return [];
    return [{ job: to, happenedAt, by, fact: fact.type === 'weld-begun' ? { ...fact, joint: fact.joint === null ? null : goes.as.joint } : { ...fact, joint: goes.as.joint } }];
  });
}

function isAbout({ fact, happenedAt }: FactRecord, { cure }: Outlook): boolean {
  if (fact.type === 'weld-begun' || fact.type === 'weld-ended') return isFireWatch(cure.card) && happenedAt >= cure.openedAt;
  if (!('joint' in fact)) return false;
  // As for every cure: what was read before it began is about another one.
  return fact.joint === cure.ref.joint && (fact.type !== 'reading' || happenedAt >= cure.openedAt);
}
