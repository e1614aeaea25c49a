import { lampList, type LampLine } from '../../repair/lamp-list.js';
import type { Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { markedExample, title } from './state.js';
import { answer, capital, clock, degrees, type Setting } from './words.js';

/** Fits a phone screen, the note about example cards included. */
const MOST_LINES = 8;

/** `A 7203 65 °C till 14:19`, one line a lamp or pad. */
export function composeLamps(outlooks: readonly Outlook[], setting: Setting): Answer {
  const list = lampList(outlooks, setting.shop, setting.now);
  if (list.length === 0) return answer('plain', ['**No lamp and no pad** is written down for this shop, and none is noted as on.']);
  const busy = list.filter((one) => one.is !== 'free');
  const cards = busy.map(({ outlook }) => outlook.cure.card);
  const most = MOST_LINES - (cards.some((card) => card.example) ? 1 : 0);
  return markedExample(answer('plain', list.length <= most ? list.map((one) => lampLine(one, setting)) : shortened(list, most, setting)), cards, setting);
}

/** What heats comes first; what is free shares a line. */
function shortened(list: readonly LampLine[], most: number, setting: Setting): string[] {
  const busy = list.filter((one) => one.is !== 'free').map((one) => lampLine(one, setting));
  const free = list.filter((one) => one.is === 'free').map(nameOf);
  const last = free.length === 0 ? [] : [`${free.join(', ')} free`];
  const room = most - last.length;
  const shown = busy.length > room ? [...busy.slice(0, room - 1), `and ${busy.length - room + 1} more: type who waits`] : busy;
  return [...shown, ...last];
}

function lampLine(one: LampLine, setting: Setting): string {
  switch (one.is) {
    case 'free':
      return `${nameOf(one)} free`;
    case 'on': {
      const heat = one.setting === null ? 'on' : degrees(one.setting, setting);
      const till = one.until === null ? '' : one.until <= setting.now ? `, due since ${clock(one.until, setting)}` : ` till ${clock(one.until, setting)}`;
      return `**${nameOf(one)}** ${title(one.outlook)} ${heat}${one.offAt === null ? till : `, **off at ${clock(one.offAt, setting)}** unless somebody stays`}`;
    }
    case 'left':
      return `**${nameOf(one)}** ${title(one.outlook)} is done, **still on?**${one.lastSign === null ? '' : ` Last seen ${clock(one.lastSign, setting)}`}`;
    case 'unseen':
      return `**${nameOf(one)}** ${title(one.outlook)} not seen on${one.lastSign === null ? '' : ` since ${clock(one.lastSign, setting)}`}`;
  }
}

/** A lamp without a name is only a lamp. */
const nameOf = ({ heater, lamp }: Pick<LampLine, 'heater' | 'lamp'>): string => lamp ?? capital(heater);
