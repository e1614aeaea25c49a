import { DateTime } from 'luxon';
import type { Instant } from '../../cure/units.js';
import type { JobNo } from '../../repair/ids.js';
import { holdOf, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import type { Shop } from '../../repair/shop.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { heaterWord, holdWords, markedExample, pieceAt } from './state.js';
import { answer, degrees, MILESTONE_WORDS } from './words.js';

const MOST_CURES = 5;

/**
 * The sheet of a job: how each of its cures stands. Nothing in it depends on the moment at which it is written, so that
 * it changes with the facts and never because time has passed.
 */
export function composeSheet(job: JobNo, outlooks: readonly Outlook[], shop: Shop): Answer {
  const standing = outlooks.filter(({ cure }) => !cure.scrapped);
  const more = standing.length > MOST_CURES ? `and ${standing.length - MOST_CURES} more: type when ${job}` : null;
  const said = answer('plain', [`**Job ${job}**`, ...standing.slice(0, MOST_CURES).map((one) => cureLine(one, shop)), more, 'Times, checks and warnings of this job are in this thread.']);
  return markedExample(said, standing.map(({ cure }) => cure.card), {});
}

function cureLine(outlook: Outlook, shop: Shop): string {
  const { cure } = outlook;
  const who = nameOf(shop, cure.owner);
  if (isFireWatch(cure.card)) return `Fire watch, ${who}: ${outlook.milestones.map((one) => milestoneWords(outlook, one, shop)).join('; ') || 'after the hot work'}`;
  const state = cure.closed === null ? [openWords(outlook, shop)] : outlook.milestones.map((one) => milestoneWords(outlook, one, shop));
  return `${cure.ref.joint} ${cure.card.name}, ${who}, ${heatNow(outlook, shop)}: ${state.join('; ')}`;
}

function openWords({ open, dew }: Outlook, shop: Shop): string {
  const held = dew?.heldSince == null ? '' : `, **HELD**, ${holdWords('dew', {})}`;
  return open.kind === 'limit' ? `open, close the panel by **${day(open.at, shop)}**${held}` : `open${held}`;
}

function milestoneWords(outlook: Outlook, one: MilestoneOutlook, shop: Shop): string {
  const name = MILESTONE_WORDS[one.kind];
  const { phase, answer: said, dueAt, round } = one.check;
  if (phase === 'confirmed') return said === null ? `${name} confirmed` : `${name} confirmed ${day(said.at, shop)} by ${nameOf(shop, said.by)}`;
  const hold = holdOf(outlook, one);
  if (hold !== null) return `${name} **HELD**, ${holdWords(hold, {})}`;
  if (dueAt === null) return `${name}: no time yet`;
  if (round > 1) return `${name} soft, check again **${day(dueAt, shop)}**`;
  const source = pieceAt(one, dueAt)?.source;
  return `${name} ${source === 'usual air' || source === 'old air reading' ? 'earliest ' : ''}**${day(dueAt, shop)}**, not checked`;
}

/** What is believed about the heat, as entered. */
function heatNow({ cure, heat }: Outlook, shop: Shop): string {
  const heater = heaterWord(cure, {});
  switch (heat.lamp) {
    case 'never':
      return 'no lamp';
    case 'on':
      return heat.setting === null ? `${heater} on` : `${heater} ${degrees(heat.setting, { shop, now: cure.openedAt })}`;
    case 'off':
      return `${heater} off`;
    default:
      return `${heater} not seen on`;
  }
}

/** With its day, since the sheet stays as it is while days pass. */
const day = (at: Instant, shop: Shop): string => DateTime.fromMillis(at, { zone: shop.zone, locale: 'en-GB' }).toFormat('ccc d LLL HH:mm');
