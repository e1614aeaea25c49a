import { readFileSync } from 'node:fs';
import { isMap, isNode, isPair, isSeq, LineCounter, parseDocument, type Document, type Node, type Pair, type YAMLError } from 'yaml';
import type { FieldPath, FileProblem } from './file-problem.js';

export type YamlFile =
  | { readonly ok: true; readonly value: unknown; readonly lineOf: (path: FieldPath) => number }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/**
 * Reads one YAML file (version 1.2) into plain values and keeps the lines they stand on. Mistakes of writing, doubled
 * keys and warnings are problems; `name` is how the file is called in them.
 */
export function readYamlFile(path: string, name: string): YamlFile {
  const text = textOf(path);
  if (!text.ok) return { ok: false, problems: [{ file: name, line: null, field: null, problem: text.problem }] };
  const lines = new LineCounter();
  const document = parseDocument(text.text, { lineCounter: lines, prettyErrors: false, uniqueKeys: sameKey });
  const mistakes = [...document.errors, ...document.warnings];
  if (mistakes.length > 0) return { ok: false, problems: mistakes.map((mistake) => ({ file: name, line: lines.linePos(mistake.pos[0]).line, field: null, problem: wordsOf(mistake) })) };
  return plainValue(name, document, (path) => lineAt(document.contents, path, lines));
}

function textOf(path: string): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly problem: string } {
  try {
    return { ok: true, text: readFileSync(path, 'utf8') };
  } catch (error) {
    return { ok: false, problem: `cannot be read (${reasonOf(error)})` };
  }
}

/** The two mistakes people make most, in words of the house; the library's words for the rest. */
function wordsOf(mistake: YAMLError): string {
  if (mistake.code === 'DUPLICATE_KEY') return 'has a key that stands here already: each key stands once';
  if (mistake.code === 'MULTIPLE_DOCS') return 'begins a second document (---): one file holds one';
  return mistake.message;
}

function plainValue(name: string, document: Document, lineOf: (path: FieldPath) => number): YamlFile {
  try {
    const value: unknown = document.toJS();
    return { ok: true, value, lineOf };
  } catch (error) {
    return { ok: false, problems: [{ file: name, line: null, field: null, problem: `cannot be unfolded (${reasonOf(error)})` }] };
  }
}

/** `15` and `"15"` would become one key and one of the two would be lost. */
function sameKey(one: unknown, other: unknown): boolean {
  return keyText(one) === keyText(other);
}

function keyText(key: unknown): string {
  return isNode(key) ? String(key.toJSON()) : String(key);
}

/** The line of the last part of `path` that stands in the file. */
function lineAt(root: Node | null, path: FieldPath, lines: LineCounter): number {
  let node: unknown = root;
  let line = 1;
  for (const part of path) {
    const found = isMap(node) ? node.items.find((pair) => keyText(pair.key) === String(part)) : isSeq(node) ? node.items[Number(part)] : undefined;
    if (found === undefined) break;
    line = lineOf(found, lines) ?? line;
    node = isPair(found) ? found.value : found;
  }
  return line;
}

function lineOf(item: unknown, lines: LineCounter): number | null {
  const node: unknown = isPair(item) ? keyOf(item) : item;
  return isNode(node) && node.range ? lines.linePos(node.range[0]).line : null;
}

const keyOf = (pair: Pair): unknown => pair.key;

/** The system's word for why a file did not open. */
export function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return 'code' in error && error.code === 'ENOENT' ? 'there is no such file or folder' : error.message;
}
