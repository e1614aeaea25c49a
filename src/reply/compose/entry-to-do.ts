import type { MilestoneKind } from '../../cure/card.js';
import { likelyDue } from '../../repair/expected.js';
import { currentMilestone, hardensByDepth, isAttended, needsReading, waitingMilestones, type Outlook } from '../../repair/outlook.js';
import { sayToDo } from '../catalogue/to-do.js';
import type { Entered } from './entry.js';
import { dampSentence, tapClosed } from './open.js';
import { heaterWord } from './state.js';
import { capital, clock, degrees, milestoneWord, type Setting } from './words.js';

/** One thing to do. */
export function toDo({ command, after, notes }: Entered, setting: Setting): string | null {
  const note = notes.find((one) => one.note !== 'card-changed');
  if (note?.note === 'lamp-over-maximum') return sayToDo(setting, 'turn-down', { heater: capital(heaterWord(after.cure, setting)), setting: degrees(note.setting, setting), card: after.cure.card.name, maximum: degrees(note.maximum, setting) });
  if (after.openPassed !== null && after.cure.releasedAt === null && opensLimit(command.kind)) {
    return sayToDo(setting, 'open-limit-passed', { at: clock(after.openPassed, setting) });
  }
  const damp = laidOn(command.kind) ? dampSentence(after, setting) : null;
  if (damp !== null) return damp;
  const unchecked = notes.find((one) => one.note === 'unchecked');
  if (unchecked !== undefined) return sayToDo(setting, 'unchecked', { milestone: capital(milestoneWord(unchecked.milestone, setting)) });
  if (note?.note === 'pad-no-recipe' || (note?.note === 'already-so' && padOnRecipe(after))) return sayToDo(setting, needsRecipe(after) ? 'pad-counts-nothing' : 'pad-counts-readings');
  if (note?.note === 'below-stage') return sayToDo(setting, 'below-stage', { setting: degrees(note.asked, setting) });
  if (note?.note === 'bare-metal') return sayToDo(setting, 'matt-tape');
  if (command.kind === 'off' && note === undefined && waitRuns(after, setting)) return sayToDo(setting, 'heat-back', { heater: after.cure.heater });
  if (note?.note === 'stored-heat') return sayToDo(setting, 'heat-on-again', { heater: after.cure.heater });
  if (note?.note === 'first-check') return sayToDo(setting, 'second-tap');
  if (note?.note === 'two-answers') return sayToDo(setting, 'foreman-settles');
  const wanted = notes.find((one) => one.note === 'lamp-wanted');
  if (wanted !== undefined) return wanted.choices.length === 0 ? sayToDo(setting, 'no-lamp-free') : sayToDo(setting, 'which-lamp');
  if (note?.note === 'confirmed') return afterConfirmed(note.milestone, after, setting);
  if (command.kind === 'lamp' && hardensByDepth(after.cure.card)) return sayToDo(setting, 'dry-air');
  if (after.cure.closed !== null && after.heat.lamp === 'on' && after.heat.counted === null && needsReading(after.cure)) return lockIn(after, setting);
  if (command.kind === 'lamp' && needsReading(after.cure) && after.heat.counted !== null) return sayToDo(setting, 'read-again', { value: degrees(after.heat.counted, setting) });
  if ((command.kind === 'lamp' || command.kind === 'cure') && endsAtClosing(after, setting)) return sayToDo(setting, 'closing-first');
  return after.cure.closed === null ? tapClosed(after.cure.card, setting) : null;
}

/** Heat still helps: something on the card waits for its time. */
const waitRuns = (after: Outlook, { now }: Setting): boolean =>
  waitingMilestones(after).some(({ check: { dueAt } }) => dueAt === null || dueAt > now);

/** What a reading would be worth: the likely time beside the safe one, never instead of it. */
function lockIn(after: Outlook, setting: Setting): string {
  const current = currentMilestone(after, setting.now);
  const likely = current === null ? null : likelyDue(after, current);
  return likely === null ? sayToDo(setting, 'read-once') : sayToDo(setting, 'lock-in', { at: clock(likely, setting) });
}

/** A lamp that nobody watches after closing does not count: the wait would not end today. */
export const endsAtClosing = (after: Outlook, { now, shop }: Setting): boolean =>
  after.heat.lamp === 'on' && !isAttended(after.cure, shop, now) && !(padOnRecipe(after) && needsRecipe(after)) && (currentMilestone(after, now)?.check.dueAt ?? null) === null && after.history?.heat.some((event) => event.kind === 'closing') === true;

function afterConfirmed(kind: MilestoneKind, after: Outlook, setting: Setting): string | null {
  const next = after.stages.find((run) => run.began === null);
  if (next !== undefined && waitingMilestones(after).length > 0) return sayToDo(setting, 'next-stage', { setting: degrees(next.stage.lamp, setting), minutes: `${next.stage.minutes}` });
  if (waitingMilestones(after).length === 0) return after.heat.lamp === 'on' ? sayToDo(setting, 'off-then-sheet-decides', { heater: after.cure.heater }) : sayToDo(setting, 'sheet-decides');
  return kind === 'flash-off' ? sayToDo(setting, 'now-heat') : null;
}

/** What can bring a passed open limit to light. */
const opensLimit = (kind: Entered['command']['kind']): boolean => kind === 'moved' || kind === 'closed' || kind === 'cure' || kind === 'wrong-card';

/** What can bring damp metal to light, or is not to be said without it. */
const laidOn = (kind: Entered['command']['kind']): boolean => kind === 'paste' || kind === 'read' || opensLimit(kind);

/** A pad is on where the card has lamp settings, none of which a pad ever runs. */
const padOnRecipe = ({ cure, heat }: Outlook): boolean =>
  heat.lamp === 'on' && heat.heater === 'pad' && cure.card.milestones.some((rule) => rule.laws.some((law) => law.law === 'recipe'));

/** Without the lamp the sheet has no time at all. */
const needsRecipe = ({ cure }: Outlook): boolean => cure.card.milestones.every((rule) => rule.laws.every((law) => law.law === 'recipe'));
