import type { PersonId } from '../../repair/ids.js';
import type { Waiting } from '../../repair/waiting.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer, Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayLists } from '../catalogue/lists.js';
import { composeWaiting, waitingLine } from './lists.js';
import { aimed, markedExample } from './state.js';
import { answer, button, type Setting } from './words.js';

/** What somebody sees without asking: own cures, each with the lines that answer it, and every car that waits. */
export interface HomeBoard {
  readonly mine: readonly Answer[];
  readonly waiting: Answer;
}

const MOST_OWN = 15;

/** `list` worst first. */
export function composeHome(list: readonly Waiting[], person: PersonId, setting: Setting): HomeBoard {
  const own = list.filter((one) => one.outlook.cure.owner === person);
  const more = own.length > MOST_OWN ? [answer('plain', [sayLists(setting, 'more-type', { more: `${own.length - MOST_OWN}` })])] : [];
  return { mine: [...own.slice(0, MOST_OWN).map((one) => ownCure(one, setting)), ...more], waiting: composeWaiting(list, setting) };
}

const ownCure = (one: Waiting, setting: Setting): Answer =>
  markedExample(answer(one.state === 'due' ? 'question' : 'plain', [waitingLine(one, setting)], buttonsFor(one, setting)), [one.outlook.cure.card], setting);

function buttonsFor({ outlook, waitsFor, state, milestone }: Waiting, setting: Setting): Button[] {
  const when = button(sayLists(setting, 'button-when'), `when ${aimed(outlook)}`);
  if (isFireWatch(outlook.cure.card)) return [when];
  if (waitsFor === 'open-limit') return [button(sayButtons(setting, 'closed'), `closed ${aimed(outlook)}`), when];
  if (state !== 'due' || milestone === null) return [when];
  return [button(sayButtons(setting, 'hard'), `check ${aimed(outlook)} ${milestone.kind} hard`), button(sayButtons(setting, 'soft'), `check ${aimed(outlook)} ${milestone.kind} soft`), when];
}
