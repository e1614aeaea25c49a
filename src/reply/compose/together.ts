import type { Job } from '../../repair/job.js';
import type { Outlook } from '../../repair/outlook.js';
import type { Answer, Line } from '../answer.js';
import { sayLists } from '../catalogue/lists.js';
import { heldShort, overriddenShort } from './standing.js';
import { markedExample } from './state.js';
import { answer, button, capital, line, text, type Setting } from './words.js';

/** A list that a phone can show. */
const MOST_MATTERS = 12;

/** One matter among many that one person has to hear, as it would have been said alone. */
interface Said {
  readonly said: Answer;
  readonly outlook: Outlook;
  readonly job: Job | null;
}

/** Many matters for one person, each by the line that says it all; `named`: those that fitted in. */
export function composeTogether<One extends Said>(posts: readonly One[], setting: Setting): { readonly answer: Answer; readonly named: readonly One[] } {
  const named = posts.slice(0, MOST_MATTERS);
  const job = named[0]?.outlook.cure.job ?? '501';
  const head = answer('question', [sayLists(setting, 'together', { count: named.length })], [button(sayLists(setting, 'button-list'), 'who waits')]);
  const lines = [...head.lines, ...named.flatMap((one) => matterLine(one, setting)), line(sayLists(setting, 'answer-with-job', { job }))];
  return { named, answer: markedExample({ ...head, lines }, named.map(({ outlook }) => outlook.cure.card), setting) };
}

/** What it asks, and behind it that its job stands still or what the foreman let go on there. */
function matterLine({ said, outlook, job }: Said, setting: Setting): Line[] {
  const [first] = said.lines;
  if (first === undefined) return [];
  const whole = job === null ? [] : [heldShort(job, setting), overriddenShort(job, setting, outlook.cure.ref)].flatMap((words) => words ?? []);
  return [[...first, ...whole.flatMap((words) => [text(' '), ...line(`${capital(words)}.`)])]];
}
