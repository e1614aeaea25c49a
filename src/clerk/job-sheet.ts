import type { CureSheet, JobSheet, MilestoneSheet } from './desk.js';
import type { AirReading } from '../cure/air.js';
import type { Instant } from '../cure/units.js';
import { outlooksOf } from '../repair/book.js';
import type { Job } from '../repair/job.js';
import { shareOf, stateOf, type Outlook } from '../repair/outlook.js';
import type { Shop } from '../repair/shop.js';

/** One job as other programs read it. */
export function jobSheetOf(job: Job, shop: Shop, air: readonly AirReading[], now: Instant): JobSheet {
  return { job: job.no, cures: outlooksOf(job, shop, air).filter((outlook) => !outlook.cure.scrapped).map((outlook) => cureSheet(outlook, now)) };
}

function cureSheet(outlook: Outlook, now: Instant): CureSheet {
  const { cure, open } = outlook;
  const { joint, card } = cure.ref;
  if (cure.closed !== null) return { joint, card, milestones: outlook.milestones.map((one) => ({ kind: one.kind, dueAt: one.check.dueAt, state: stateOf(outlook, one, now), share: shareOf(one, now) })) };
  const limit = open.kind === 'limit' ? open.at : null;
  const openSheet: MilestoneSheet = { kind: 'open-limit', dueAt: limit, state: limit !== null && now >= limit ? 'due' : 'running', share: limit === null || cure.pasted === null ? 0 : Math.min(1, Math.max(0, (now - cure.pasted) / Math.max(1, limit - cure.pasted))) };
  return { joint, card, milestones: [openSheet, ...cure.card.milestones.map((rule): MilestoneSheet => ({ kind: rule.kind, dueAt: null, state: 'running', share: 0 }))] };
}
