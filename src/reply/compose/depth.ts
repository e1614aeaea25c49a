import { depthMissing, type Outlook } from '../../repair/outlook.js';
import type { Button } from '../answer.js';
import { sayOpen } from '../catalogue/open.js';
import type { Reader } from '../catalogue/speaker.js';
import { aimed } from './state.js';
import { button } from './words.js';

const MOST_DEPTHS = 3;

/** Asked as soon as the bead is entered, as long as nobody said it. */
export const depthQuestion = (outlook: Outlook, reader: Reader): string | null => (depthMissing(outlook) ? sayOpen(reader, 'how-deep') : null);

/** The depth the sheet speaks of, and a little more; any other is typed. */
export function depthButtons(outlook: Outlook, reader: Reader): Button[] {
  const [stated] = outlook.cure.card.milestones.flatMap((rule) => rule.laws.flatMap((law) => (law.law === 'depth-root' ? [law.depthMillimetres] : [])));
  if (stated === undefined || !depthMissing(outlook)) return [];
  return Array.from({ length: MOST_DEPTHS }, (_, more) => button(sayOpen(reader, 'depth', { depth: stated + more }), `depth ${aimed(outlook)} ${stated + more} mm`));
}
