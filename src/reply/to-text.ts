import type { Answer, Line } from './answer.js';

/** The complete plain text of an answer: one line per line, strong words plain. Buttons only save typing and are left out. */
export const toText = (answer: Answer): string => answer.lines.map(lineText).join('\n');

const lineText = (line: Line): string => line.map((span) => span.text).join('');
