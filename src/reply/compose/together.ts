import type { Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { sayLists } from '../catalogue/lists.js';
import type { Reader } from '../catalogue/speaker.js';
import { markedExample } from './state.js';
import { answer, button, line } from './words.js';

/** A list that a phone can show. */
const MOST_MATTERS = 12;

/** One matter among many that one person has to hear, as it would have been said alone. */
interface Said {
  readonly said: Answer;
  readonly outlook: Outlook;
}

/** Many matters for one person, each by the line that says it all; `named`: those that fitted in. */
export function composeTogether<One extends Said>(posts: readonly One[], reader: Reader): { readonly answer: Answer; readonly named: readonly One[] } {
  const named = posts.slice(0, MOST_MATTERS);
  const job = named[0]?.outlook.cure.job ?? '501';
  const head = answer('question', [sayLists(reader, 'together', { count: named.length })], [button(sayLists(reader, 'button-list'), 'who waits')]);
  const lines = [...head.lines, ...named.flatMap(({ said }) => said.lines.slice(0, 1)), line(sayLists(reader, 'answer-with-job', { job }))];
  return { named, answer: markedExample({ ...head, lines }, named.map(({ outlook }) => outlook.cure.card), reader) };
}
