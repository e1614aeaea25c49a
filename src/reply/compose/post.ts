import { currentMilestone, hottestAllowed, needsReading, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { DEW_ROUND, LIMIT_ROUND } from '../../repair/due.js';
import { isForeman, nameOf } from '../../repair/people.js';
import type { Reminder } from '../../repair/reminder.js';
import type { Answer, Button } from '../answer.js';
import { cautionLine } from './cautions.js';
import { tooClose } from './dew.js';
import { composeHotWorkPost } from './hot-work-post.js';
import { limitFigures } from './open.js';
import { aimed, certainty, heaterWord, heatWords, isEarliest, markedExample, offButton, title } from './state.js';
import { takeoverButtons, takeoverLines } from './takeover.js';
import { answer, button, capital, clock, degrees, lasting, MILESTONE_WORDS, type Setting } from './words.js';

/** Why a post comes later than it should: honest about it (rule R13). */
export type Lateness = 'in time' | 'was held' | 'was down' | 'entered late' | 'late';

/** What the bot says by itself. `all`: the cures that this one question is about, `outlook` first. */
export function composePost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting, all: readonly Outlook[] = [outlook]): Answer {
  return markedExample(composed(reminder, outlook, lateness, setting, all), all.map(({ cure }) => cure.card), setting);
}

function composed(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting, all: readonly Outlook[]): Answer {
  const hot = composeHotWorkPost(reminder, outlook, lateSentence(lateness, reminder, setting), setting);
  if (hot !== null) return hot;
  switch (reminder.kind) {
    case 'open-limit':
      return openPost(reminder, outlook, lateness, setting);
    case 'reading':
      return answer('question', [`${title(outlook)} **reading?** ${heatWords(outlook, setting)} since ${clock(outlook.heat.lastSign ?? setting.now, setting)}, joint not read: only the air counts.`, lateSentence(lateness, reminder, setting), waits(reminder, outlook, setting), `Probe on the coldest spot, then type \`read ${outlook.cure.job}\` and the figure.`], [offButton(outlook, setting), button('Later 10', `later ${aimed(outlook)}`)]);
    case 'still-on':
      return stillOnPost(reminder, outlook, lateness, setting, all);
    case 'handover':
      return answer('question', takeoverLines(reminder, all, setting), takeoverButtons(reminder, all, setting));
    case 'stage':
      return stagePost(reminder, outlook, lateness, setting);
    case 'safety':
      return safetyPost(reminder, outlook, lateness, setting);
    case 'decision':
      return decisionPost(reminder, outlook, lateness, setting);
    default:
      return checkPost(reminder, outlook, lateness, setting);
  }
}

/** One lamp, one question, whatever it heats. */
function stillOnPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting, all: readonly Outlook[]): Answer {
  const names = [...new Set(all.map(title))].join(', ');
  const { lamp, heater, job } = outlook.cure;
  const aim = names === title(outlook) || lamp === null ? aimed(outlook) : `${job} ${heater} ${lamp}`;
  const said = `${names} **still on?** ${heatWords(outlook, setting)}, last seen ${clock(outlook.heat.lastSign ?? setting.now, setting)}.`;
  return answer('question', [said, lateSentence(lateness, reminder, setting), nextTime(outlook, setting)], [button('On', `on ${aim}`), button('Off', `off ${aim}`), button('Not sure', `off ${aim} don't know when`)]);
}

function openPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const buttons = [button('Closed', `closed ${aimed(outlook)}`), button('Scrap', `scrap ${aimed(outlook)} open limit passed`)];
  if (reminder.step === 0) return answer('alarm', [`${title(outlook)} **open limit ${clock(reminder.dueAt, setting)}**: close the panel, ${lasting(setting.now, reminder.dueAt)} left.`, lateSentence(lateness, reminder, setting)], buttons);
  return answer('alarm', [`${title(outlook)} **open limit ${clock(reminder.dueAt, setting)} passed**, not noted as closed.`, lateSentence(lateness, reminder, setting), 'Closed in time? Tap Closed and fix the time. If not, the foreman decides.'], buttons);
}

function checkPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const one = outlook.milestones.find((other) => other.kind === reminder.kind) ?? currentMilestone(outlook, setting.now);
  if (one === null) return answer('plain', [`${title(outlook)} nothing waits.`]);
  const name = MILESTONE_WORDS[one.kind];
  const toForeman = reminder.to !== outlook.cure.owner && reminder.step >= setting.shop.rhythm.repeats.length + 1;
  const first = toForeman
    ? `${title(outlook)} **${name} check waits since ${clock(reminder.dueAt, setting)}**, ${nameOf(setting.shop, outlook.cure.owner)} has not answered.`
    : `${title(outlook)} **${name} due ${clock(reminder.dueAt, setting)}** ${dueGrade(outlook, one, setting)}.`;
  const unsure = heatUnsure(outlook, setting);
  return answer(
    'question',
    [first, firstCheck(one, setting), lateSentence(lateness, reminder, setting), waits(reminder, outlook, setting), unsure ? `Was the ${heaterWord(outlook.cure, setting)} on all the time? If not, say so first.` : null, checkHint(one, outlook)],
    checkButtons(outlook, one, unsure, setting),
  );
}

/** An apprentice has looked already. */
const firstCheck = ({ check: { first } }: MilestoneOutlook, setting: Setting): string | null =>
  first === null ? null : `First check by ${nameOf(setting.shop, first.by)} ${clock(first.at, setting)}: **second tap** by a technician or the foreman.`;

const dueGrade = (outlook: Outlook, one: MilestoneOutlook, setting: Setting): string => {
  return isEarliest(outlook, one, setting) ? 'by the clock, on assumed air' : certainty(outlook, one, setting);
};

function checkHint(one: MilestoneOutlook, outlook: Outlook): string {
  if (one.kind === 'handling' || one.kind === 'full') {
    const lampOff = one.kind === 'full' && outlook.heat.lamp === 'on' ? `${capital(outlook.cure.heater)} off. ` : '';
    return `${lampOff}Try the witness bead at the coldest spot.`;
  }
  if (one.kind === 'drive-away') return cautionLine('glass');
  if (one.kind === 'flash-off') return 'Does it look matt all over?';
  if (one.kind === 'sand') return `Thumbnail test first. ${cautionLine('sanding')}`;
  return 'Look at it first: the clock is not a check.';
}

function checkButtons(outlook: Outlook, one: MilestoneOutlook, unsure: boolean, setting: Setting): Button[] {
  const aim = aimed(outlook);
  const lamp = unsure ? [button(`${capital(outlook.cure.heater)} was off`, `off ${aim} don't know when`)] : one.kind === 'full' && outlook.heat.lamp === 'on' ? [offButton(outlook, setting)] : [];
  return [button('Hard', `check ${aim} ${one.kind} hard`), button('Soft', `check ${aim} ${one.kind} soft`), ...lamp, button('Later 10', `later ${aim}`)];
}

/** Heat is believed on and nobody has seen it for longer than the shop's rhythm. */
function heatUnsure({ heat }: Outlook, { now, shop }: Setting): boolean {
  return heat.lamp === 'on' && heat.lastSign !== null && now - heat.lastSign > shop.rhythm.stillOn * 60_000;
}

function stagePost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const next = outlook.stages.find((run) => run.began === null)?.stage;
  const asked = next === undefined ? 'next stage' : `lamp **${degrees(next.lamp, setting)}** for ${next.minutes} min`;
  return answer('question', [`${title(outlook)} **lamp stage due ${clock(reminder.dueAt, setting)}**: ${asked}.`, lateSentence(lateness, reminder, setting), waits(reminder, outlook, setting), cautionLine('lamp')], [button('Turned up', `up ${aimed(outlook)}`), button('Later 10', `later ${aimed(outlook)}`)]);
}

function safetyPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const over = outlook.overMaximum;
  const maximum = hottestAllowed(outlook.cure.card);
  const value = over === null ? '' : degrees(over.value, setting);
  const buttons = [offButton(outlook, setting), ...(over === null ? [] : [button('Typing error', `undo ${over.entry}`)]), ...(reminder.to === 'channel' || isForeman(setting.shop, reminder.to) ? [button('Go on', `release ${aimed(outlook)} heat judged`)] : [])];
  return answer('alarm', [`**${title(outlook)} TOO HOT ${value}**${maximum === null ? '' : `, limit ${degrees(maximum, setting)}`}. ${capital(outlook.cure.heater)} off or back now.`, `Read ${over === null ? '' : `${clock(over.at, setting)} by ${nameOf(setting.shop, over.by)}`}. The cure is held until the foreman decides.`, lateSentence(lateness, reminder, setting)], buttons);
}

function decisionPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const aim = aimed(outlook);
  const scrap = button('Scrap', `scrap ${aim} foreman`);
  if (reminder.round === DEW_ROUND) return answer('alarm', [`${title(outlook)} **${tooClose(outlook, setting)}**. You decide.`, lateSentence(lateness, reminder, setting), 'A bead on damp metal may not hold. Wiped off and warmed: undo or scrap it and paste again.'], [button('Go on', `release ${aim} damp metal judged`), scrap]);
  if (reminder.round === LIMIT_ROUND) {
    const how = outlook.cure.closed === null ? 'not noted as closed' : outlook.cure.moved.length > 0 ? 'panel moved after it' : `closed ${clock(outlook.cure.closed, setting)}`;
    return answer('alarm', [`${title(outlook)} **open limit ${clock(reminder.dueAt, setting)} passed**, ${how}. You decide.`, lateSentence(lateness, reminder, setting), limitFigures(outlook, setting)], [button('Go on', `release ${aim} open limit judged`), scrap]);
  }
  const one = outlook.milestones.find((other) => other.check.answer !== null && (other.check.conflict || other.check.phase === 'held')) ?? currentMilestone(outlook, setting.now);
  const name = one === null ? 'check' : MILESTONE_WORDS[one.kind];
  const kind = one?.kind ?? '';
  const why = one?.check.conflict === true ? 'two answers, held as soft' : 'soft twice, held';
  return answer('question', [`${title(outlook)} **${name}: ${why}.** You settle it.`, lateSentence(lateness, reminder, setting), answersSentence(outlook, setting)], [button('Hard', `check ${aim} ${kind} hard`), button('Soft', `check ${aim} ${kind} soft`), scrap]);
}

function answersSentence(outlook: Outlook, setting: Setting): string {
  return outlook.cure.checks.slice(-2).map((check) => `${nameOf(setting.shop, check.by)} ${check.result} ${clock(check.at, setting)}`).join(', ');
}

/** A repeat says how long the answer has been waited for. */
const waits = (reminder: Reminder, outlook: Outlook, setting: Setting): string | null => {
  const first = outlook.cure.raised.find((one) => one.kind === reminder.kind && one.round === reminder.round && one.at >= reminder.dueAt);
  return reminder.step === 0 || first === undefined ? null : `No answer for ${lasting(first.at, setting.now)}.`;
};

function nextTime(outlook: Outlook, setting: Setting): string | null {
  const next = currentMilestone(outlook, setting.now);
  const due = next?.check.dueAt;
  if (next === null || due == null) return needsReading(outlook.cure) ? 'Without heat nothing goes on.' : null;
  return `${MILESTONE_WORDS[next.kind]} ${clock(due, setting)} if it stays on.`;
}

function lateSentence(lateness: Lateness, reminder: Reminder, setting: Setting): string | null {
  switch (lateness) {
    case 'in time':
      return null;
    case 'was held':
      return `Said ${clock(setting.now, setting)}: the job was **held** when it was due.`;
    case 'was down':
      return `Said ${clock(setting.now, setting)}: **I was down** when it was due.`;
    case 'entered late':
      return `Said ${clock(setting.now, setting)}: it was entered after the time had come.`;
    case 'late':
      return `Said ${lasting(reminder.dueAt, setting.now)} late.`;
  }
}

