import type { CartridgeLabel } from '../repair/commands.js';
import { labelOf, takeLabel } from './cartridge-label.js';
import { cure } from './commands/cure.js';
import { paste } from './commands/paste.js';
import type { KnownNames } from './known-names.js';
import { wordsOfAll } from './language.js';
import type { Chunk } from './reader.js';
import type { Parsed } from './trouble.js';

/** `paste 7203 P1 batch 55-B exp 03/27`: what stands on the cartridge, and the line without it. */
export interface LabelledLine {
  readonly label: CartridgeLabel;
  readonly rest: string;
}

/** Words with which somebody says that a bead is laid. */
const LAYING: readonly (readonly string[])[] = [paste, cure].flatMap(({ forms }) => Object.values(forms).flatMap(wordsOfAll)).map((text) => text.split(' '));

/** Null for every other line. */
export function labelledLine(chunks: readonly Chunk[], { cards, lamps, pads }: KnownNames): LabelledLine | null {
  const isLaying = chunks.some((_, at) => LAYING.some((words) => words.every((word, index) => chunks[at + index]?.text === word)));
  const { figures, rest } = takeLabel(isLaying ? chunks : [], (text) => cards.has(text) || lamps.has(text) || pads.has(text));
  const label = labelOf(figures);
  return label === null ? null : { label, rest: rest.map(({ typed }) => typed).join(' ') };
}

/** The line without its label, read, and the label put back: to the command, or to every line that is offered instead. Null: no such command. */
export function withLabel(parsed: Parsed, label: CartridgeLabel): Parsed | null {
  if (parsed.ok) return parsed.command.kind === 'paste' || parsed.command.kind === 'cure' ? { ok: true, command: { ...parsed.command, label } } : null;
  const { trouble } = parsed;
  const words = [label.batch === null ? [] : ['batch', label.batch], label.expiry === null ? [] : ['exp', label.expiry], label.opened === null ? [] : ['opened', label.opened]].flat().join(' ');
  return { ok: false, trouble: { ...trouble, repairs: () => trouble.repairs().map((one) => ({ ...one, line: `${one.line} ${words}` })) } };
}
