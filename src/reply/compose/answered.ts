import type { PersonId } from '../../repair/ids.js';
import { nameOf } from '../../repair/people.js';
import type { Answer } from '../answer.js';
import { clock, line, type Setting } from './words.js';

/** `done`: somebody answered it. `overtaken`: an entry has changed what it asked about. */
export type QuestionEnd = 'done' | 'overtaken';

export interface Ending {
  readonly end: QuestionEnd;
  readonly by: PersonId;
  /** What was said to a check: a joint called soft must not read like one that was confirmed. */
  readonly said: 'hard' | 'soft' | null;
}

/** A question that is asked no more: its words stay, its buttons go. */
export function composeAnswered(question: Answer, { end, by, said }: Ending, setting: Setting): Answer {
  const who = `${nameOf(setting.shop, by)} ${clock(setting.now, setting)}`;
  const words = end === 'done' ? `**done by ${who}**${said === null ? '' : ` (${said})`}` : `**no longer so**, changed by ${who}`;
  return { ...question, lines: [...question.lines, line(words)], buttons: [] };
}
