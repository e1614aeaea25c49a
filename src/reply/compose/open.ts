import type { MaterialCard } from '../../cure/card.js';
import type { OpenLimit } from '../../cure/open-limit.js';
import { undecidedDew, undecidedLimit, type Outlook } from '../../repair/outlook.js';
import { sayOpen } from '../catalogue/open.js';
import type { Reader } from '../catalogue/speaker.js';
import { tooClose } from './dew.js';
import { clock, degrees, type Setting } from './words.js';

/** What ends the open time: a panel is closed, glass is set, a bead is tooled. */
const closedThing = (card: MaterialCard): 'panel' | 'glass' | 'bead' => (card.basis === 'table' ? 'glass' : card.basis === 'depth' ? 'bead' : 'panel');

/** Which button says that it has ended. */
export const tapClosed = (card: MaterialCard, reader: Reader): string => sayOpen(reader, `tap-${closedThing(card)}`);

/** The latest minute to close the panel, and why; once it has passed, who decides. */
export function openSentence(outlook: Outlook, setting: Setting): string {
  const { open, cure } = outlook;
  switch (open.kind) {
    case 'none':
      return sayOpen(setting, 'no-sheet-time', { card: cure.card.name });
    case 'too hot':
      return sayOpen(setting, 'do-not-start', { temperature: degrees(open.temperature, setting), card: cure.card.name });
    case 'limit':
      return open.at <= setting.now ? passedSentence(outlook, open, setting) : sayOpen(setting, `close-${closedThing(cure.card)}`, { at: clock(open.at, setting), figures: figures(open, setting) });
  }
}

function passedSentence(outlook: Outlook, open: Limit, setting: Setting): string {
  return sayOpen(setting, undecidedLimit(outlook) === null ? 'limit-decided' : 'limit-held', { at: clock(open.at, setting), figures: figures(open, setting) });
}

type Limit = Extract<OpenLimit, { readonly kind: 'limit' }>;

/** What a limit was reckoned from. */
function figures({ minutes: counted, temperature }: Limit, setting: Setting): string {
  const minutes = `${counted}`;
  return temperature === null ? sayOpen(setting, 'figures-unknown', { minutes }) : sayOpen(setting, 'figures-at', { minutes, temperature: degrees(temperature, setting) });
}

/** The same as a sentence, where the limit itself was named already. */
export const limitFigures = ({ open }: Outlook, setting: Setting): string | null => (open.kind === 'limit' ? sayOpen(setting, 'figures-were', { figures: figures(open, setting) }) : null);

/** An open limit that has passed before the panel was closed, until somebody has decided. */
export const openHold = (outlook: Outlook, setting: Setting): string | null =>
  outlook.cure.closed === null && outlook.open.kind === 'limit' && outlook.open.at <= setting.now && undecidedLimit(outlook) !== null ? openSentence(outlook, setting) : null;

/** A panel that is still open can be closed in time and be held all the same. */
export const dampSentence = (outlook: Outlook, setting: Setting): string | null =>
  undecidedDew(outlook) === null ? null : sayOpen(setting, 'damp-held', { why: tooClose(outlook, setting) });
