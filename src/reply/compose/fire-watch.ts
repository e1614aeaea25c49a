import { needsSomebody, watchEnds } from '../../repair/fire-watch.js';
import type { Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import { undecidedSmoke } from '../../repair/smoke.js';
import type { Answer, Button } from '../answer.js';
import type { Entered } from './entry.js';
import { aimed, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, type Setting } from './words.js';

/** Said before anything else where something burns. */
export const FIRE_FIRST = '**Call the fire service first**, then people out.';

export const clearButton = (watch: Outlook): Button => button('Clear', `check ${aimed(watch)} fire-watch hard`);
export const smokeButton = (watch: Outlook): Button => button('Smoke', `check ${aimed(watch)} fire-watch soft`);
export const overButton = (watch: Outlook): Button => button('Welding over', `done ${aimed(watch)} weld`);

/** An answer about the watch itself: who stays, what they saw, what the foreman decided. */
export function composeWatchEntry({ command, by, after, notes, entry }: Entered, setting: Setting): Answer {
  const undo = entry === null ? [] : [button('Undo', `undo ${entry}`)];
  const [note] = notes;
  const who = nameOf(setting.shop, by);
  if (note?.note === 'soft') return answer('alarm', [`**${title(after)} SMOKE** noted ${clock(setting.now, setting)} by ${who}. ${FIRE_FIRST}`, 'The foreman is told. The watch goes on only when the foreman says so.'], undo);
  if (note?.note === 'already-confirmed') return answer('plain', [`${title(after)} answered already by **${nameOf(setting.shop, note.by)}** ${clock(note.at, setting)}. Nothing changed.`], undo);
  if (note?.note === 'first-check') return answer('plain', [`${title(after)} fire watch: **first check** by ${who}.`, 'Second tap by a technician or the foreman: until then it waits.'], [clearButton(after), smokeButton(after), ...undo]);
  if (command.kind === 'stay') return answer('plain', [`${title(after)} **${who}** stays for the fire watch.`, watchSentence(after, setting)], undo);
  if (command.kind === 'release') return answer('plain', [`${title(after)} smoke judged by **${who}**: the watch starts again.`, watchSentence(after, setting)], undo);
  return answer('plain', [`${title(after)} ${watchSentence(after, setting)}`, 'The clock is not a check: look once more before you leave.'], undo);
}

/** `when` of a car on which nothing but the watch goes on. */
export function composeWatch(watch: Outlook, setting: Setting): Answer {
  const begun = watch.cure.closed === null ? `hot work since ${clock(watch.cure.hotWork.at(-1)?.at ?? watch.cure.openedAt, setting)}, ` : '';
  const dueAt = watch.milestones.at(0)?.check.dueAt ?? null;
  const buttons = watch.cure.closed === null ? [overButton(watch), smokeButton(watch)] : dueAt !== null && dueAt <= setting.now ? [clearButton(watch), smokeButton(watch)] : [smokeButton(watch)];
  return answer('plain', [`${title(watch)} ${begun}${nameOf(setting.shop, watch.cure.owner)}.`, watchSentence(watch, setting)], buttons);
}

/** Where the watch stands, in one sentence. */
export function watchSentence(watch: Outlook, setting: Setting): string {
  const smoke = undecidedSmoke(watch.cure);
  if (smoke !== null) return `**SMOKE** reported ${clock(smoke.at, setting)} by ${nameOf(setting.shop, smoke.by)}: the foreman decides.`;
  const [one] = watch.milestones;
  if (one === undefined) return `Over? \`done ${aimed(watch)} weld\` starts the fire watch of ${setting.shop.fireWatch} min.`;
  return `${capital(milestoneSentence(watch, one, setting))}.`;
}

/** Rule R23: who stays is asked before the shop closes on a watch; null: nobody is needed, or somebody has said so. */
export function staysSentence(watch: Outlook, setting: Setting): string | null {
  const begun = watch.cure.start ?? setting.now;
  if (!needsSomebody(watch, begun, setting.shop)) return null;
  return `The shop closes before the fire watch is over. **Who stays until ${clock(watchEnds(watch, begun, setting.shop), setting)}?** \`stay ${watch.cure.job}\``;
}
