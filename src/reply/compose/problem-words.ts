import type { Problem, ProblemWithValues } from '../../grammar/reading.js';
import { sayMisread } from '../catalogue/misread.js';
import { languageOf, type Reader } from '../catalogue/speaker.js';
import { figureAsTyped } from './said-words.js';

/** What a line that was not understood would have needed: `a temperature`, `no time: busy takes none`. */
export const problemWords = (problem: Problem, reader: Reader): string => (typeof problem === 'string' ? sayMisread(reader, problem) : withValues(problem, reader));

function withValues(problem: ProblemWithValues, reader: Reader): string {
  switch (problem.is) {
    case 'longest-line':
      return sayMisread(reader, problem.is, { most: `${problem.most}` });
    case 'known-card':
      return sayMisread(reader, problem.is, { cards: problem.cards.join(', ') });
    case 'takes-none':
      return sayMisread(reader, `takes-none-${problem.thing}`, { word: problem.word[languageOf(reader)] });
    case 'no-number-in-front':
      return sayMisread(reader, problem.is, { word: problem.word[languageOf(reader)] });
    case 'only-one':
      return sayMisread(reader, `only-one-${problem.thing}`);
    case 'temperature-or-time':
      return sayMisread(reader, problem.is, { value: figureAsTyped(problem.value, reader), time: problem.time });
    case 'or-time':
      return sayMisread(reader, problem.is, { time: problem.time });
    case 'temperature-range':
    case 'depth-range':
    case 'humidity-range':
      return sayMisread(reader, problem.is, { least: figureAsTyped(problem.least, reader), most: figureAsTyped(problem.most, reader) });
    case 'hours-or-clock':
      return sayMisread(reader, problem.is, { hours: figureAsTyped(problem.hours, reader), clock: problem.clock });
    case 'whole-job':
      return sayMisread(reader, problem.is, { job: problem.job });
  }
}
