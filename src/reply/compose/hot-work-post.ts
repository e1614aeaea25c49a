import { HOT_WORK_ROUND, SMOKE_ROUND } from '../../repair/hot-work-due.js';
import type { HotWork } from '../../repair/hot-work.js';
import type { Outlook } from '../../repair/outlook.js';
import { isForeman, nameOf } from '../../repair/people.js';
import type { Reminder } from '../../repair/reminder.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { clearButton, FIRE_FIRST, overButton, smokeButton } from './fire-watch.js';
import { aimed, title } from './state.js';
import { answer, button, clock, type Setting } from './words.js';

/** What the bot says by itself about hot work and its watch; null: this reminder is about something else. */
export function composeHotWorkPost(reminder: Reminder, outlook: Outlook, late: string | null, setting: Setting): Answer | null {
  if (reminder.kind === 'decision' && reminder.round === HOT_WORK_ROUND) return toldPost(reminder, outlook, late, setting);
  if (!isFireWatch(outlook.cure.card)) return null;
  if (reminder.kind === 'safety') return reminder.round === SMOKE_ROUND ? smokePost(reminder, outlook, late, setting) : stopPost(reminder, outlook, late, setting);
  return outlook.cure.closed === null ? stillHotPost(outlook, late, setting) : overPost(reminder, outlook, late, setting);
}

function toldPost({ dueAt }: Reminder, outlook: Outlook, late: string | null, setting: Setting): Answer {
  const weld = outlook.cure.hotWork.find(({ at }) => at === dueAt);
  const where = weld?.joint == null ? '' : ` at ${weld.joint}`;
  return answer('alarm', [
    `${title(outlook)} **hot work${where} since ${clock(dueAt, setting)}, ${outlook.cure.card.name} full strength not confirmed.** ${noted(weld, setting)}`,
    late,
    'Heat weakens a joint a hand\'s width away. Repair method and data sheet first; you decide.',
  ], [button('Hold', `hold ${outlook.cure.job} hot work before full strength`)]);
}

function stopPost({ round }: Reminder, watch: Outlook, late: string | null, setting: Setting): Answer {
  const weld = watch.cure.hotWork.find(({ entry }) => entry === round);
  const ban = weld?.ban == null ? '' : ` ${weld.ban.material} is in this car since ${clock(weld.ban.since, setting)}.`;
  return answer('alarm', [`**${title(watch)} STOP: no heat, no flame.**${ban}`, `${noted(weld, setting)} It burns in the cavity. Smoke? ${FIRE_FIRST}`, late], [button('Not begun', `undo ${round}`), overButton(watch), smokeButton(watch)]);
}

function smokePost(reminder: Reminder, watch: Outlook, late: string | null, setting: Setting): Answer {
  const smoke = watch.cure.checks.findLast(({ result }) => result === 'soft');
  const by = smoke === undefined ? '' : ` by ${nameOf(setting.shop, smoke.by)}`;
  const decides = reminder.to === 'channel' || isForeman(setting.shop, reminder.to);
  return answer('alarm', [`${FIRE_FIRST} **${title(watch)} SMOKE** reported ${clock(reminder.dueAt, setting)}${by}.`, 'The watch goes on only when the foreman says so.', late], decides ? [button('Watch again', `release ${aimed(watch)} smoke judged`)] : []);
}

function overPost({ dueAt }: Reminder, watch: Outlook, late: string | null, setting: Setting): Answer {
  const first = watch.milestones.at(0)?.check.first ?? null;
  return answer('question', [
    `${title(watch)} **fire watch over by the clock ${clock(dueAt, setting)}**: all cold, no smoke, no smell?`,
    first === null ? null : `First check by ${nameOf(setting.shop, first.by)} ${clock(first.at, setting)}: **second tap** by a technician or the foreman.`,
    late,
    'Feel the far side, look into the cavity.',
  ], [clearButton(watch), smokeButton(watch)]);
}

function stillHotPost(watch: Outlook, late: string | null, setting: Setting): Answer {
  const weld = watch.cure.hotWork.at(-1);
  return answer('question', [`${title(watch)} **hot work still going on?** ${noted(weld, setting)} No end noted, so **no fire watch runs**.`, late], [overButton(watch), button('Still going', `weld ${watch.cure.job}${weld?.joint == null ? '' : ` ${weld.joint}`}`), smokeButton(watch)]);
}

const noted = (weld: HotWork | undefined, setting: Setting): string => (weld === undefined ? '' : `Noted ${clock(weld.at, setting)} by ${nameOf(setting.shop, weld.by)}.`);
