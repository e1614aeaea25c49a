import { sameCure } from '../../repair/cure-ref.js';
import type { JobCommand } from '../../repair/commands.js';
import { currentMilestone, type Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { watchSentence } from './fire-watch.js';
import type { JobEntered } from './job-entry.js';
import { openSentence } from './open.js';
import { markedExample, milestoneSentence, title } from './state.js';
import { isFireWatch } from '../../repair/watch-card.js';
import { answer, button, capital, clock, type Setting } from './words.js';

const MOST_CURES = 3;

/** What went from one job to another, with the times that it keeps. */
export function composeMoved({ command, facts, entry, outlooks }: JobEntered<Extract<JobCommand, { readonly kind: 'move' }>>, setting: Setting): Answer {
  const here = outlooks.filter(({ cure }) => facts.some(({ job, fact }) => job === cure.job && fact.type === 'moved-here' && sameCure(fact.cure, cure.ref)));
  const more = here.length > MOST_CURES ? [`and ${here.length - MOST_CURES} more: type when ${command.to}.`] : [];
  const lines = [...here.slice(0, MOST_CURES).map((outlook) => movedLine(outlook, command.from, setting)), ...more, `${command.from} keeps only the move in its record.`];
  return markedExample(answer('plain', lines, entry === null ? [] : [button('Undo', `undo ${entry}`)]), here.map(({ cure }) => cure.card), setting);
}

function movedLine(outlook: Outlook, from: string, setting: Setting): string {
  const { cure } = outlook;
  return `**${title(outlook)}** ${cure.card.name} moved here from ${from}, start ${clock(cure.start ?? cure.pasted ?? cure.openedAt, setting)}. ${waitWords(outlook, setting)}`;
}

function waitWords(outlook: Outlook, setting: Setting): string {
  if (isFireWatch(outlook.cure.card)) return watchSentence(outlook, setting);
  if (outlook.cure.closed === null) return openSentence(outlook, setting);
  const current = currentMilestone(outlook, setting.now);
  return current === null ? 'Nothing waits there.' : `${capital(milestoneSentence(outlook, current, setting))}.`;
}
