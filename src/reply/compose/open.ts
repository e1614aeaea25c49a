import type { Outlook } from '../../repair/outlook.js';
import { clock, degrees, type Setting } from './words.js';

/** The latest minute to close the panel, and why. */
export function openSentence({ open, cure }: Outlook, setting: Setting): string {
  switch (open.kind) {
    case 'none':
      return `${cure.card.name} has **no sheet time** for open time: ask the data sheet.`;
    case 'too hot':
      return `**Do not start**: ${degrees(open.temperature, setting)} is hotter than any open-time row of ${cure.card.name}.`;
    case 'limit':
      return `Close the panel by **${clock(open.at, setting)}** (${open.minutes} min${open.temperature === null ? ', air not known' : ` at ${degrees(open.temperature, setting)}`}).`;
  }
}
