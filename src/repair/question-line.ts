import type { QuestionCommand, Subject, TypedTemperature } from './commands.js';
import type { Instant } from '../cure/units.js';

type AimedQuestion = Extract<QuestionCommand, Subject>;

/** The line that asks exactly this, for a button; moments go out as instants. */
export function questionLine(question: AimedQuestion): string {
  return wordsOf(question).filter((word) => word !== '').join(' ');
}

function wordsOf(question: AimedQuestion): string[] {
  const subject = [question.job ?? '', question.joint ?? ''];
  switch (question.kind) {
    case 'may':
      return [`can i ${question.deed}`, ...subject];
    case 'when':
    case 'why':
    case 'next':
      return [question.kind, ...subject];
    case 'what-if':
      return ['what if', ...subject, ...degrees(question.heater, question.setting), question.unheated ? 'no lamp' : '', ...degrees('air', question.air), ...moment('from', question.from)];
    case 'latest-start':
      return ['latest start', ...subject, question.card ?? '', question.milestone ?? '', question.depth === null ? '' : `${question.depth} mm`, ...moment('by', question.readyBy)];
  }
}

const degrees = (of: string, typed: TypedTemperature | null): string[] => (typed === null ? [] : [of, `${typed.value}${typed.unit ?? ''}`]);

const moment = (word: string, at: Instant | null): string[] => (at === null ? [] : [word, new Date(at).toISOString()]);
