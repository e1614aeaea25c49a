import type { MaterialCard } from '../cure/card.js';
import type { Minutes } from '../cure/units.js';

/** No shop can write a card of this name: a card's name has no spaces. */
export const FIRE_WATCH = 'fire watch';

/** The watch after hot work as a card of its own, so that it has a clock, reminders and a person's check like every wait. */
export const fireWatchCard = (length: Minutes): MaterialCard => ({
  name: FIRE_WATCH,
  title: 'watch after hot work',
  version: 'shop setting',
  example: false,
  basis: 'window',
  milestones: [{ kind: 'fire-watch', laws: [{ law: 'elapsed', minutes: length }] }],
  openTime: null,
  maxPanel: null,
  maxLamp: null,
  recoatBy: null,
  marginPercent: 0,
  noHeatAfter: false,
  openedDays: null,
});

export const isFireWatch = ({ name }: Pick<MaterialCard, 'name'>): boolean => name === FIRE_WATCH;
