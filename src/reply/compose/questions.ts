import { plus, roundDownToMinute } from '../../cure/units.js';
import type { CommandKind } from '../../repair/commands.js';
import { currentMilestone, waitingMilestones, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { composeWatch } from './fire-watch.js';
import { likelyClause } from './likely.js';
import { dampSentence, openSentence } from './open.js';
import { aimed, exampleNote, heatWords, milestoneSentence, title } from './state.js';
import { answer, button, capital, clock, type Setting } from './words.js';

/** One job: each milestone with its state and time, what heats it, who owns it. */
export function composeWhen(outlook: Outlook, setting: Setting): Answer {
  const { cure } = outlook;
  if (isFireWatch(cure.card)) return composeWatch(outlook, setting);
  const head = `${title(outlook)} ${cure.card.name}, ${nameOf(setting.shop, cure.owner)}, ${heatWords(outlook, setting)}.`;
  if (cure.closed === null) return answer('plain', [head, openSentence(outlook, setting), dampSentence(outlook, setting), exampleNote(cure.card, setting)], [button('Closed', `closed ${aimed(outlook)}`)]);
  const passed = outlook.openPassed === null ? null : `Open limit ${clock(outlook.openPassed, setting)} was passed${cure.releasedAt === null ? ': the foreman decides' : ', decided by the foreman'}.`;
  const current = currentMilestone(outlook, setting.now);
  const lines = outlook.milestones.map((one) => `${capital(milestoneSentence(outlook, one, setting))}${one === current ? likelyClause(outlook, one, setting) : ''}.`);
  const due = current?.check.dueAt;
  const buttons = current !== null && due != null && due <= setting.now && waitingMilestones(outlook).length > 0 ? [button('Hard', `check ${aimed(outlook)} ${current.kind} hard`), button('Soft', `check ${aimed(outlook)} ${current.kind} soft`)] : [];
  return answer('plain', [head, ...lines, recoatBy(outlook, setting), passed, exampleNote(cure.card, setting)], buttons);
}

/** The other end of a coat's window errs early: rounded down. */
function recoatBy({ cure }: Outlook, setting: Setting): string | null {
  const { recoatBy: latest } = cure.card;
  return latest === null || cure.start === null ? null : `Recoat by **${clock(roundDownToMinute(plus(cure.start, latest)), setting)}**, after that prepare it anew.`;
}

export const SAFETY_TAIL = 'Data sheet, vehicle maker\'s method, local rules and your licence come first. This is a reminder, not permission.';

/** One command as help shows it: a line to copy and what it does. */
export interface HelpLine {
  readonly kind: CommandKind;
  readonly example: string;
  readonly meaning: string;
}

/** What a technician needs while working; the rest is named in one line. */
const FIRST: readonly CommandKind[] = ['paste', 'closed', 'cure', 'lamp', 'read', 'off', 'check', 'who-waits', 'what-if', 'latest-start'];

/** Fits a phone screen. */
export function composeHelp(commands: readonly HelpLine[]): Answer {
  const shown = FIRST.flatMap((kind) => commands.filter((one) => one.kind === kind));
  const others = commands.filter((one) => !FIRST.includes(one.kind) && one.kind !== 'help').map((one) => one.kind);
  return answer('plain', [...shown.map((one) => `**${one.example}**: ${one.meaning}`), `Also: ${others.join(', ')}. Times: 20 min ago, at 13:40.`, SAFETY_TAIL]);
}
