import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { MaterialCard } from '../cure/card.js';
import { cardSchema } from '../cure/card-schema.js';
import { problemsOf, type FileProblem } from './file-problem.js';
import { readYamlFile, reasonOf } from './yaml-file.js';

export type CardsRead = { readonly ok: true; readonly cards: readonly MaterialCard[] } | { readonly ok: false; readonly problems: readonly FileProblem[] };

type CardRead = { readonly file: string; readonly nameLine: number; readonly card: MaterialCard } | { readonly problems: readonly FileProblem[] };

/** Reads every `*.yaml` of a folder as a material card: all of them or none. Cards come sorted by name. */
export function readCards(folder: string): CardsRead {
  const files = yamlFiles(folder);
  if (!files.ok) return files;
  const read = files.names.map((name) => readCard(folder, name));
  const cards = read.flatMap((one) => ('card' in one ? [one] : []));
  const problems = [...read.flatMap((one) => ('problems' in one ? one.problems : [])), ...doubledNames(cards)];
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, cards: cards.map((one) => one.card).sort((one, other) => (one.name < other.name ? -1 : 1)) };
}

function yamlFiles(folder: string): { readonly ok: true; readonly names: readonly string[] } | { readonly ok: false; readonly problems: readonly FileProblem[] } {
  const wrong = (problem: string) => ({ ok: false, problems: [{ file: folder, line: null, field: null, problem }] }) as const;
  try {
    const names = readdirSync(folder).filter((name) => /\.ya?ml$/i.test(name)).sort();
    return names.length === 0 ? wrong('holds no material card (*.yaml)') : { ok: true, names };
  } catch (error) {
    return wrong(`cannot be read as a folder of material cards (${reasonOf(error)})`);
  }
}

function readCard(folder: string, name: string): CardRead {
  const yaml = readYamlFile(join(folder, name), name);
  if (!yaml.ok) return { problems: yaml.problems };
  const parsed = cardSchema.safeParse(yaml.value);
  if (!parsed.success) return { problems: problemsOf(name, parsed.error.issues, yaml.lineOf) };
  return { file: name, nameLine: yaml.lineOf(['card']), card: parsed.data };
}

/** People type `p1` for `P1`, so names that differ only in capitals are the same name. */
function doubledNames(cards: readonly Exclude<CardRead, { readonly problems: unknown }>[]): FileProblem[] {
  const first = new Map<string, string>();
  return cards.flatMap(({ file, nameLine, card }) => {
    const name = card.name.toLowerCase();
    const taken = first.get(name);
    if (taken === undefined) first.set(name, file);
    return taken === undefined ? [] : [{ file, line: nameLine, field: 'card', problem: `${card.name} is the name of the card in ${taken} already` }];
  });
}
