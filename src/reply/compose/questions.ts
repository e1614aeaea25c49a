import { plus, roundDownToMinute } from '../../cure/units.js';
import { currentMilestone, waitingMilestones, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayQuestions } from '../catalogue/questions.js';
import type { Reader } from '../catalogue/speaker.js';
import { cartridgeHeld, cartridgeLine } from './cartridge.js';
import { composeWatch } from './fire-watch.js';
import { likelyClause } from './likely.js';
import { dampSentence, openSentence } from './open.js';
import { aimed, exampleNote, heatAndStays, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, type Setting } from './words.js';

const MOST_OTHERS = 2;

/** One job: each milestone with its state and time, what heats it, who owns it. */
export function composeWhen(outlook: Outlook, setting: Setting, others: readonly Outlook[] = []): Answer {
  const { cure } = outlook;
  if (isFireWatch(cure.card)) return composeWatch(outlook, setting);
  const head = `${title(outlook)} ${cure.card.name}, ${nameOf(setting.shop, cure.owner)}, ${heatAndStays(outlook, setting)}.`;
  if (cure.closed === null) return answer('plain', [cartridgeHeld(outlook, setting), head, openSentence(outlook, setting), dampSentence(outlook, setting), cartridgeLine(outlook, setting), exampleNote(cure.card, setting)], [button(sayButtons(setting, 'closed'), `closed ${aimed(outlook)}`)]);
  const passed = outlook.openPassed === null ? null : sayQuestions(setting, cure.releasedAt === null ? 'limit-undecided' : 'limit-decided', { at: clock(outlook.openPassed, setting) });
  const current = currentMilestone(outlook, setting.now);
  const lines = outlook.milestones.map((one) => `${capital(milestoneSentence(outlook, one, setting))}${one === current ? likelyClause(outlook, one, setting) : ''}.`);
  const due = current?.check.dueAt;
  const buttons = current !== null && due != null && due <= setting.now && waitingMilestones(outlook).length > 0 ? [button(sayButtons(setting, 'hard'), `check ${aimed(outlook)} ${current.kind} hard`), button(sayButtons(setting, 'soft'), `check ${aimed(outlook)} ${current.kind} soft`)] : [];
  return answer('plain', [cartridgeHeld(outlook, setting), head, ...lines, recoatBy(outlook, setting), passed, cartridgeLine(outlook, setting), ...others.slice(0, MOST_OTHERS).flatMap((other) => otherCure(other, setting)), exampleNote(cure.card, setting)], buttons);
}

/** What else was laid on this car and is settled: its last strength, by whom. */
function otherCure(other: Outlook, setting: Setting): string[] {
  const last = other.milestones.findLast((one) => one.check.phase === 'confirmed');
  return last === undefined ? [] : [`${title(other)} ${other.cure.card.name}: ${milestoneSentence(other, last, setting)}.`];
}

/** The other end of a coat's window errs early: rounded down. */
function recoatBy({ cure }: Outlook, setting: Setting): string | null {
  const { recoatBy: latest } = cure.card;
  return latest === null || cure.start === null ? null : sayQuestions(setting, 'recoat-by', { at: clock(roundDownToMinute(plus(cure.start, latest)), setting) });
}

export const safetyTail = (reader: Reader): string => sayQuestions(reader, 'law-first');
