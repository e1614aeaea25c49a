import type { MaterialCard, RateLaw } from '../../cure/card.js';
import type { Piece } from '../../cure/progress.js';
import type { MilestoneOutlook, Outlook } from '../../repair/outlook.js';
import { degrees, tidy, type Setting } from './words.js';

/** The law that gives the time, in the words of the card. */
export function lawBehind({ card }: Outlook['cure'], { kind, forecast }: MilestoneOutlook): RateLaw | null {
  const laws = card.milestones.find((rule) => rule.kind === kind)?.laws ?? [];
  return laws.find((law) => law.law === forecast.progress.law) ?? null;
}

/** By which rule the minutes of the lines below it count. */
export function ruleSentence(law: RateLaw, { cure }: Outlook, setting: Setting): string {
  switch (law.law) {
    case 'credit':
      return `Rule: minutes / row minutes at each temperature, added up${margin(cure.card)}.`;
    case 'recipe':
      return 'Rule: lamp minutes from switch-on, 20 more for each interruption.';
    case 'table':
      return "Rule: the worst row of the sheet's table that the air met.";
    case 'depth-root':
      return `Rule: ${tidy(law.minutes / 60)} h for ${tidy(law.depthMillimetres)} mm, twice the depth takes four times as long${cure.depthMillimetres === null ? '' : `; here **${tidy(cure.depthMillimetres)} mm**`}. Drier air takes longer.`;
    case 'above':
      return `Rule: only real minutes at ${degrees(law.temperature, setting)} or more.`;
    case 'dwell':
      return `Rule: only minutes at ${degrees(law.temperature, setting)} or more, read on the metal${law.after > 0 ? `, after ${tidy(law.after)} min flash-off` : ''}.`;
    case 'elapsed':
      return 'Rule: real minutes.';
  }
}

const margin = ({ marginPercent }: MaterialCard): string => (marginPercent > 0 ? `; rows with the card's ${tidy(marginPercent)} % margin` : '');

/** `reading 30 °C`; where nothing counts, why not. */
export function stretchWords(piece: Piece, law: RateLaw, setting: Setting): string {
  if (law.law === 'dwell' && isUnread(piece)) return 'metal not read: nothing counts';
  const temperature = piece.temperature === null ? '' : ` ${degrees(piece.temperature, setting)}`;
  return piece.wholeMinutes === null ? `${piece.source}${temperature}: ${gapWords(piece, law)}` : `${piece.source}${temperature}`;
}

/** Air never stands for the object itself. */
const isUnread = ({ source, temperature }: Piece): boolean => temperature === null && source !== 'flash-off' && source !== 'over the maximum';

function gapWords({ source, temperature }: Piece, law: RateLaw): string {
  switch (source) {
    case 'over the maximum':
    case 'lamp off':
    case 'between stages':
    case 'flash-off':
    case 'depth not known':
    case 'unknown air':
      return 'nothing counts';
    case 'lamp':
    case 'clock':
    case 'reading':
    case 'colder of two readings':
    case 'air reading':
    case 'old air reading':
    case 'usual air':
    case 'night setting':
    case 'closed days':
      return temperature === null ? UNREAD[law.law] : COUNTS_NOTHING[law.law];
  }
}

/** No temperature stands for the joint. */
const UNREAD: Readonly<Record<RateLaw['law'], string>> = {
  credit: 'asleep, nothing counts',
  above: 'asleep, nothing counts',
  dwell: 'nothing counts',
  recipe: 'nothing counts',
  table: 'no row, nothing counts',
  'depth-root': 'nothing counts',
  elapsed: 'nothing counts',
};

/** A temperature at which the law gives nothing. */
const COUNTS_NOTHING: Readonly<Record<RateLaw['law'], string>> = {
  ...UNREAD,
  credit: 'asleep, too cold, nothing counts',
  above: 'too cold, nothing counts',
  dwell: 'too cold, nothing counts',
  'depth-root': 'humidity not known, nothing counts',
};
