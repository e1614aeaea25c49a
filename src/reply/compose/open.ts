import type { MaterialCard } from '../../cure/card.js';
import type { Outlook } from '../../repair/outlook.js';
import { clock, degrees, type Setting } from './words.js';

/** What ends the open time: a panel is closed, glass is set, a bead is tooled. */
export const CLOSE_WORDS = {
  panel: { by: 'Close the panel by', tap: 'Tap Closed when the panel is set.' },
  glass: { by: 'Set the glass by', tap: 'Tap Closed when the glass is set.' },
  bead: { by: 'Tool the bead by', tap: 'Tap Closed when the bead is tooled.' },
} as const;

export const closeWord = (card: MaterialCard): keyof typeof CLOSE_WORDS => (card.basis === 'table' ? 'glass' : card.basis === 'depth' ? 'bead' : 'panel');

/** The latest minute to close the panel, and why. */
export function openSentence({ open, cure }: Outlook, setting: Setting): string {
  switch (open.kind) {
    case 'none':
      return `${cure.card.name} has **no sheet time** for open time: ask the data sheet.`;
    case 'too hot':
      return `**Do not start**: ${degrees(open.temperature, setting)} is hotter than any open-time row of ${cure.card.name}.`;
    case 'limit':
      return `${CLOSE_WORDS[closeWord(cure.card)].by} **${clock(open.at, setting)}** (${open.minutes} min${open.temperature === null ? ', air not known' : ` at ${degrees(open.temperature, setting)}`}).`;
  }
}
