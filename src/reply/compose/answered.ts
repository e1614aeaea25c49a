import type { PersonId } from '../../repair/ids.js';
import { nameOf } from '../../repair/people.js';
import type { Answer } from '../answer.js';
import { sayAnswered } from '../catalogue/answered.js';
import { clock, line, type Setting } from './words.js';

/** `done`: somebody answered it. `overtaken`: an entry has changed what it asked about. `undone`: what an answer told of was taken back. */
export type QuestionEnd = 'done' | 'overtaken' | 'undone';

export interface Ending {
  readonly end: QuestionEnd;
  readonly by: PersonId;
  /** What was said to a check: a joint called soft must not read like one that was confirmed. */
  readonly said: 'hard' | 'soft' | null;
}

/** A question that is asked no more: its words stay, its buttons go. */
export function composeAnswered(question: Answer, { end, by, said }: Ending, setting: Setting): Answer {
  const done = said === null ? 'done' : (`done-${said}` as const);
  const words = sayAnswered(setting, end === 'done' ? done : end, { who: nameOf(setting.shop, by), at: clock(setting.now, setting) });
  return { ...question, lines: [...question.lines, line(words)], buttons: [] };
}
