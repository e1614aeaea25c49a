import type { EntryCommand } from './commands.js';
import { refuse, type Decision, type NewFact, type Situation } from './decision.js';
import type { CureRef } from './cure-ref.js';
import type { JobFact } from './facts.js';
import { watchBegun, watchesOn } from './fire-watch.js';
import { isOver, type Outlook } from './outlook.js';
import { isForeman } from './people.js';
import { undecidedSmoke } from './smoke.js';
import { isFireWatch } from './watch-card.js';

type Of<K extends EntryCommand['kind']> = Extract<EntryCommand, { readonly kind: K }>;

/** What a check of a fire watch means that is no answer to a clock: smoke is taken at any time, and then nobody's clear but the foreman's word ends it. Null: an answer like any. */
export function decideSmoke(command: Of<'check'>, outlook: Outlook, situation: Situation): Decision | null {
  const { cure } = outlook;
  if (!isFireWatch(cure.card)) return null;
  const about = { job: cure.job, cure: cure.ref };
  const open = undecidedSmoke(cure);
  if (command.result === 'hard') return open === null ? null : refuse({ code: 'held', job: cure.job, reason: 'smoke' });
  if (open !== null) return { ok: true, facts: [], about, notes: [{ note: 'already-confirmed', milestone: 'fire-watch', by: open.by, at: open.at }] };
  const role = isForeman(situation.shop, situation.by) ? 'foreman' : 'other';
  const fact: JobFact = { type: 'checked', cure: cure.ref, milestone: 'fire-watch', result: 'soft', role };
  return { ok: true, facts: [{ job: cure.job, happenedAt: command.when.latest, fact }], about, notes: [{ note: 'soft', milestone: 'fire-watch' }] };
}

/** Smoke or fire, told by anybody at any time, whether hot work was ever noted there or not. Without a car it is the shop that may burn. */
export function reportSmoke(command: Of<'smoke'>, situation: Situation): Decision {
  const job = command.job ?? situation.thread;
  const { now: at, by, shop } = situation;
  if (job === null) return { ok: true, facts: [{ job: null, happenedAt: at, fact: { type: 'fire-reported' } }], about: null, notes: [] };
  const standing = watchesOn(job, situation);
  const open = standing.find(({ cure }) => undecidedSmoke(cure) !== null);
  const smoke = open === undefined ? null : undecidedSmoke(open.cure);
  if (open !== undefined && smoke !== null) return { ok: true, facts: [], about: { job, cure: open.cure.ref }, notes: [{ note: 'already-confirmed', milestone: 'fire-watch', by: smoke.by, at: smoke.at }] };
  const running = standing.findLast((watch) => !isOver(watch));
  const role = isForeman(shop, by) ? 'foreman' : 'other';
  const soft = (cure: CureRef): NewFact => ({ job, happenedAt: at, fact: { type: 'checked', cure, milestone: 'fire-watch', result: 'soft', role } });
  if (running !== undefined) return { ok: true, facts: [soft(running.cure.ref)], about: null, notes: [] };
  const begun = watchBegun(job, command.joint, at, situation);
  return { ok: true, facts: [...begun.facts, soft(begun.cure)], about: null, notes: [] };
}

/** The foreman's word after smoke: the watch goes on, and from its beginning. Null: there is no smoke. */
export function releaseSmoke(command: Of<'release'>, { cure }: Outlook, { now }: Situation): Decision | null {
  if (undecidedSmoke(cure) === null) return null;
  const fact = (one: JobFact): NewFact => ({ job: cure.job, happenedAt: now, fact: one });
  const again = cure.closed === null ? [] : [fact({ type: 'moved', cure: cure.ref })];
  return { ok: true, facts: [fact({ type: 'released', cure: cure.ref, reason: command.reason }), ...again], about: { job: cure.job, cure: cure.ref }, notes: [] };
}
