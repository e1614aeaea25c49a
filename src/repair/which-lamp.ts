import type { EntryCommand } from './commands.js';
import type { Situation } from './decision.js';
import type { JobNo, JointNo } from './ids.js';
import { litOutlooks } from './left-on.js';
import { lineOf } from './line-of.js';
import { heatAt, isOver } from './outlook.js';
import type { Refusal } from './refusal.js';

type Heating = Extract<EntryCommand, { readonly kind: 'lamp' | 'cure' }>;

/**
 * A lamp without a name, where every lamp that is written down for the shop heats another job: one more than it owns.
 * Null: one is free, or on this job, or the shop has no list.
 */
export function whichLamp(command: Heating, job: JobNo, joint: JointNo, { shop, book, now }: Situation): Refusal | null {
  const { heater, lamp, when } = command;
  const owned = heater === 'pad' ? shop.pads : shop.lamps;
  if (lamp !== null || owned.length === 0) return null;
  const lit = litOutlooks(book, shop, book.openJobs(), now).filter((outlook) => !isOver(outlook) && outlook.cure.heater === heater && heatAt(outlook, now).lamp === 'on');
  const choices = owned.flatMap((name) => {
    const under = lit.filter(({ cure }) => cure.lamp === name);
    const [first] = under;
    if (first === undefined || under.some(({ cure }) => cure.job === job)) return [];
    return [{ lamp: name, on: first.cure.job, line: lineOf({ ...command, job, joint, lamp: name, when: { ...when, stated: true, confirmed: true } }) }];
  });
  return choices.length < owned.length ? null : { code: 'which-lamp', heater, job, choices };
}
