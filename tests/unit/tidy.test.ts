import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { isTypeScript, ROOT, sourceFiles, type SourceFile } from '../support/source-files.js';

const LONGEST_FILE = 300;
const LONGEST_MEDIAN = 120;
const TOP_LEVEL = ['DEVELOPERS.md', 'LICENSE', 'README.md', 'deploy', 'package-lock.json', 'package.json', 'src', 'tests', 'tsconfig.json'];
const VAGUE_NAME = /(?:^|[/-])(?:utils?|helpers?|types|misc|common)(?:\.|\/|$)/;
/** What no sentence to a person may say: the clock knows minutes, not metal. */
const PROMISES = [/\bsafe to\b/i, /\bok to drive\b/i, /\bguaranteed?\b/i, /(?:^|[^-\w])cured\b/i];
/** Spelled apart, so that this file does not find itself. */
const LEFTOVERS = [['TO', 'DO'], ['FIX', 'ME'], ['eslint-', 'disable'], ['@ts-', 'ignore'], ['@ts-', 'expect-error'], ['@ts-', 'nocheck']].map((parts) => parts.join(''));
const SKIPPED_TEST = /\b(?:it|test|describe)\.(?:skip|only|todo|fails)\b/;

const lines = (file: SourceFile): number => file.text.split('\n').length - (file.text.endsWith('\n') ? 1 : 0);

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

const hasDefaultExport = (file: SourceFile): boolean => /^export default\b|^export \{[^}]*\bas default\b/m.test(file.text);

/** Every text that a file can say, without comments and without the code inside templates. */
function textsOf(file: SourceFile): string[] {
  const texts: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node)) texts.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file.path, file.text, ts.ScriptTarget.ES2023, true));
  return texts;
}

const promises = (file: SourceFile): string[] => textsOf(file).filter((text) => PROMISES.some((promise) => promise.test(text)));

function ignoredByGit(): string[] {
  const rules = readFileSync(join(ROOT, '.gitignore'), 'utf8').split('\n');
  return rules.filter((rule) => rule.endsWith('/') && !rule.startsWith('!')).map((rule) => rule.slice(0, -1));
}

const files = [...sourceFiles('src'), ...sourceFiles('tests')];

describe('the house is tidy', () => {
  it('has at the top only what is named for it', () => {
    const ignored = ignoredByGit();
    const shown = readdirSync(ROOT).filter((name) => !name.startsWith('.') && !ignored.includes(name));
    expect(shown.filter((name) => !TOP_LEVEL.includes(name))).toEqual([]);
  });

  it(`has no file above ${LONGEST_FILE} lines`, () => {
    expect(files.filter((file) => lines(file) > LONGEST_FILE).map((file) => `${file.path}: ${lines(file)}`)).toEqual([]);
  });

  it(`has a median file of at most ${LONGEST_MEDIAN} lines`, () => {
    const source = files.filter((file) => file.path.startsWith('src/') && isTypeScript(file));
    expect(source.length).toBeGreaterThan(20);
    expect(median(source.map(lines))).toBeLessThanOrEqual(LONGEST_MEDIAN);
  });

  it('has no default export besides the configuration of a tool', () => {
    expect(files.filter((file) => hasDefaultExport(file) && !file.path.endsWith('.config.ts')).map((file) => file.path)).toEqual([]);
  });

  it('names no file or folder after nothing in particular', () => {
    expect(files.map((file) => file.path).filter((path) => VAGUE_NAME.test(path))).toEqual([]);
  });

  it('has no leftovers, silenced checks or skipped tests', () => {
    const left = (file: SourceFile) => LEFTOVERS.some((word) => file.text.includes(word)) || (file.path.endsWith('.test.ts') && SKIPPED_TEST.test(file.text));
    expect(files.filter(left).map((file) => file.path)).toEqual([]);
  });

  it('promises nobody anything in its answers', () => {
    const answers = files.filter((file) => file.path.startsWith('src/reply/') && isTypeScript(file));
    expect(answers.length).toBeGreaterThan(0);
    expect(answers.flatMap((file) => promises(file).map((text) => `${file.path}: ${text}`))).toEqual([]);
  });
});

describe('the checks of tidiness', () => {
  const file = (text: string): SourceFile => ({ path: 'src/reply/a.ts', text });

  it('count lines and find the middle', () => {
    expect(lines(file('a\nb\n'))).toBe(2);
    expect(lines(file('a\nb'))).toBe(2);
    expect(median([300, 1, 2])).toBe(2);
  });

  it.each(['export default 1;', 'const a = 1;\nexport { a as default };'])('find a default export in %j', (text) => {
    expect(hasDefaultExport(file(text))).toBe(true);
  });

  it.each(["say('It is safe to grind.');", 'say(`${job} Cured at ${time}.`);', 'say(`${job} is guaranteed`);', "say('OK to drive')"])('find a promise in %j', (text) => {
    expect(promises(file(text))).toHaveLength(1);
  });

  it.each(["// cured, safe to drive\nsay('procured, obscured');", "say(cured);", "say('not safe: too hot')"])('find none in %j', (text) => {
    expect(promises(file(text))).toEqual([]);
  });

  it.each(['src/utils/a.ts', 'src/cure/helpers.ts', 'src/cure/card-types.ts'])('find the empty name in %s', (path) => {
    expect(VAGUE_NAME.test(path)).toBe(true);
  });

  it.each(['src/cure/prototypes.ts', 'src/cure/units.ts'])('leave %s alone', (path) => {
    expect(VAGUE_NAME.test(path)).toBe(false);
  });
});
