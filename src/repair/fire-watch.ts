import { plus, type Instant } from '../cure/units.js';
import { outlooksOf } from './book.js';
import { runsOf } from './correct-cards.js';
import type { CureRef } from './cure-ref.js';
import type { NewFact, Situation } from './decision.js';
import { goingOn, type HotWork } from './hot-work.js';
import { FIRST_JOINT, type JobNo, type JointNo, type PersonId } from './ids.js';
import { isAttended, isOver, type Outlook } from './outlook.js';
import { foremanOf, knownRole } from './people.js';
import type { Shop } from './shop.js';
import { isOpen, nextClosing } from './shop-hours.js';
import { FIRE_WATCH, fireWatchCard, isFireWatch } from './watch-card.js';

/** One car has one fire watch at a time; it is kept on the joint of the first hot work. Null: none goes on. */
export function runningWatch(job: JobNo, { book, shop }: Pick<Situation, 'book' | 'shop'>): Outlook | null {
  return watchesOn(job, { book, shop }).findLast((outlook) => !isOver(outlook)) ?? null;
}

/** Every fire watch of a car, answered ones too. */
export function watchesOn(job: JobNo, { book, shop }: Pick<Situation, 'book' | 'shop'>): Outlook[] {
  const known = book.job(job);
  return known === null ? [] : outlooksOf(known, shop, book.air).filter(({ cure }) => isFireWatch(cure.card) && !cure.scrapped);
}

/** Hot work begins: the watch is opened, so that it is asked for if nobody says the end; one that runs waits for that end. */
export function hotWorkBegins(job: JobNo, joint: JointNo | null, at: Instant, situation: Situation): NewFact[] {
  return runningWatch(job, situation) === null ? [opened(newRef(job, joint, situation), job, at, situation)] : [];
}

/** Hot work is over: the fire watch begins, or begins again (rule R23), once nothing else goes on. `joint` null: somewhere on the car. */
export function fireWatchFacts(job: JobNo, joint: JointNo | null, at: Instant, situation: Situation): readonly NewFact[] {
  const running = runningWatch(job, situation);
  const over = (only: readonly Instant[] | null): NewFact => ({ job, happenedAt: at, fact: { type: 'weld-ended', only } });
  if (running !== null) return [over(endedBy(running, joint, situation.by)), { job, happenedAt: at, fact: { type: running.cure.closed === null ? 'closed' : 'moved', cure: running.cure.ref } }];
  return watchBegun(job, joint, at, situation).facts;
}

/** A new watch that runs from now on. */
export function watchBegun(job: JobNo, joint: JointNo | null, at: Instant, situation: Situation): { readonly cure: CureRef; readonly facts: readonly NewFact[] } {
  const cure = newRef(job, joint, situation);
  return { cure, facts: [opened(cure, job, at, situation), { job, happenedAt: at, fact: { type: 'closed', cure } }] };
}

/** What is over of the hot work that goes on: at the joint named, else what nobody gave a place, else the speaker's own, else all of it (null). */
function endedBy({ cure }: Outlook, joint: JointNo | null, by: PersonId): readonly Instant[] | null {
  const hot = goingOn(cure);
  const ways: readonly ((weld: HotWork) => boolean)[] = joint === null ? [(weld) => weld.by === by] : [(weld) => weld.joint === joint, (weld) => weld.joint === null, (weld) => weld.by === by];
  const ended = ways.map((fits) => hot.filter(fits)).find((found) => found.length > 0) ?? hot;
  return ended.length === hot.length ? null : ended.map(({ at }) => at);
}

const opened = (cure: CureRef, job: JobNo, at: Instant, { shop, by }: Situation): NewFact => ({ job, happenedAt: at, fact: { type: 'cure-opened', cure, card: fireWatchCard(shop.fireWatch), owner: ownerFor(shop, by) } });

/** A stranger may call fire, and watches nothing. */
function ownerFor(shop: Shop, by: PersonId): PersonId {
  const foreman = foremanOf(shop);
  return knownRole(shop, by) === null && foreman !== 'channel' ? foreman : by;
}

function newRef(job: JobNo, joint: JointNo | null, { book }: Situation): CureRef {
  const place = { joint: joint ?? FIRST_JOINT, card: FIRE_WATCH };
  return { ...place, run: runsOf(place, book.job(job)?.all ?? []) + 1 };
}

/** When the fire watch ends, or would end if the hot work ended at once. */
export const watchEnds = ({ cure, milestones }: Outlook, begun: Instant, { fireWatch }: Shop): Instant =>
  milestones.at(0)?.check.dueAt ?? plus(cure.start ?? begun, fireWatch);

/** The shop closes before the watch is over and nobody has said that they stay (rule R23). */
export function needsSomebody(watch: Outlook, begun: Instant, shop: Shop): boolean {
  const ends = watchEnds(watch, begun, shop);
  const closes = nextClosing(shop, begun);
  const isLate = !isOpen(shop, begun) || (closes !== null && closes < ends);
  return isLate && !isAttended(watch.cure, shop, ends);
}
