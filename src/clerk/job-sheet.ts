import type { CureSheet, JobSheet, MilestoneSheet } from './desk.js';
import type { AirReading } from '../cure/air.js';
import type { Instant } from '../cure/units.js';
import { outlooksOf } from '../repair/book.js';
import type { Cure, Job } from '../repair/job.js';
import { shareOf, stateOf, type Outlook } from '../repair/outlook.js';
import type { Shop } from '../repair/shop.js';
import { isFireWatch } from '../repair/watch-card.js';

/** One job as other programs read it. */
export function jobSheetOf(job: Job, shop: Shop, air: readonly AirReading[], now: Instant): JobSheet {
  return { job: job.no, cures: outlooksOf(job, shop, air).filter((outlook) => !outlook.cure.scrapped).map((outlook) => cureSheet(outlook, now)) };
}

function cureSheet(outlook: Outlook, now: Instant): CureSheet {
  const { cure, open } = outlook;
  const { joint, card } = cure.ref;
  if (cure.closed !== null) return { joint, card, milestones: outlook.milestones.map((one) => ({ kind: one.kind, dueAt: one.check.dueAt, state: stateOf(outlook, one, now), share: shareOf(one, now) })) };
  if (isFireWatch(cure.card)) return { joint, card, milestones: waits(cure) };
  const limit = open.kind === 'limit' ? open.at : null;
  const openSheet: MilestoneSheet = { kind: 'open-limit', dueAt: limit, state: limit !== null && now >= limit ? 'due' : 'running', share: limit === null || cure.pasted === null ? 0 : Math.min(1, Math.max(0, (now - cure.pasted) / Math.max(1, limit - cure.pasted))) };
  return { joint, card, milestones: [openSheet, ...waits(cure)] };
}

/** Milestones of what has not begun to count. */
const waits = ({ card }: Cure): MilestoneSheet[] => card.milestones.map((rule) => ({ kind: rule.kind, dueAt: null, state: 'running', share: 0 }));
