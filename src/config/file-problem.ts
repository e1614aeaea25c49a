import type { z } from 'zod';
import { nearest } from './nearest.js';

/** What is wrong with a settings file, and where. `line` counts from 1; null: the file as a whole. */
export interface FileProblem {
  readonly file: string;
  readonly line: number | null;
  /** Keys joined by dots, members of a list by their number from 1, as `handling.20` or `recipe no. 2.lamp`; null: no single field. */
  readonly field: string | null;
  readonly problem: string;
}

export type FieldPath = readonly PropertyKey[];

/** One line for the person who wrote the file. */
export function describeProblem({ file, line, field, problem }: FileProblem): string {
  const place = line === null ? file : `${file} line ${line}`;
  return field === null ? `${place}: ${problem}` : `${place}, ${field}: ${problem}`;
}

/** The issues of a schema as problems of the file that was read, in the order of its lines. */
export function problemsOf(file: string, issues: readonly z.core.$ZodIssue[], lineOf: (path: FieldPath) => number): FileProblem[] {
  const problems = issues.map((issue) => ({ file, line: lineOf(issue.path), field: fieldOf(issue.path), problem: wordsOf(issue) }));
  return problems.sort((one, other) => one.line - other.line);
}

function fieldOf(path: FieldPath): string | null {
  const parts = path.map((part) => (typeof part === 'number' ? ` no. ${part + 1}` : `.${String(part)}`));
  return parts.length === 0 ? null : parts.join('').replace(/^\./, '').trim();
}

function wordsOf(issue: z.core.$ZodIssue): string {
  const params = issue.code === 'custom' ? issue.params : undefined;
  const known: unknown = params?.['known'];
  if (!Array.isArray(known)) return issue.message;
  const words = known.map(String);
  // A mistyped key is the end of the path; a mistyped value comes along.
  const meant = nearest(String(params?.['typed'] ?? issue.path.at(-1)), words);
  return `${issue.message}; ${meant === null ? `known are ${words.join(', ')}` : `did you mean ${meant}?`}`;
}
