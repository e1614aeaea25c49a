import { HOT_WORK_ROUND, SMOKE_ROUND } from '../../repair/hot-work-due.js';
import { goingOn, type HotWork } from '../../repair/hot-work.js';
import type { Outlook } from '../../repair/outlook.js';
import { isForeman, nameOf } from '../../repair/people.js';
import type { Reminder } from '../../repair/reminder.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { sayHotWork } from '../catalogue/hot-work.js';
import { sayPost } from '../catalogue/post.js';
import { clearButton, fireFirst, overButton, smokeButton } from './fire-watch.js';
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
  const values = { title: title(outlook), at: clock(dueAt, setting), card: outlook.cure.card.name };
  const told = weld?.joint == null ? sayHotWork(setting, 'told', values) : sayHotWork(setting, 'told-at-joint', { ...values, joint: weld.joint });
  return answer('alarm', [
    inOneLine(told, notedBy(weld, setting)),
    late,
    sayHotWork(setting, 'heat-weakens'),
  ], [button(sayHotWork(setting, 'button-hold'), `hold ${outlook.cure.job} hot work before full strength`)]);
}

function stopPost({ round }: Reminder, watch: Outlook, late: string | null, setting: Setting): Answer {
  const weld = watch.cure.hotWork.find(({ entry }) => entry === round);
  const stop = weld?.ban == null ? sayHotWork(setting, 'stop-post', { title: title(watch) }) : sayHotWork(setting, 'stop-post-ban', { title: title(watch), material: weld.ban.material, since: clock(weld.ban.since, setting) });
  const burns = sayHotWork(setting, 'burns', { fire: fireFirst(setting) });
  return answer('alarm', [stop, inOneLine(notedBy(weld, setting), burns), late], [button(sayHotWork(setting, 'button-not-begun'), `undo ${round}`), overButton(watch, setting, weld), smokeButton(watch, setting)]);
}

function smokePost(reminder: Reminder, watch: Outlook, late: string | null, setting: Setting): Answer {
  const smoke = watch.cure.checks.findLast(({ result }) => result === 'soft');
  const values = { fire: fireFirst(setting), title: title(watch), at: clock(reminder.dueAt, setting) };
  const said = smoke === undefined ? sayHotWork(setting, 'smoke-post', values) : sayHotWork(setting, 'smoke-post-by', { ...values, who: nameOf(setting.shop, smoke.by) });
  const decides = reminder.to === 'channel' || isForeman(setting.shop, reminder.to);
  return answer('alarm', [said, sayHotWork(setting, 'only-the-foreman'), late], decides ? [button(sayHotWork(setting, 'button-watch-again'), `release ${aimed(watch)} smoke judged`)] : []);
}

function overPost({ dueAt }: Reminder, watch: Outlook, late: string | null, setting: Setting): Answer {
  const first = watch.milestones.at(0)?.check.first ?? null;
  return answer('question', [
    sayHotWork(setting, 'watch-over', { title: title(watch), at: clock(dueAt, setting) }),
    first === null ? null : sayPost(setting, 'first-check', { who: nameOf(setting.shop, first.by), at: clock(first.at, setting) }),
    late,
    sayHotWork(setting, 'feel-and-look'),
  ], [clearButton(watch, setting), smokeButton(watch, setting)]);
}

function stillHotPost(watch: Outlook, late: string | null, setting: Setting): Answer {
  const weld = goingOn(watch.cure).at(-1);
  const noted = notedBy(weld, setting);
  const asked = noted === null ? sayHotWork(setting, 'still-going', { title: title(watch) }) : sayHotWork(setting, 'still-going-noted', { title: title(watch), noted });
  const again = `weld ${watch.cure.job}${weld?.joint == null ? '' : ` ${weld.joint}`}`;
  return answer('question', [asked, late], [overButton(watch, setting), button(sayHotWork(setting, 'button-still-going'), again), smokeButton(watch, setting)]);
}

/** Null: nobody noted it. */
const notedBy = (weld: HotWork | undefined, setting: Setting): string | null =>
  weld === undefined ? null : sayHotWork(setting, 'noted-by', { at: clock(weld.at, setting), who: nameOf(setting.shop, weld.by) });

const inOneLine = (...sentences: readonly (string | null)[]): string => sentences.filter((sentence) => sentence !== null).join(' ');
