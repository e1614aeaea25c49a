import { isTold, isUnconfirmedAt } from '../../repair/hot-work-told.js';
import type { HotWork } from '../../repair/hot-work.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import type { JobCommand } from '../../repair/commands.js';
import type { Outlook } from '../../repair/outlook.js';
import { foremanAt, nameOf } from '../../repair/people.js';
import { FIRE_WATCH, isFireWatch } from '../../repair/watch-card.js';
import type { Answer } from '../answer.js';
import { cautionLine } from './cautions.js';
import { FIRE_FIRST, overButton, smokeButton, staysSentence, watchSentence } from './fire-watch.js';
import type { JobEntered } from './job-entry.js';
import { composeStep } from './procedure.js';
import { composeRefusal } from './refusal.js';
import { exampleNote } from './state.js';
import { answer, button, clock, type Setting } from './words.js';

type Of<K extends JobCommand['kind']> = JobEntered<Extract<JobCommand, { readonly kind: K }>>;

/** Hot work is noted, and what has to be said before it; nothing in it is leave to weld. */
export function composeHotWork({ job, outlooks, entry }: Of<'weld'>, setting: Setting): Answer {
  const weld = outlooks.flatMap(({ cure }) => cure.hotWork).find((one) => one.entry === entry);
  const watch = watchOf(outlooks);
  if (job === null || weld === undefined || watch === null) return answer('plain', ['Hot work noted.']);
  const undo = entry === null ? [] : [button('Undo', `undo ${entry}`)];
  const place = weld.joint === null || weld.joint === FIRST_JOINT ? job.no : `${job.no} ${weld.joint}`;
  if (weld.ban !== null) return stopped(place, weld, watch, setting);
  const told = outlooks.filter((outlook) => isTold(outlook, weld));
  const stays = staysSentence(watch, setting);
  const known = outlooks.some(({ cure }) => !isFireWatch(cure.card));
  return answer(told.length > 0 ? 'alarm' : 'plain', [
    `${place} hot work noted ${clock(weld.at, setting)}.${known ? '' : ' Nothing else is entered about this car.'}`,
    toldSentence(told, weld, setting),
    cautionLine(isBesideUnconfirmed(outlooks, weld) ? 'weld-wet' : 'weld-cured'),
    `Over? \`done ${job.no} weld\` starts the fire watch of ${setting.shop.fireWatch} min.`,
    stays,
    told.map(({ cure }) => exampleNote(cure.card, setting)).find((note) => note !== null) ?? null,
  ], [overButton(watch), ...(stays === null ? [] : [button('I stay', `stay ${job.no}`)]), ...undo]);
}

/** A step that is done; where hot work ended with it, the fire watch first. */
export function composeOver(entered: Of<'done' | 'sign'>, setting: Setting): Answer {
  const { job, outlooks, facts, command } = entered;
  const watch = facts.some(({ fact }) => (fact.type === 'closed' || fact.type === 'moved') && fact.cure.card === FIRE_WATCH) ? watchOf(outlooks) : null;
  if (job === null || watch === null) return composeStep({ ...entered, command }, setting);
  if (!facts.some(({ fact }) => fact.type === 'step-done')) return overWithoutStep(entered, watch, setting);
  const step = composeStep({ ...entered, command }, setting);
  const stays = staysSentence(watch, setting);
  const said = answer('plain', [watchSentence(watch, setting), stays], stays === null ? [] : [button('I stay', `stay ${job.no}`)]);
  return { ...step, lines: [...step.lines.slice(0, 1), ...said.lines, ...step.lines.slice(1)], buttons: [...said.buttons, ...step.buttons] };
}

/** The end of hot work that is no step of a procedure, or whose step does not count yet. */
function overWithoutStep({ job, entry, notes }: Of<'done' | 'sign'>, watch: Outlook, setting: Setting): Answer {
  const refused = notes.flatMap((note) => (note.note === 'step-refused' ? composeRefusal(note.refusal, setting).lines.slice(0, 1) : []));
  const no = job?.no ?? watch.cure.job;
  const undo = entry === null ? [] : [button('Undo', `undo ${entry}`)];
  const stays = staysSentence(watch, setting);
  const said = answer('plain', [`${no} hot work over ${clock(watch.cure.start ?? setting.now, setting)}. ${watchSentence(watch, setting)}`, cautionLine('fire-watch'), stays], [...(stays === null ? [] : [button('I stay', `stay ${no}`)]), smokeButton(watch), ...undo]);
  return { ...said, lines: [...said.lines, ...refused] };
}

const watchOf = (outlooks: readonly Outlook[]): Outlook | null => outlooks.findLast(({ cure }) => isFireWatch(cure.card)) ?? null;

/** STOP: nobody's word in this chat lifts it, and nothing of the work counts. */
function stopped(place: string, weld: HotWork, watch: Outlook, setting: Setting): Answer {
  const since = weld.ban === null ? '' : `${weld.ban.material} is in this car since ${clock(weld.ban.since, setting)}: it burns in the cavity.`;
  return answer('alarm', [
    `**${place} STOP: no heat, no flame.** ${since}`,
    `Nothing of it counts. ${foreman(weld, setting)} is told at once. Put the torch away; the repair method and the foreman decide.`,
    `Smoke? ${FIRE_FIRST}`,
  ], [button('Not begun', `undo ${weld.entry}`), overButton(watch), smokeButton(watch)]);
}

function toldSentence(told: readonly Outlook[], weld: HotWork, setting: Setting): string | null {
  const [first] = told;
  if (first === undefined) return null;
  const dueAt = first.milestones.find(({ kind }) => kind === 'full')?.check.dueAt ?? null;
  const names = [...new Set(told.map(({ cure }) => cure.card.name))].join(', ');
  const who = foremanAt(setting.shop, weld.at) === weld.by ? '' : ` ${foreman(weld, setting)} is told.`;
  return `**${names}: full strength is not confirmed**${dueAt === null ? '' : ` (earliest ${clock(dueAt, setting)})`}.${who}`;
}

function foreman({ at }: HotWork, { shop }: Setting): string {
  const who = foremanAt(shop, at);
  return who === 'channel' ? 'The channel' : nameOf(shop, who);
}

/** Of the joint that was named, else of the whole car. */
const isBesideUnconfirmed = (outlooks: readonly Outlook[], weld: HotWork): boolean =>
  weld.wet || outlooks.some((outlook) => (weld.joint === null || outlook.cure.ref.joint === weld.joint) && isUnconfirmedAt(outlook, weld));
