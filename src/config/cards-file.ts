import type { MaterialCard } from '../cure/card.js';
import { cardSchema } from '../cure/card-schema.js';
import type { FileProblem } from './file-problem.js';
import { readYamlFolder } from './yaml-folder.js';

export type CardsRead = { readonly ok: true; readonly cards: readonly MaterialCard[] } | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Reads every `*.yaml` of a folder as a material card: all of them or none. Cards come sorted by name. */
export function readCards(folder: string): CardsRead {
  const read = readYamlFolder(folder, { called: 'material card', nameKey: 'card', schema: cardSchema });
  return read.ok ? { ok: true, cards: read.things } : read;
}
