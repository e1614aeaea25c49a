import { DateTime } from 'luxon';
import type { Instant } from '../../cure/units.js';
import type { JobNo } from '../../repair/ids.js';
import { heldBead, holdOf, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import type { Shop } from '../../repair/shop.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { saySheet } from '../catalogue/sheet.js';
import { languageOf, LOCALES } from '../catalogue/speaker.js';
import { sayState } from '../catalogue/state.js';
import { cartridgeLine } from './cartridge.js';
import { settingFor } from './setting-for.js';
import { heaterWord, holdWords, markedExample, pieceAt } from './state.js';
import { answer, degrees, milestoneWord } from './words.js';

const MOST_CURES = 5;

/**
 * The sheet of a job, in the shop's language: how each of its cures stands. Nothing in it depends on the moment at which it is written, so that
 * it changes with the facts and never because time has passed.
 */
export function composeSheet(job: JobNo, outlooks: readonly Outlook[], shop: Shop): Answer {
  const standing = outlooks.filter(({ cure }) => !cure.scrapped);
  const more = standing.length > MOST_CURES ? saySheet(shop, 'more', { more: `${standing.length - MOST_CURES}`, job }) : null;
  const said = answer('plain', [saySheet(shop, 'job', { job }), ...standing.slice(0, MOST_CURES).map((one) => cureLine(one, shop)), more, saySheet(shop, 'in-this-thread')]);
  return markedExample(said, standing.map(({ cure }) => cure.card), shop);
}

function cureLine(outlook: Outlook, shop: Shop): string {
  const { cure } = outlook;
  const who = nameOf(shop, cure.owner);
  const milestones = outlook.milestones.map((one) => milestoneWords(outlook, one, shop));
  if (isFireWatch(cure.card)) return saySheet(shop, 'watch', { who, state: milestones.length === 0 ? saySheet(shop, 'after-hot-work') : milestones.join('; ') });
  const state = cure.closed === null ? [openWords(outlook, shop)] : milestones;
  const cartridge = cartridgeLine(outlook, shop);
  return `${cure.ref.joint} ${cure.card.name}, ${who}, ${heatNow(outlook, shop)}: ${state.join('; ')}${cartridge === null ? '' : `. ${cartridge}`}`;
}

function openWords(outlook: Outlook, shop: Shop): string {
  const { open } = outlook;
  const bead = heldBead(outlook);
  const state = open.kind === 'limit' ? saySheet(shop, 'open-until', { at: day(open.at, shop) }) : saySheet(shop, 'open');
  return bead === null ? state : saySheet(shop, 'held', { state, reason: holdWords(bead, shop) });
}

function milestoneWords(outlook: Outlook, one: MilestoneOutlook, shop: Shop): string {
  const milestone = milestoneWord(one.kind, shop);
  const { phase, answer: said, dueAt, round } = one.check;
  if (phase === 'confirmed') return said === null ? sayState(shop, 'confirmed', { milestone }) : sayState(shop, 'confirmed-by', { milestone, at: day(said.at, shop), who: nameOf(shop, said.by) });
  const hold = holdOf(outlook, one);
  if (hold !== null) return sayState(shop, 'held', { milestone, reason: holdWords(hold, shop) });
  if (dueAt === null) return saySheet(shop, 'no-time-yet', { milestone });
  const due = { milestone, at: day(dueAt, shop) };
  if (round > 1) return saySheet(shop, 'check-again', due);
  const source = pieceAt(one, dueAt)?.source;
  return saySheet(shop, source === 'usual air' || source === 'old air reading' ? 'earliest' : 'by-the-clock', due);
}

/** What is believed about the heat, as entered. */
function heatNow({ cure, heat }: Outlook, shop: Shop): string {
  const heater = heaterWord(cure, shop);
  switch (heat.lamp) {
    case 'never':
      return saySheet(shop, 'no-lamp');
    case 'on':
      return heat.setting === null ? sayState(shop, 'heater-on', { heater }) : sayState(shop, 'heater-at', { heater, setting: degrees(heat.setting, settingFor('channel', { shop, now: cure.openedAt })) });
    case 'off':
      return saySheet(shop, 'heater-off', { heater });
    default:
      return saySheet(shop, 'heater-unseen', { heater });
  }
}

/** With its day, since the sheet stays as it is while days pass. */
const day = (at: Instant, shop: Shop): string => DateTime.fromMillis(at, { zone: shop.zone, locale: LOCALES[languageOf(shop)] }).toFormat('ccc d LLL HH:mm');
