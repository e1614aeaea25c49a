import { likelyOf, type Likely } from '../../repair/expected.js';
import { heatAt, stateOf, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { sayLikely } from '../catalogue/likely.js';
import { isEarliest } from './state.js';
import { clock, type Setting } from './words.js';

/** °C. Readings closer than this show the same. */
const SAME_READING = 1;

/** `, likely about 10:42 if a reading shows it`, where a reading could show anything new; else nothing. */
export function likelyClause(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const likely = stillWaits(outlook, one, setting) ? likelyOf(outlook, one) : null;
  if (likely === null || likely.at <= setting.now || !wouldShow(outlook, likely, setting)) return '';
  // The air alone is `likely later`: that word is taken.
  return sayLikely(setting, one.check.dueAt !== null && isEarliest(outlook, one, setting) ? 'if-read' : 'likely-if-read', { at: clock(likely.at, setting) });
}

/** A lamp works that nobody has read yet, or that will warm the joint beyond what was read. Nothing shows a recipe's minutes. */
function wouldShow(outlook: Outlook, likely: Likely, { now }: Setting): boolean {
  if (likely.by === 'law' || outlook.cure.card.basis === 'lamp-set') return false;
  const { lamp, counted } = heatAt(outlook, now);
  return lamp === 'on' && (counted === null || (likely.temperature ?? counted) >= counted + SAME_READING);
}

/** The likely time beside the announced one, and what it rests on. */
export function likelySentence(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string | null {
  const likely = stillWaits(outlook, one, setting) ? likelyOf(outlook, one) : null;
  if (likely === null) return null;
  const at = clock(likely.at, setting);
  if (likely.by === 'law') return sayLikely(setting, 'by-law', { energy: `${Math.round(likely.energy / 1000)}`, at });
  return one.check.dueAt === null ? sayLikely(setting, 'unannounced', { at }) : sayLikely(setting, 'announced', { at, due: clock(one.check.dueAt, setting) });
}

function stillWaits(outlook: Outlook, one: MilestoneOutlook, { now }: Setting): boolean {
  const state = stateOf(outlook, one, now);
  return state === 'running' || state === 'asleep';
}
