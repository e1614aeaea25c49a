import { lampList, type LampLine } from '../../repair/lamp-list.js';
import type { Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { sayLamps } from '../catalogue/lamps.js';
import { sayLists } from '../catalogue/lists.js';
import type { Reader } from '../catalogue/speaker.js';
import { sayState } from '../catalogue/state.js';
import { markedExample, staysWords, title } from './state.js';
import { answer, capital, clock, degrees, type Setting } from './words.js';

/** Fits a phone screen, the note about example cards included. */
const MOST_LINES = 8;

/** `A 7203 65 °C till 14:19`, one line a lamp or pad. */
export function composeLamps(outlooks: readonly Outlook[], setting: Setting): Answer {
  const list = lampList(outlooks, setting.shop, setting.now);
  if (list.length === 0) return answer('plain', [sayLamps(setting, 'none')]);
  const busy = list.filter((one) => one.is !== 'free');
  const cards = busy.map(({ outlook }) => outlook.cure.card);
  const most = MOST_LINES - (cards.some((card) => card.example) ? 1 : 0);
  return markedExample(answer('plain', list.length <= most ? list.map((one) => lampLine(one, setting)) : shortened(list, most, setting)), cards, setting);
}

/** What heats comes first; what is free shares a line. */
function shortened(list: readonly LampLine[], most: number, setting: Setting): string[] {
  const busy = list.filter((one) => one.is !== 'free').map((one) => lampLine(one, setting));
  const free = list.filter((one) => one.is === 'free');
  const last = free.length === 0 ? [] : [freeLine(free, setting)];
  const room = most - last.length;
  const shown = busy.length > room ? [...busy.slice(0, room - 1), sayLists(setting, 'more-type', { more: `${busy.length - room + 1}` })] : busy;
  return [...shown, ...last];
}

const freeLine = (free: readonly LampLine[], reader: Reader): string => sayLamps(reader, 'free', { names: free.map((one) => nameOf(one, reader)).join(', '), count: free.length });

function lampLine(one: LampLine, setting: Setting): string {
  if (one.is === 'free') return freeLine([one], setting);
  const values = { name: nameOf(one, setting), title: title(one.outlook) };
  switch (one.is) {
    case 'on': {
      const line = `**${values.name}** ${values.title} ${one.setting === null ? sayLamps(setting, 'on') : degrees(one.setting, setting)}`;
      return `${onUntil(one, line, setting)}${staysWords(one.outlook, setting)}`;
    }
    case 'left':
      return one.lastSign === null ? sayLamps(setting, 'left', values) : sayLamps(setting, 'left-seen', { ...values, at: clock(one.lastSign, setting) });
    case 'unseen':
      return one.lastSign === null ? sayLamps(setting, 'unseen', values) : sayLamps(setting, 'unseen-since', { ...values, at: clock(one.lastSign, setting) });
  }
}

/** What is on, and until when it is needed or may be. */
function onUntil({ offAt, until }: Extract<LampLine, { readonly is: 'on' }>, line: string, setting: Setting): string {
  if (offAt !== null) return sayLamps(setting, 'off-at', { line, at: clock(offAt, setting) });
  return until === null ? line : sayLamps(setting, until <= setting.now ? 'due-since' : 'till', { line, at: clock(until, setting) });
}

/** A lamp without a name is only a lamp. */
const nameOf = ({ heater, lamp }: Pick<LampLine, 'heater' | 'lamp'>, reader: Reader): string => lamp ?? capital(sayState(reader, heater));
