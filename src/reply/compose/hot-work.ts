import { courseOf, type Course } from '../../repair/course.js';
import { isTold, isUnconfirmedAt } from '../../repair/hot-work-told.js';
import { goingOn, type HotWork } from '../../repair/hot-work.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import type { JobCommand } from '../../repair/commands.js';
import type { Outlook } from '../../repair/outlook.js';
import { isStepRefusal } from '../../repair/step-refusal.js';
import { foremanAt, nameOf } from '../../repair/people.js';
import { isThrough, stepsAt } from '../../repair/step-state.js';
import type { Refusal } from '../../repair/refusal.js';
import { FIRE_WATCH, isFireWatch } from '../../repair/watch-card.js';
import type { Answer, Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayHotWork } from '../catalogue/hot-work.js';
import { blocksWords } from './block-words.js';
import { saySteps } from '../catalogue/steps.js';
import { cautionLine } from './cautions.js';
import { fireFirst, goesOnElsewhere, overButton, overStarts, smokeButton, staysSentence, watchSentence, weldAim } from './fire-watch.js';
import type { JobEntered } from './job-entry.js';
import { composeStep } from './procedure.js';
import { composeStepWaits } from './procedure-refusal.js';
import { exampleNote } from './state.js';
import { answer, button, clock, type Setting } from './words.js';

type Of<K extends JobCommand['kind']> = JobEntered<Extract<JobCommand, { readonly kind: K }>>;

/** Hot work is noted, and what has to be said before it; nothing in it is leave to weld. */
export function composeHotWork({ job, outlooks, entry, air }: Of<'weld'>, setting: Setting): Answer {
  const weld = outlooks.flatMap(({ cure }) => cure.hotWork).find((one) => one.entry === entry);
  const watch = watchOf(outlooks);
  if (job === null || weld === undefined || watch === null) return answer('plain', [sayHotWork(setting, 'noted')]);
  const undo = entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)];
  const place = weld.joint === null || weld.joint === FIRST_JOINT ? job.no : `${job.no} ${weld.joint}`;
  if (weld.ban !== null) return stopped(place, weld, weld.ban, watch, setting);
  const told = outlooks.filter((outlook) => isTold(outlook, weld));
  const stays = staysSentence(watch, setting);
  const known = outlooks.some(({ cure }) => !isFireWatch(cure.card));
  const turn = outOfTurn(courseOf(job, outlooks, setting.shop, air), weld, setting);
  return answer(told.length > 0 ? 'alarm' : 'plain', [
    sayHotWork(setting, known || turn !== null ? 'noted-at' : 'noted-alone', { place, at: clock(weld.at, setting) }),
    turn,
    toldSentence(told, weld, setting),
    cautionLine(isBesideUnconfirmed(outlooks, weld) ? 'weld-wet' : 'weld-after', setting),
    overStarts(weldAim(watch, weld), setting),
    stays,
    told.map(({ cure }) => exampleNote(cure.card, setting)).find((note) => note !== null) ?? null,
  ], [overButton(watch, setting, weld), ...(stays === null ? [] : [stayButton(job.no, setting)]), ...undo]);
}

/** Nothing of the procedure that burns is in its turn; null: something is, or nothing is left of it, or there is no procedure. */
function outOfTurn(course: Course | null, { joint, at }: HotWork, setting: Setting): string | null {
  const hot = course === null ? [] : stepsAt(course, at).filter(({ step }) => step.starts.includes('fire-watch'));
  const there = hot.filter(({ step }) => step.joint === joint);
  const meant = there.length > 0 ? there : hot.filter((one) => !isThrough(one));
  const blocked = meant.flatMap(({ step, state }) => (state.is === 'blocked' ? [{ step: step.id, blocks: state.blocks }] : []));
  const [first] = blocked;
  return first === undefined || blocked.length < meant.length ? null : sayHotWork(setting, 'out-of-turn', { step: first.step, blocks: blocksWords(first.blocks, setting) });
}

/** A step that is done; where hot work ended with it, the fire watch first. */
export function composeOver(entered: Of<'done' | 'sign'>, setting: Setting): Answer {
  const { job, outlooks, facts, command } = entered;
  const watch = facts.some(({ fact }) => (fact.type === 'closed' || fact.type === 'moved') && fact.cure.card === FIRE_WATCH) ? watchOf(outlooks) : null;
  if (job === null || watch === null) return composeStep({ ...entered, command }, setting);
  if (!facts.some(({ fact }) => fact.type === 'step-done')) return overWithoutStep(entered, watch, setting);
  const step = composeStep({ ...entered, command }, setting);
  const stays = staysSentence(watch, setting);
  const said = answer('plain', [goesOnElsewhere(watch, setting), watchSentence(watch, setting), stays], stays === null ? [] : [stayButton(job.no, setting)]);
  return { ...step, lines: [...step.lines.slice(0, 1), ...said.lines, ...step.lines.slice(1)], buttons: [...said.buttons, ...step.buttons] };
}

/** The end of hot work that is no step of a procedure, or whose step does not count yet. */
function overWithoutStep({ job, entry, notes, facts }: Of<'done' | 'sign'>, watch: Outlook, setting: Setting): Answer {
  const refused = notes.flatMap((note) => (note.note === 'step-refused' ? stepStays(note.refusal, setting) : []));
  const no = job?.no ?? watch.cure.job;
  const undo = entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)];
  const stays = staysSentence(watch, setting);
  const at = clock(facts[0]?.happenedAt ?? setting.now, setting);
  const said = answer('plain', [sayHotWork(setting, 'over', { job: no, at, watch: goesOnElsewhere(watch, setting) ?? watchSentence(watch, setting) }), cautionLine('fire-watch', setting), stays], [...(goingOn(watch.cure).length === 0 ? [] : [overButton(watch, setting)]), ...(stays === null ? [] : [stayButton(no, setting)]), smokeButton(watch, setting), ...undo]);
  return { ...said, lines: [...said.lines, ...refused.flatMap(({ lines }) => lines)], buttons: [...said.buttons, ...refused.flatMap(({ buttons }) => buttons)] };
}

/** The end is noted, and the step that it would be is not: never said as if nothing had been stored. */
function stepStays(refusal: Refusal, setting: Setting): Answer[] {
  if (refusal.code === 'step-blocked') return [answer('plain', [saySteps(setting, 'does-not-count', { step: refusal.step.id, blocks: blocksWords(refusal.blocks, setting) })])];
  return isStepRefusal(refusal) ? [composeStepWaits(refusal, setting)] : [];
}

const watchOf = (outlooks: readonly Outlook[]): Outlook | null => outlooks.findLast(({ cure }) => isFireWatch(cure.card)) ?? null;

const stayButton = (no: string, setting: Setting): Button => button(sayButtons(setting, 'i-stay'), `stay ${no}`);

/** STOP: nobody's word in this chat lifts it, and nothing of the work counts. */
function stopped(place: string, weld: HotWork, { material, since }: NonNullable<HotWork['ban']>, watch: Outlook, setting: Setting): Answer {
  return answer('alarm', [
    sayHotWork(setting, 'stop', { place, material, since: clock(since, setting) }),
    sayHotWork(setting, 'stop-told', { who: foreman(weld, setting) }),
    sayHotWork(setting, 'smoke-then', { fire: fireFirst(setting) }),
  ], [button(sayHotWork(setting, 'button-not-begun'), `undo ${weld.entry}`), overButton(watch, setting, weld), smokeButton(watch, setting)]);
}

function toldSentence(told: readonly Outlook[], weld: HotWork, setting: Setting): string | null {
  const [first] = told;
  if (first === undefined) return null;
  const dueAt = first.milestones.find(({ kind }) => kind === 'full')?.check.dueAt ?? null;
  const cards = [...new Set(told.map(({ cure }) => cure.card.name))].join(', ');
  const open = dueAt === null ? sayHotWork(setting, 'unconfirmed', { cards }) : sayHotWork(setting, 'unconfirmed-earliest', { cards, at: clock(dueAt, setting) });
  return foremanAt(setting.shop, weld.at) === weld.by ? open : `${open} ${sayHotWork(setting, 'is-told', { who: foreman(weld, setting) })}`;
}

function foreman({ at }: HotWork, setting: Setting): string {
  const who = foremanAt(setting.shop, at);
  return who === 'channel' ? sayHotWork(setting, 'the-channel') : nameOf(setting.shop, who);
}

/** Of the joint that was named, else of the whole car. */
const isBesideUnconfirmed = (outlooks: readonly Outlook[], weld: HotWork): boolean =>
  weld.wet || outlooks.some((outlook) => (weld.joint === null || outlook.cure.ref.joint === weld.joint) && isUnconfirmedAt(outlook, weld));
