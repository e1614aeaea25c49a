import type { MaterialCard } from '../../cure/card.js';
import type { OpenLimit } from '../../cure/open-limit.js';
import { undecidedDew, undecidedLimit, type Outlook } from '../../repair/outlook.js';
import { tooClose } from './dew.js';
import { clock, degrees, type Setting } from './words.js';

/** What ends the open time: a panel is closed, glass is set, a bead is tooled. */
export const CLOSE_WORDS = {
  panel: { by: 'Close the panel by', tap: 'Tap Closed when the panel is set.' },
  glass: { by: 'Set the glass by', tap: 'Tap Closed when the glass is set.' },
  bead: { by: 'Tool the bead by', tap: 'Tap Closed when the bead is tooled.' },
} as const;

export const closeWord = (card: MaterialCard): keyof typeof CLOSE_WORDS => (card.basis === 'table' ? 'glass' : card.basis === 'depth' ? 'bead' : 'panel');

/** The latest minute to close the panel, and why; once it has passed, who decides. */
export function openSentence(outlook: Outlook, setting: Setting): string {
  const { open, cure } = outlook;
  switch (open.kind) {
    case 'none':
      return `${cure.card.name} has **no sheet time** for open time: ask the data sheet.`;
    case 'too hot':
      return `**Do not start**: ${degrees(open.temperature, setting)} is hotter than any open-time row of ${cure.card.name}.`;
    case 'limit':
      return open.at <= setting.now ? passedSentence(outlook, open, setting) : `${CLOSE_WORDS[closeWord(cure.card)].by} **${clock(open.at, setting)}** (${figures(open, setting)}).`;
  }
}

function passedSentence(outlook: Outlook, open: Limit, setting: Setting): string {
  const passed = `limit **${clock(open.at, setting)}** passed (${figures(open, setting)})`;
  return undecidedLimit(outlook) === null ? `Open ${passed}, decided by the foreman.` : `**HOLD**: open ${passed}, the foreman decides.`;
}

type Limit = Extract<OpenLimit, { readonly kind: 'limit' }>;

/** What a limit was reckoned from. */
const figures = (open: Limit, setting: Setting): string =>
  `${open.minutes} min${open.temperature === null ? ', air not known' : ` at ${degrees(open.temperature, setting)}`}`;

/** The same as a sentence, where the limit itself was named already. */
export const limitFigures = ({ open }: Outlook, setting: Setting): string | null => (open.kind === 'limit' ? `It was ${figures(open, setting)}.` : null);

/** An open limit that has passed before the panel was closed, until somebody has decided. */
export const openHold = (outlook: Outlook, setting: Setting): string | null =>
  outlook.cure.closed === null && outlook.open.kind === 'limit' && outlook.open.at <= setting.now && undecidedLimit(outlook) !== null ? openSentence(outlook, setting) : null;

/** A panel that is still open can be closed in time and be held all the same. */
export const dampSentence = (outlook: Outlook, setting: Setting): string | null =>
  undecidedDew(outlook) === null ? null : `**HOLD**: ${tooClose(outlook, setting)}. The foreman decides.`;
