import type { Heater } from '../cure/history.js';
import type { Celsius, Instant } from '../cure/units.js';
import type { LampName } from './ids.js';
import { isLeftOn } from './left-on.js';
import { currentMilestone, heatAt, isAttended, isOver, type Outlook } from './outlook.js';
import type { Shop } from './shop.js';
import { nextClosing } from './shop-hours.js';
import { isFireWatch } from './watch-card.js';

/** One lamp or pad of the shop, and what it does now. */
export type LampLine = { readonly heater: Heater; readonly lamp: LampName | null } & (
  | { readonly is: 'free' }
  | {
      readonly is: 'on';
      readonly outlook: Outlook;
      readonly setting: Celsius | null;
      /** When what it heats is due; null: not in sight. */
      readonly until: Instant | null;
      /** The shop closes first and nobody stays; null otherwise. */
      readonly offAt: Instant | null;
    }
  /** Nothing waits under it any more, and nobody has said that it went off. */
  | { readonly is: 'left'; readonly outlook: Outlook; readonly lastSign: Instant | null }
  /** Found off, or nobody has seen it since the shop closed. */
  | { readonly is: 'unseen'; readonly outlook: Outlook; readonly lastSign: Instant | null }
);

/** The shop's lamps, then its pads, in the order of its list; then what heats without a name. */
export function lampList(outlooks: readonly Outlook[], shop: Shop, now: Instant): LampLine[] {
  const heated = outlooks.filter(({ cure }) => !isFireWatch(cure.card));
  const named = [...shop.lamps.map((lamp) => ({ heater: 'lamp', lamp }) as const), ...shop.pads.map((lamp) => ({ heater: 'pad', lamp }) as const)];
  const lines = named.map((one): LampLine => heating(heated.filter(({ cure }) => cure.lamp === one.lamp && cure.heater === one.heater), one, shop, now) ?? { ...one, is: 'free' });
  const joints = new Map(heated.filter(({ cure }) => cure.lamp === null).map((outlook) => [`${outlook.cure.job} ${outlook.cure.ref.joint}`, outlook]));
  const nameless = [...joints.values()].flatMap((outlook) => heating([outlook], { heater: outlook.cure.heater, lamp: null }, shop, now) ?? []);
  return [...lines, ...nameless];
}

/** Of several cures under one lamp the one that needs it longest. */
function heating(under: readonly Outlook[], { heater, lamp }: Pick<LampLine, 'heater' | 'lamp'>, shop: Shop, now: Instant): LampLine | null {
  const running = under.filter((outlook) => !isOver(outlook));
  const on = running.filter((outlook) => outlook.cure.partLit || heatAt(outlook, now).lamp === 'on').toSorted((one, other) => (dueOf(other, now) ?? Infinity) - (dueOf(one, now) ?? Infinity)).at(0);
  if (on !== undefined) {
    const until = dueOf(on, now);
    const closes = nextClosing(shop, now);
    const isLeft = closes !== null && (until === null || until > closes) && !isAttended(on.cure, shop, closes);
    return { heater, lamp, is: 'on', outlook: on, setting: heatAt(on, now).setting, until, offAt: isLeft ? closes : null };
  }
  const unseen = running.findLast((outlook) => heatAt(outlook, now).lamp === 'unclear');
  if (unseen !== undefined) return { heater, lamp, is: 'unseen', outlook: unseen, lastSign: unseen.heat.lastSign };
  const left = under.findLast((outlook) => isLeftOn(outlook, now));
  return left === undefined ? null : { heater, lamp, is: 'left', outlook: left, lastSign: left.heat.lastSign };
}

const dueOf = (outlook: Outlook, now: Instant): Instant | null => currentMilestone(outlook, now)?.check.dueAt ?? null;
