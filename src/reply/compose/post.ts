import { hottestAllowed } from '../../repair/hottest-allowed.js';
import { currentMilestone, isOver, needsReading, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { COLD_ROUND, coldTable } from '../../repair/cold-table.js';
import { CARTRIDGE_ROUND, DEW_ROUND, DISPUTED_STEP, LIMIT_ROUND } from '../../repair/due.js';
import { isForeman, nameOf } from '../../repair/people.js';
import type { Reminder } from '../../repair/reminder.js';
import type { Answer, Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayCartridge } from '../catalogue/cartridge.js';
import { sayPost } from '../catalogue/post.js';
import { badCartridge } from './cartridge.js';
import { cautionLine } from './cautions.js';
import { tooClose } from './dew.js';
import { composeHotWorkPost } from './hot-work-post.js';
import { limitFigures } from './open.js';
import { aimed, airWords, certainty, heaterWord, heatWords, holdWords, isEarliest, markedExample, offButton, title } from './state.js';
import { takeoverButtons, takeoverLines } from './takeover.js';
import { answer, button, clock, degrees, lasting, milestoneWord, type Setting } from './words.js';

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
      return readingPost(reminder, outlook, lateness, setting);
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

/** When somebody last saw the heat. */
const lastSeen = ({ heat }: Outlook, setting: Setting): string => clock(heat.lastSign ?? setting.now, setting);

const laterButton = (outlook: Outlook, setting: Setting): Button => button(sayPost(setting, 'button-later'), `later ${aimed(outlook)}`);

function readingPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const asked = sayPost(setting, 'reading', { title: title(outlook), heat: heatWords(outlook, setting), since: lastSeen(outlook, setting) });
  const probe = sayPost(setting, 'probe', { job: outlook.cure.job });
  return answer('question', [asked, lateSentence(lateness, reminder, setting), waits(reminder, outlook, setting), probe], [offButton(outlook, setting), laterButton(outlook, setting)]);
}

/** One lamp, one question, whatever it heats. */
function stillOnPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting, all: readonly Outlook[]): Answer {
  const titles = [...new Set(all.map(title))].join(', ');
  const { lamp, heater, job } = outlook.cure;
  const aim = titles === title(outlook) || lamp === null ? aimed(outlook) : `${job} ${heater} ${lamp}`;
  const said = sayPost(setting, 'still-on', { titles, heat: heatWords(outlook, setting), seen: lastSeen(outlook, setting) });
  const buttons = [button(sayButtons(setting, 'on'), `on ${aim}`), button(sayPost(setting, 'button-off'), `off ${aim}`), button(sayPost(setting, 'button-not-sure'), `off ${aim} don't know when`)];
  return answer('question', [said, lateSentence(lateness, reminder, setting), all.every(isOver) ? sayPost(setting, 'nothing-under-it') : nextTime(outlook, setting)], buttons);
}

function openPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const buttons = [button(sayButtons(setting, 'closed'), `closed ${aimed(outlook)}`), button(sayPost(setting, 'button-scrap'), `scrap ${aimed(outlook)} open limit passed`)];
  const limit = { title: title(outlook), at: clock(reminder.dueAt, setting) };
  const late = lateSentence(lateness, reminder, setting);
  if (reminder.step === 0) return answer('alarm', [sayPost(setting, 'open-warning', { ...limit, left: lasting(setting.now, reminder.dueAt, setting) }), late], buttons);
  return answer('alarm', [sayPost(setting, 'open-passed', limit), late, sayPost(setting, 'closed-in-time')], buttons);
}

function checkPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const one = outlook.milestones.find((other) => other.kind === reminder.kind) ?? currentMilestone(outlook, setting.now);
  if (one === null) return answer('plain', [sayPost(setting, 'nothing-waits', { title: title(outlook) })]);
  const check = { title: title(outlook), milestone: milestoneWord(one.kind, setting) };
  const at = clock(reminder.dueAt, setting);
  const toForeman = reminder.to !== outlook.cure.owner && reminder.step >= setting.shop.rhythm.repeats.length + 1;
  const first = toForeman
    ? sayPost(setting, 'check-waits', { ...check, since: at, owner: nameOf(setting.shop, outlook.cure.owner) })
    : sayPost(setting, 'check-due', { ...check, at, grade: dueGrade(outlook, one, setting) });
  const unsure = heatUnsure(outlook, setting);
  return answer(
    'question',
    [first, firstCheck(one, setting), lateSentence(lateness, reminder, setting), waits(reminder, outlook, setting), unsure ? sayPost(setting, 'on-all-the-time', { heater: heaterWord(outlook.cure, setting) }) : null, checkHint(one, outlook, setting)],
    checkButtons(outlook, one, unsure, setting),
  );
}

/** An apprentice has looked already. */
const firstCheck = ({ check: { first } }: MilestoneOutlook, setting: Setting): string | null =>
  first === null ? null : sayPost(setting, 'first-check', { who: nameOf(setting.shop, first.by), at: clock(first.at, setting) });

const dueGrade = (outlook: Outlook, one: MilestoneOutlook, setting: Setting): string =>
  isEarliest(outlook, one, setting) ? sayPost(setting, 'assumed-air') : certainty(outlook, one, setting);

function checkHint(one: MilestoneOutlook, outlook: Outlook, setting: Setting): string {
  if (one.kind === 'full' && outlook.heat.lamp === 'on') return sayPost(setting, 'off-then-bead', { heater: outlook.cure.heater });
  if (one.kind === 'handling' || one.kind === 'full') return sayPost(setting, 'witness-bead');
  if (one.kind === 'drive-away') return cautionLine('glass', setting);
  if (one.kind === 'flash-off') return sayPost(setting, 'matt-all-over');
  if (one.kind === 'sand') return sayPost(setting, 'thumbnail', { caution: cautionLine('sanding', setting) });
  return sayPost(setting, 'look-first');
}

function checkButtons(outlook: Outlook, one: MilestoneOutlook, unsure: boolean, setting: Setting): Button[] {
  const aim = aimed(outlook);
  const wasOff = button(sayPost(setting, 'button-was-off', { heater: outlook.cure.heater }), `off ${aim} don't know when`);
  const lamp = unsure ? [wasOff] : one.kind === 'full' && outlook.heat.lamp === 'on' ? [offButton(outlook, setting)] : [];
  return [...answerButtons(aim, one.kind, setting), ...lamp, laterButton(outlook, setting)];
}

const answerButtons = (aim: string, kind: string, setting: Setting): Button[] => [button(sayButtons(setting, 'hard'), `check ${aim} ${kind} hard`), button(sayButtons(setting, 'soft'), `check ${aim} ${kind} soft`)];

/** Heat is believed on and nobody has seen it for longer than the shop's rhythm. */
function heatUnsure({ heat }: Outlook, { now, shop }: Setting): boolean {
  return heat.lamp === 'on' && heat.lastSign !== null && now - heat.lastSign > shop.rhythm.stillOn * 60_000;
}

function stagePost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const next = outlook.stages.find((run) => run.began === null)?.stage;
  const due = { title: title(outlook), at: clock(reminder.dueAt, setting) };
  const asked = next === undefined ? sayPost(setting, 'stage-due-next', due) : sayPost(setting, 'stage-due', { ...due, setting: degrees(next.lamp, setting), minutes: `${next.minutes}` });
  return answer('question', [asked, lateSentence(lateness, reminder, setting), waits(reminder, outlook, setting), cautionLine('lamp', setting)], [button(sayButtons(setting, 'turned-up'), `up ${aimed(outlook)}`), laterButton(outlook, setting)]);
}

/** The foreman writes why. */
const goOnButton = (outlook: Outlook, setting: Setting): Button => ({ ...button(sayPost(setting, 'button-go-on'), `release ${aimed(outlook)}`), asks: 'reason' });

function safetyPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const { overMaximum: over, cure } = outlook;
  const maximum = hottestAllowed(cure.card);
  const hot = { title: title(outlook), value: over === null ? '' : degrees(over.value, setting), heater: cure.heater };
  const buttons = [offButton(outlook, setting), ...(over === null ? [] : [button(sayButtons(setting, 'typing-error'), `undo ${over.entry}`)]), ...(reminder.to === 'channel' || isForeman(setting.shop, reminder.to) ? [goOnButton(outlook, setting)] : [])];
  return answer('alarm', [
    maximum === null ? sayPost(setting, 'too-hot', hot) : sayPost(setting, 'too-hot-limit', { ...hot, maximum: degrees(maximum, setting) }),
    over === null ? sayPost(setting, 'too-hot-held') : sayPost(setting, 'too-hot-read', { at: clock(over.at, setting), who: nameOf(setting.shop, over.by) }),
    lateSentence(lateness, reminder, setting),
  ], buttons);
}

function decisionPost(reminder: Reminder, outlook: Outlook, lateness: Lateness, setting: Setting): Answer {
  const scrap = button(sayPost(setting, 'button-scrap'), `scrap ${aimed(outlook)} foreman`);
  const late = lateSentence(lateness, reminder, setting);
  if (reminder.round === DEW_ROUND) return answer('alarm', [sayPost(setting, 'damp', { title: title(outlook), why: tooClose(outlook, setting) }), late, sayPost(setting, 'damp-may-not-hold')], [goOnButton(outlook, setting), scrap]);
  if (reminder.round === CARTRIDGE_ROUND) return answer('alarm', [...cartridgeDecision(outlook, late, setting)], [goOnButton(outlook, setting), scrap]);
  if (reminder.round === LIMIT_ROUND) return answer('alarm', [limitPassed(reminder, outlook, setting), late, limitFigures(outlook, setting)], [goOnButton(outlook, setting), scrap]);
  if (reminder.round === COLD_ROUND) return coldPost(outlook, late, scrap, setting);
  const one = outlook.milestones.find((other) => other.check.answer !== null && (other.check.conflict || other.check.phase === 'held')) ?? currentMilestone(outlook, setting.now);
  const what = one === null ? sayPost(setting, 'check') : milestoneWord(one.kind, setting);
  if (reminder.step === DISPUTED_STEP) return answer('alarm', [sayPost(setting, 'disputed', { title: title(outlook), what }), late, answersSentence(outlook, setting)]);
  const asked = sayPost(setting, one?.check.conflict === true ? 'two-answers' : 'soft-twice', { title: title(outlook), what });
  return answer('question', [asked, late, answersSentence(outlook, setting)], [...answerButtons(aimed(outlook), one?.kind ?? '', setting), scrap]);
}

/** No time, and what to do about it. */
function coldPost(outlook: Outlook, late: string | null, scrap: Button, setting: Setting): Answer {
  const cold = coldTable(outlook);
  if (cold === null) return answer('plain', [sayPost(setting, 'nothing-waits', { title: title(outlook) })]);
  const { one, step, least } = cold;
  const told = sayPost(setting, 'table-too-cold', { title: title(outlook), milestone: milestoneWord(one.kind, setting), air: airWords(step, setting), least: degrees(least, setting) });
  return answer('alarm', [told, late, sayPost(setting, 'table-too-cold-do', { least: degrees(least, setting) }), one.kind === 'drive-away' ? cautionLine('glass', setting) : null], [scrap]);
}

function cartridgeDecision(outlook: Outlook, late: string | null, setting: Setting): (string | null)[] {
  const why = badCartridge(outlook, setting) ?? holdWords('cartridge', setting);
  return [sayCartridge(setting, 'decide', { title: title(outlook), why }), late, sayCartridge(setting, outlook.cure.closed === null ? 'may-not-hold' : 'may-not-hold-closed')];
}

/** That the open limit has passed, and what became of the panel. */
function limitPassed({ dueAt }: Reminder, outlook: Outlook, setting: Setting): string {
  const { cure } = outlook;
  const limit = { title: title(outlook), at: clock(dueAt, setting) };
  if (cure.closed === null) return sayPost(setting, 'limit-not-closed', limit);
  return cure.moved.length > 0 ? sayPost(setting, 'limit-moved', limit) : sayPost(setting, 'limit-closed', { ...limit, closed: clock(cure.closed, setting) });
}

function answersSentence(outlook: Outlook, setting: Setting): string {
  return outlook.cure.checks.slice(-2).map(({ by, result, at }) => sayPost(setting, 'answered', { who: nameOf(setting.shop, by), result, at: clock(at, setting) })).join(', ');
}

/** A repeat says how long the answer has been waited for. */
const waits = (reminder: Reminder, outlook: Outlook, setting: Setting): string | null => {
  const first = outlook.cure.raised.find((one) => one.kind === reminder.kind && one.round === reminder.round && one.at >= reminder.dueAt);
  return reminder.step === 0 || first === undefined ? null : sayPost(setting, 'no-answer', { length: lasting(first.at, setting.now, setting) });
};

function nextTime(outlook: Outlook, setting: Setting): string | null {
  const next = currentMilestone(outlook, setting.now);
  const due = next?.check.dueAt;
  if (next === null || due == null) return needsReading(outlook.cure) ? sayPost(setting, 'without-heat') : null;
  return sayPost(setting, 'goes-on', { milestone: milestoneWord(next.kind, setting), at: clock(due, setting) });
}

function lateSentence(lateness: Lateness, reminder: Reminder, setting: Setting): string | null {
  const now = clock(setting.now, setting);
  switch (lateness) {
    case 'in time':
      return null;
    case 'was held':
      return sayPost(setting, 'late-held', { now });
    case 'was down':
      return sayPost(setting, 'late-down', { now });
    case 'entered late':
      return sayPost(setting, 'late-entered', { now });
    case 'late':
      return sayPost(setting, 'late', { length: lasting(reminder.dueAt, setting.now, setting) });
  }
}
