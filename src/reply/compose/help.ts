import type { CommandKind } from '../../repair/commands.js';
import type { HelpNow } from '../../repair/help-now.js';
import type { ShownWord } from '../../grammar/reading.js';
import type { Answer } from '../answer.js';
import { sayHelp } from '../catalogue/help.js';
import { languageOf, type Reader } from '../catalogue/speaker.js';
import { safetyTail } from './questions.js';
import { answer } from './words.js';

/** One command as help shows it: a line to copy, and its word in every language. */
export interface HelpLine {
  readonly kind: CommandKind;
  readonly example: string;
  readonly shown: ShownWord;
}

/** So many lines of commands, one for the others and the safety tail: with the head that names the job, twelve fit a phone screen. */
export const MOST_COMMANDS = 9;

/** What this person can say now, the job they touched last first. */
export function composeHelp(commands: readonly HelpLine[], { job, kinds, others }: HelpNow, reader: Reader): Answer {
  const of = (kind: CommandKind): HelpLine[] => commands.filter((one) => one.kind === kind);
  const lines = kinds.flatMap(of).map(({ kind, example }) => sayHelp(reader, 'line', { example, meaning: sayHelp(reader, kind) }));
  const words = others.flatMap(of).map((one) => wordOf(one, reader));
  return answer('plain', [job === null ? null : sayHelp(reader, 'now', { job }), ...lines, sayHelp(reader, 'others', { words: words.join(', ') }), safetyTail(reader)]);
}

/** In English the kinds are words of their own. */
const wordOf = ({ kind, shown }: HelpLine, reader: Reader): string => {
  const language = languageOf(reader);
  return language === 'en' ? kind : shown[language];
};
