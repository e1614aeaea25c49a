import type { Said } from '../../grammar/reading.js';
import { sayMisread } from '../catalogue/misread.js';
import { languageOf, type Reader } from '../catalogue/speaker.js';

/** One part of a line as it is told back: `job 501`, `65 °C`, a word as it was typed. */
export function saidWords(said: Said, reader: Reader): string {
  switch (said.is) {
    case 'typed':
      return said.text;
    case 'command':
      return said.word[languageOf(reader)];
    case 'word':
      return sayMisread(reader, said.word === 'what if' ? 'word-what-if' : `word-${said.word}`);
    case 'job':
      return sayMisread(reader, 'said-job', { job: said.job });
    case 'card':
      return sayMisread(reader, 'said-card', { card: said.card });
    case 'heater':
      return sayMisread(reader, `said-${said.heater}`, { name: said.name });
    case 'degrees':
      return `${figureAsTyped(said.value, reader)}${said.unit === null ? '°' : ` °${said.unit}`}`;
    case 'millimetres':
      return sayMisread(reader, 'said-millimetres', { value: figureAsTyped(said.value, reader) });
    case 'humidity':
      return sayMisread(reader, 'said-humidity', { value: figureAsTyped(said.value, reader) });
    case 'entry':
      return sayMisread(reader, 'said-entry', { entry: `${said.entry}` });
    case 'hours':
      return sayMisread(reader, 'said-hours', { value: figureAsTyped(said.value, reader) });
    case 'ago':
      return said.job === null ? sayMisread(reader, 'said-ago', { length: said.length }) : sayMisread(reader, 'said-job-ago', { job: said.job, length: said.length });
    case 'from':
      return sayMisread(reader, 'said-from', { time: said.time });
    case 'without':
      return sayMisread(reader, 'said-without', { word: said.word });
  }
}

/** With every decimal that was typed, its sign as the reader writes it. */
export const figureAsTyped = (value: number, reader: Reader): string => (languageOf(reader) === 'en' ? `${value}` : `${value}`.replace('.', ','));
