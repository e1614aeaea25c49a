import type { RateLaw } from '../../cure/card.js';
import type { Piece } from '../../cure/progress.js';
import type { MilestoneOutlook, Outlook } from '../../repair/outlook.js';
import type { Reader } from '../catalogue/speaker.js';
import { sayWhy } from '../catalogue/why.js';
import { degrees, tidy, type Setting } from './words.js';

type Phrase = Parameters<typeof sayWhy>[1];

/** The law that gives the time, in the words of the card. */
export function lawBehind({ card }: Outlook['cure'], { kind, forecast }: MilestoneOutlook): RateLaw | null {
  const laws = card.milestones.find((rule) => rule.kind === kind)?.laws ?? [];
  return laws.find((law) => law.law === forecast.progress.law) ?? null;
}

/** By which rule the minutes of the lines below it count. */
export function ruleSentence(law: RateLaw, { cure }: Outlook, setting: Setting): string {
  switch (law.law) {
    case 'credit': {
      const { marginPercent } = cure.card;
      return marginPercent > 0 ? sayWhy(setting, 'rule-credit-margin', { margin: tidy(marginPercent, setting) }) : sayWhy(setting, 'rule-credit');
    }
    case 'recipe':
    case 'table':
    case 'elapsed':
      return sayWhy(setting, `rule-${law.law}`);
    case 'depth-root': {
      const values = { hours: tidy(law.minutes / 60, setting), depth: tidy(law.depthMillimetres, setting) };
      return cure.depthMillimetres === null ? sayWhy(setting, 'rule-depth', values) : sayWhy(setting, 'rule-depth-here', { ...values, here: tidy(cure.depthMillimetres, setting) });
    }
    case 'above':
      return sayWhy(setting, 'rule-above', { temperature: degrees(law.temperature, setting) });
    case 'dwell': {
      const temperature = degrees(law.temperature, setting);
      return law.after > 0 ? sayWhy(setting, 'rule-dwell-flash', { temperature, minutes: tidy(law.after, setting) }) : sayWhy(setting, 'rule-dwell', { temperature });
    }
  }
}

/** `reading 30 °C`; where nothing counts, why not. */
export function stretchWords(piece: Piece, law: RateLaw, setting: Setting): string {
  if (law.law === 'dwell' && isUnread(piece)) return sayWhy(setting, 'metal-unread');
  const temperature = piece.temperature === null ? '' : ` ${degrees(piece.temperature, setting)}`;
  const heat = `${sayWhy(setting, SOURCES[piece.source])}${temperature}`;
  return piece.wholeMinutes === null ? `${heat}: ${gapWords(piece, law, setting)}` : heat;
}

const SOURCES = {
  reading: 'reading',
  'colder of two readings': 'colder-of-two',
  'over the maximum': 'over-maximum',
  lamp: 'lamp',
  'lamp off': 'lamp-off',
  'between stages': 'between-stages',
  clock: 'clock',
  'flash-off': 'flash-off',
  'depth not known': 'depth-unknown',
  'air reading': 'air-reading',
  'old air reading': 'old-air-reading',
  'usual air': 'usual-air',
  'night setting': 'night-setting',
  'closed days': 'closed-days',
  'unknown air': 'air-unknown',
} as const satisfies Readonly<Record<Piece['source'], Phrase>>;

/** Air never stands for the object itself. */
const isUnread = ({ source, temperature }: Piece): boolean => temperature === null && source !== 'flash-off' && source !== 'over the maximum';

function gapWords({ source, temperature }: Piece, law: RateLaw, reader: Reader): string {
  switch (source) {
    case 'over the maximum':
    case 'lamp off':
    case 'between stages':
    case 'flash-off':
    case 'depth not known':
    case 'unknown air':
      return sayWhy(reader, 'nothing');
    case 'lamp':
    case 'clock':
    case 'reading':
    case 'colder of two readings':
    case 'air reading':
    case 'old air reading':
    case 'usual air':
    case 'night setting':
    case 'closed days':
      return sayWhy(reader, (temperature === null ? UNREAD : COUNTS_NOTHING)[law.law]);
  }
}

/** No temperature stands for the joint. */
const UNREAD: Readonly<Record<RateLaw['law'], Phrase>> = {
  credit: 'asleep',
  above: 'asleep',
  dwell: 'nothing',
  recipe: 'nothing',
  table: 'no-row',
  'depth-root': 'nothing',
  elapsed: 'nothing',
};

/** A temperature at which the law gives nothing. */
const COUNTS_NOTHING: Readonly<Record<RateLaw['law'], Phrase>> = {
  ...UNREAD,
  credit: 'asleep-cold',
  above: 'cold',
  dwell: 'cold',
  'depth-root': 'humidity-unknown',
};
