import { instant, type Instant } from '../cure/units.js';
import type { MilestoneKind } from '../cure/card.js';
import { standsStill } from './job-hold.js';
import { currentMilestone, heldBead, holdOf, shareOf, stateOf, undecidedCartridge, undecidedDew, undecidedLimit, type MilestoneOutlook, type Outlook, type OutlookState } from './outlook.js';
import { undecidedSmoke } from './smoke.js';
import { isFireWatch } from './watch-card.js';

/** What one car waits for; the order of a list of them is rule R26. */
export interface Waiting {
  readonly outlook: Outlook;
  readonly milestone: MilestoneOutlook | null;
  readonly waitsFor: MilestoneKind | 'open-limit' | 'decision';
  readonly state: OutlookState;
  readonly dueAt: Instant | null;
  readonly share: number;
}

/** One cure's wait at a moment; with its whole job it is held. */
export function waitingOf(outlook: Outlook, now: Instant): Waiting {
  const waiting = ownWait(outlook, now);
  return standsStill(outlook.cure.jobHolds) && waiting.state !== 'confirmed' && !isFireWatch(outlook.cure.card) ? { ...waiting, state: 'held' } : waiting;
}

function ownWait(outlook: Outlook, now: Instant): Waiting {
  const milestone = currentMilestone(outlook, now);
  const share = milestone === null ? 0 : shareOf(milestone, now);
  const base = { outlook, milestone, share };
  if (outlook.overMaximum !== null) return { ...base, waitsFor: 'decision', state: 'held', dueAt: outlook.overMaximum.at };
  if (isFireWatch(outlook.cure.card)) return { ...base, ...watchState(outlook, milestone, now) };
  if (outlook.cure.closed === null) {
    const limit = outlook.open.kind === 'limit' ? outlook.open.at : null;
    // Held for damp metal or its cartridge, and still to be closed in time.
    const state = heldBead(outlook) !== null ? 'held' : limit !== null && now >= limit ? 'due' : 'running';
    return { ...base, waitsFor: 'open-limit', state, dueAt: limit };
  }
  if (milestone !== null && holdOf(outlook, milestone) !== null) return { ...base, waitsFor: 'decision', state: 'held', dueAt: milestone.check.answer?.at ?? outlook.openPassed ?? undecidedDew(outlook) ?? undecidedCartridge(outlook) ?? milestone.check.dueAt };
  if (milestone === null && undecidedLimit(outlook) !== null) return { ...base, waitsFor: 'decision', state: 'held', dueAt: outlook.openPassed };
  const state = milestone === null ? 'confirmed' : stateOf(outlook, milestone, now);
  return { ...base, waitsFor: milestone?.kind ?? 'decision', state, dueAt: milestone?.check.dueAt ?? null };
}

/** Hot work that goes on, its watch, or smoke. */
function watchState(outlook: Outlook, milestone: MilestoneOutlook | null, now: Instant): Pick<Waiting, 'waitsFor' | 'state' | 'dueAt'> {
  const smoke = undecidedSmoke(outlook.cure);
  if (smoke !== null) return { waitsFor: 'decision', state: 'held', dueAt: smoke.at };
  return { waitsFor: 'fire-watch', state: milestone === null ? 'running' : stateOf(outlook, milestone, now), dueAt: milestone?.check.dueAt ?? null };
}

const RANK: Readonly<Record<OutlookState, number>> = { held: 1, due: 2, running: 3, asleep: 4, confirmed: 5 };

const rankOf = (waiting: Waiting): number => (waiting.outlook.overMaximum !== null || undecidedSmoke(waiting.outlook.cure) !== null ? 0 : RANK[waiting.state]);

/** Rule R26: safety hold, hold, check overdue (oldest first), running (next due first), asleep. One entry a joint, its worst, and the fire watch besides. */
export function waitingList(outlooks: readonly Outlook[], now: Instant): Waiting[] {
  const all = outlooks.map((outlook) => waitingOf(outlook, now)).sort((a, b) => rankOf(a) - rankOf(b) || dueOrder(a) - dueOrder(b) || a.outlook.cure.job.localeCompare(b.outlook.cure.job, 'en', { numeric: true }) || a.outlook.cure.ref.joint.localeCompare(b.outlook.cure.ref.joint, 'en', { numeric: true }));
  const seen = new Set<string>();
  return all.filter(({ outlook: { cure } }) => {
    const place = `${cure.job} ${cure.ref.joint}${isFireWatch(cure.card) ? ' watch' : ''}`;
    const first = !seen.has(place);
    seen.add(place);
    return first;
  });
}

const FAR_FUTURE = instant(8.64e15);
const dueOrder = (waiting: Waiting): number => waiting.dueAt ?? FAR_FUTURE;
