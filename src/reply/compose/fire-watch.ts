import { needsSomebody, watchEnds } from '../../repair/fire-watch.js';
import { goingOn, type HotWork } from '../../repair/hot-work.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import type { Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import { undecidedSmoke } from '../../repair/smoke.js';
import type { Answer, Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayHotWork } from '../catalogue/hot-work.js';
import type { Reader } from '../catalogue/speaker.js';
import type { Entered } from './entry.js';
import { aimed, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, type Setting } from './words.js';

/** Said before anything else where something burns. */
export const fireFirst = (reader: Reader): string => sayHotWork(reader, 'fire-first');

export const clearButton = (watch: Outlook, reader: Reader): Button => button(sayHotWork(reader, 'button-clear'), `check ${aimed(watch)} fire-watch hard`);
export const smokeButton = (watch: Outlook, reader: Reader): Button => button(sayHotWork(reader, 'button-smoke'), `check ${aimed(watch)} fire-watch soft`);
export const overButton = (watch: Outlook, reader: Reader, weld: HotWork | undefined = goingOn(watch.cure).at(-1)): Button => button(sayHotWork(reader, 'button-over'), `done ${weldAim(watch, weld)} weld`);

/** The words a line needs to mean this hot work: its joint is not always the one of its watch. */
export const weldAim = ({ cure }: Outlook, weld: HotWork | undefined = goingOn(cure).at(-1)): string => (weld?.joint == null || weld.joint === FIRST_JOINT ? cure.job : `${cure.job} ${weld.joint}`);

/** An answer about the watch itself: who stays, what they saw, what the foreman decided. */
export function composeWatchEntry({ command, by, after, notes, entry }: Entered, setting: Setting): Answer {
  const undo = entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)];
  const [note] = notes;
  const about = { title: title(after), who: nameOf(setting.shop, by) };
  if (note?.note === 'soft') return answer('alarm', [sayHotWork(setting, 'smoke-noted', { ...about, at: clock(setting.now, setting), fire: fireFirst(setting) }), sayHotWork(setting, 'told-only-the-foreman')], undo);
  if (note?.note === 'already-confirmed') return answer('plain', [sayHotWork(setting, 'answered-already', { title: title(after), who: nameOf(setting.shop, note.by), at: clock(note.at, setting) })], undo);
  if (note?.note === 'first-check') return answer('plain', [sayHotWork(setting, 'first-check', about), sayHotWork(setting, 'second-tap')], [clearButton(after, setting), smokeButton(after, setting), ...undo]);
  if (command.kind === 'stay') return answer('plain', [sayHotWork(setting, 'stays', { title: title(after), who: nameOf(setting.shop, after.cure.attended.at(-1)?.by ?? by) }), watchSentence(after, setting)], undo);
  if (command.kind === 'release') return answer('plain', [sayHotWork(setting, 'smoke-judged', about), watchSentence(after, setting)], undo);
  return answer('plain', [`${title(after)} ${watchSentence(after, setting)}`, sayHotWork(setting, 'look-once-more')], undo);
}

/** `when` of a car on which nothing but the watch goes on. */
export function composeWatch(watch: Outlook, setting: Setting): Answer {
  const owner = nameOf(setting.shop, watch.cure.owner);
  const goesOn = watch.cure.closed === null ? sayHotWork(setting, 'going-on', { title: title(watch), since: clock(goingOn(watch.cure).at(-1)?.at ?? watch.cure.openedAt, setting), owner }) : `${title(watch)} ${owner}.`;
  return answer('plain', [goesOn, watchSentence(watch, setting)], watchButtons(watch, setting));
}

function watchButtons(watch: Outlook, setting: Setting): Button[] {
  const smoke = smokeButton(watch, setting);
  if (watch.cure.closed === null) return [overButton(watch, setting), smoke];
  const dueAt = watch.milestones.at(0)?.check.dueAt ?? null;
  return dueAt !== null && dueAt <= setting.now ? [clearButton(watch, setting), smoke] : [smoke];
}

/** Where the watch stands, in one sentence. */
export function watchSentence(watch: Outlook, setting: Setting): string {
  const smoke = undecidedSmoke(watch.cure);
  if (smoke !== null) return sayHotWork(setting, 'smoke-undecided', { at: clock(smoke.at, setting), who: nameOf(setting.shop, smoke.by) });
  const [one] = watch.milestones;
  return one === undefined ? overStarts(weldAim(watch), setting) : `${capital(milestoneSentence(watch, one, setting))}.`;
}

/** Somebody else on this car has not said that they are done; null: nobody. */
export function goesOnElsewhere({ cure }: Outlook, setting: Setting): string | null {
  const weld = goingOn(cure).at(-1);
  if (weld === undefined) return null;
  return sayHotWork(setting, 'goes-on-elsewhere', { place: weld.joint === null ? cure.job : `${cure.job} ${weld.joint}`, since: clock(weld.at, setting), who: nameOf(setting.shop, weld.by) });
}

/** What to type when the hot work is over, and what that begins. */
export const overStarts = (aim: string, setting: Setting): string => sayHotWork(setting, 'over-starts', { aim, minutes: `${setting.shop.fireWatch}` });

/** Rule R23: who stays is asked before the shop closes on a watch; null: nobody is needed, or somebody has said so. */
export function staysSentence(watch: Outlook, setting: Setting): string | null {
  const begun = watch.cure.start ?? setting.now;
  if (!needsSomebody(watch, begun, setting.shop)) return null;
  return sayHotWork(setting, 'who-stays', { at: clock(watchEnds(watch, begun, setting.shop), setting), job: watch.cure.job });
}
