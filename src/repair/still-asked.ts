import { remindersFor } from './due.js';
import type { Outlook } from './outlook.js';
import type { PeopleFacts } from './people-facts.js';
import type { Shop } from './shop.js';

/** The step and the person of a reminder's key; what is left is the matter itself: cure, kind, round, moment. */
const STEP_AND_PERSON = /\/s\d+\/(\d{4}-[^/]+Z)\/.*$/;

const matterOf = (key: string): string => key.replace(STEP_AND_PERSON, '/$1');

/** Whether what a reminder asked is still open: had nobody been told of it yet, it would have to be said. `key` is the reminder's. */
export function stillAsked(key: string, outlook: Outlook, shop: Shop, people: PeopleFacts): boolean {
  const untold: Outlook = { ...outlook, cure: { ...outlook.cure, raised: [], putOff: [] } };
  const matter = matterOf(key);
  return remindersFor(untold, shop, null, people).some((one) => matterOf(one.key) === matter);
}
