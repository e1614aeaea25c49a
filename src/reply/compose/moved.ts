import { sameCure } from '../../repair/cure-ref.js';
import type { JobCommand } from '../../repair/commands.js';
import { currentMilestone, type Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayMoved } from '../catalogue/moved.js';
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
  const more = here.length > MOST_CURES ? [sayMoved(setting, 'more', { count: `${here.length - MOST_CURES}`, job: command.to })] : [];
  const lines = [...here.slice(0, MOST_CURES).map((outlook) => movedLine(outlook, command.from, setting)), ...more, sayMoved(setting, 'keeps-only-move', { job: command.from })];
  return markedExample(answer('plain', lines, entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)]), here.map(({ cure }) => cure.card), setting);
}

function movedLine(outlook: Outlook, from: string, setting: Setting): string {
  const { cure } = outlook;
  const moved = sayMoved(setting, 'moved-here', { title: title(outlook), card: cure.card.name, from, start: clock(cure.start ?? cure.pasted ?? cure.openedAt, setting) });
  return `${moved} ${waitWords(outlook, setting)}`;
}

function waitWords(outlook: Outlook, setting: Setting): string {
  if (isFireWatch(outlook.cure.card)) return watchSentence(outlook, setting);
  if (outlook.cure.closed === null) return openSentence(outlook, setting);
  const current = currentMilestone(outlook, setting.now);
  return current === null ? sayMoved(setting, 'nothing-waits') : `${capital(milestoneSentence(outlook, current, setting))}.`;
}
