import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { z } from 'zod';
import { problemsOf, type FileProblem } from './file-problem.js';
import { readYamlFile, reasonOf } from './yaml-file.js';

/** What the files of a folder hold: one thing each, by the name that people type. */
export interface FolderOf<Thing> {
  /** `material card`, for the person who reads the problems. */
  readonly called: string;
  /** The key under which the name stands. */
  readonly nameKey: string;
  readonly schema: z.ZodType<Thing>;
}

export type FolderRead<Thing> = { readonly ok: true; readonly things: readonly Thing[] } | { readonly ok: false; readonly problems: readonly FileProblem[] };

interface Read<Thing> {
  readonly file: string;
  readonly nameLine: number;
  readonly thing: Thing;
}

/** Reads every `*.yaml` of a folder: all of them or none. Things come sorted by name. */
export function readYamlFolder<Thing extends { readonly name: string }>(folder: string, of: FolderOf<Thing>): FolderRead<Thing> {
  const files = yamlFiles(folder, of.called);
  if (!files.ok) return files;
  const read = files.names.map((name) => readThing(folder, name, of));
  const good = read.flatMap((one) => ('thing' in one ? [one] : []));
  const problems = [...read.flatMap((one) => ('problems' in one ? one.problems : [])), ...doubledNames(good, of)];
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, things: good.map((one) => one.thing).sort((one, other) => (one.name < other.name ? -1 : 1)) };
}

function yamlFiles(folder: string, called: string): { readonly ok: true; readonly names: readonly string[] } | { readonly ok: false; readonly problems: readonly FileProblem[] } {
  const wrong = (problem: string) => ({ ok: false, problems: [{ file: folder, line: null, field: null, problem }] }) as const;
  try {
    const names = readdirSync(folder).filter((name) => /\.ya?ml$/i.test(name)).sort();
    return names.length === 0 ? wrong(`holds no ${called} (*.yaml)`) : { ok: true, names };
  } catch (error) {
    return wrong(`cannot be read as a folder of ${called}s (${reasonOf(error)})`);
  }
}

function readThing<Thing>(folder: string, name: string, { schema, nameKey }: FolderOf<Thing>): Read<Thing> | { readonly problems: readonly FileProblem[] } {
  const yaml = readYamlFile(join(folder, name), name);
  if (!yaml.ok) return { problems: yaml.problems };
  const parsed = schema.safeParse(yaml.value);
  if (!parsed.success) return { problems: problemsOf(name, parsed.error.issues, yaml.lineOf) };
  return { file: name, nameLine: yaml.lineOf([nameKey]), thing: parsed.data };
}

/** People type `p1` for `P1`, so names that differ only in capitals are the same name. */
function doubledNames<Thing extends { readonly name: string }>(read: readonly Read<Thing>[], { called, nameKey }: FolderOf<Thing>): FileProblem[] {
  const short = called.split(' ').at(-1) ?? called;
  const first = new Map<string, string>();
  return read.flatMap(({ file, nameLine, thing }) => {
    const name = thing.name.toLowerCase();
    const taken = first.get(name);
    if (taken === undefined) first.set(name, file);
    return taken === undefined ? [] : [{ file, line: nameLine, field: nameKey, problem: `${thing.name} is the name of the ${short} in ${taken} already` }];
  });
}
