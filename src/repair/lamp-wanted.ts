import type { MilestoneKind } from '../cure/card.js';
import { celsius, type Celsius } from '../cure/units.js';
import type { When } from './commands.js';
import type { Note, Situation } from './decision.js';
import { recipeOf, settingsFor } from './heat-choices.js';
import type { LampName } from './ids.js';
import { litOutlooks } from './left-on.js';
import { lineOf } from './line-of.js';
import { heatAt, type Outlook } from './outlook.js';

/** `402 soft. lamp`: which lamp it is to be, of those that heat nothing else, at the hottest setting that the card has for this strength. */
export function lampWanted(outlook: Outlook, milestone: MilestoneKind, { shop, book, now }: Situation): Note {
  const { job, ref, card } = outlook.cure;
  const stage = recipeOf(card, [milestone])?.findLast(({ reaches }) => reaches === milestone);
  const setting = stage === undefined ? (settingsFor(card, [milestone], null).at(-1) ?? null) : celsius(stage.lamp);
  const taken = litOutlooks(book, shop, book.openJobs(), now).filter((other) => other.cure.job !== job && heatAt(other, now).lamp === 'on').map(({ cure }) => cure.lamp);
  const free = shop.lamps.filter((lamp) => !taken.includes(lamp));
  const when: When = { earliest: now, latest: now, stated: false, confirmed: false };
  const line = (value: Celsius, lamp: LampName): string => lineOf({ kind: 'lamp', job, joint: ref.joint, setting: { value, unit: 'C' }, heater: 'lamp', lamp, when });
  return { note: 'lamp-wanted', setting, choices: setting === null ? [] : free.map((lamp) => ({ lamp, line: line(setting, lamp) })) };
}
