import type { MilestoneKind } from '../../cure/card.js';
import type { CureCommand } from '../../repair/commands.js';
import { likelyDue } from '../../repair/expected.js';
import { currentMilestone, needsReading, waitingMilestones, type Outlook } from '../../repair/outlook.js';
import type { Entered } from './entry.js';
import { CLOSE_WORDS, closeWord, dampSentence } from './open.js';
import { heaterWord } from './state.js';
import { capital, clock, degrees, MILESTONE_WORDS, type Setting } from './words.js';

/** One thing to do. */
export function toDo({ command, after, notes }: Entered, setting: Setting): string | null {
  const note = notes.find((one) => one.note !== 'card-changed');
  if (note?.note === 'lamp-over-maximum') return `**${capital(heaterWord(after.cure, setting))} at ${degrees(note.setting, setting)}, ${after.cure.card.name} allows ${degrees(note.maximum, setting)}**: turn it down now, then read the joint.`;
  if (after.openPassed !== null && after.cure.releasedAt === null && opensLimit(command.kind)) {
    return `**Open limit ${clock(after.openPassed, setting)} passed**: the foreman decides.`;
  }
  const damp = laidOn(command.kind) ? dampSentence(after, setting) : null;
  if (damp !== null) return damp;
  const unchecked = notes.find((one) => one.note === 'unchecked');
  if (unchecked !== undefined) return `${capital(MILESTONE_WORDS[unchecked.milestone])} is **not checked**: full heat on a soft joint bows the panel.`;
  if (note?.note === 'pad-no-recipe' || (note?.note === 'already-so' && padOnRecipe(after))) return needsRecipe(after) ? 'A pad runs no recipe: **nothing of it counts**.' : 'A pad runs no recipe: only what the joint itself reads counts.';
  if (note?.note === 'below-stage') return `The recipe asks for lamp ${degrees(note.asked, setting)}: below it nothing counts.`;
  if (note?.note === 'bare-metal') return 'Use matt tape or a contact probe.';
  if (command.kind === 'off' && note === undefined) return `${capital(after.cure.heater)} back? Tap On, then take a reading.`;
  if (note?.note === 'stored-heat') return `${capital(after.cure.heater)} on again? Tap On, then read once more.`;
  if (note?.note === 'first-check') return 'Second tap by a technician or the foreman: until then it waits.';
  if (note?.note === 'two-answers') return 'The foreman settles it.';
  if (note?.note === 'confirmed') return afterConfirmed(note.milestone, after, setting);
  if (after.cure.closed !== null && after.heat.lamp === 'on' && after.heat.counted === null && needsReading(after.cure)) return lockIn(after, setting);
  if (command.kind === 'lamp' && needsReading(after.cure) && after.heat.counted !== null) return `Read again once it is warm: until then ${degrees(after.heat.counted, setting)} counts.`;
  if ((command.kind === 'lamp' || command.kind === 'cure') && endsAtClosing(after, setting)) return '**The shop closes before that**: heat counts to closing only. Who stays?';
  return after.cure.closed === null ? CLOSE_WORDS[closeWord(after.cure.card)].tap : null;
}

/** What a reading would be worth: the likely time beside the safe one, never instead of it. */
function lockIn(after: Outlook, setting: Setting): string {
  const current = currentMilestone(after, setting.now);
  const likely = current === null ? null : likelyDue(after, current);
  return likely === null ? 'Take one reading: until then only the air counts.' : `Take one reading to lock in about ${clock(likely, setting)}: until then only the air counts.`;
}

/** A lamp that nobody watches after closing does not count: the wait would not end today. */
export const endsAtClosing = (after: Outlook, { now }: Setting): boolean =>
  after.heat.lamp === 'on' && !(padOnRecipe(after) && needsRecipe(after)) && (currentMilestone(after, now)?.check.dueAt ?? null) === null && after.history?.heat.some((event) => event.kind === 'closing') === true;

function afterConfirmed(kind: MilestoneKind, after: Outlook, setting: Setting): string | null {
  const next = after.stages.find((run) => run.began === null);
  if (next !== undefined && waitingMilestones(after).length > 0) return `Next: lamp **${degrees(next.stage.lamp, setting)}** for ${next.stage.minutes} min, if the repair method agrees.`;
  if (waitingMilestones(after).length === 0) return `${after.heat.lamp === 'on' ? `${capital(after.cure.heater)} off. ` : ''}Data sheet and repair method decide what comes next.`;
  return kind === 'flash-off' ? 'Now the heat: only metal that was read counts.' : null;
}

/** What can bring a passed open limit to light. */
const opensLimit = (kind: CureCommand['kind']): boolean => kind === 'moved' || kind === 'closed' || kind === 'cure' || kind === 'wrong-card';

/** What can bring damp metal to light, or is not to be said without it. */
const laidOn = (kind: CureCommand['kind']): boolean => kind === 'paste' || kind === 'read' || opensLimit(kind);

/** A pad is on where the card has lamp settings, none of which a pad ever runs. */
const padOnRecipe = ({ cure, heat }: Outlook): boolean =>
  heat.lamp === 'on' && heat.heater === 'pad' && cure.card.milestones.some((rule) => rule.laws.some((law) => law.law === 'recipe'));

/** Without the lamp the sheet has no time at all. */
const needsRecipe = ({ cure }: Outlook): boolean => cure.card.milestones.every((rule) => rule.laws.every((law) => law.law === 'recipe'));
