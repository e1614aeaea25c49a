import type { Misread } from '../../grammar/reading.js';
import type { Answer } from '../answer.js';
import { sayMisread } from '../catalogue/misread.js';
import type { Reader } from '../catalogue/speaker.js';
import { problemWords } from './problem-words.js';
import { saidWords } from './said-words.js';
import { shortened } from './shortened.js';
import { answer, button } from './words.js';

/** A line that was not understood: what was, what was not, the nearest valid form. Nothing was stored. */
export function composeMisread(misread: Misread, typed: string, reader: Reader): Answer {
  const parts = partsWords(misread, reader);
  const problem = problemWords(misread.problem, reader);
  const sentences = [
    ...(parts === '' ? [] : [sayMisread(reader, 'understood', { parts })]),
    misread.unclear === null ? sayMisread(reader, 'needs', { problem }) : sayMisread(reader, 'not-understood', { typed: shortened(misread.unclear), problem }),
    sayMisread(reader, isOwn(misread.nearest, typed) ? 'try' : 'example', { line: misread.nearest }),
    sayMisread(reader, 'nothing-stored'),
  ];
  return answer('refusal', [sentences.join(' ')], misread.choices.map(({ label, line }) => button(label.map((one) => saidWords(one, reader)).join(' '), line)));
}

/** `lamp, job 501, 65 °C`; empty where nothing was understood. */
export function partsWords({ understood }: Misread, reader: Reader): string {
  const parts = understood.map((one) => saidWords(one, reader)).filter((words) => words !== '');
  return [...new Set(parts)].join(', ');
}

/** A form that holds figures nobody typed is only an example; it must not be taken for what was meant. */
function isOwn(nearest: string, typed: string): boolean {
  const figures: readonly string[] = nearest.match(/\d+/g) ?? [];
  const own: readonly string[] = typed.match(/\d+/g) ?? [];
  return figures.every((figure) => own.includes(figure));
}
