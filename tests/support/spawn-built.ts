import { spawn, type ChildProcessByStdio } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/**
 * Runs a TypeScript file of tests/support in a process of its own, so that it can be killed.
 * It is checked against src like every test, and runs against the built program.
 */
export function spawnBuilt(name: string, args: readonly string[]): ChildProcessByStdio<null, Readable, null> {
  const here = new URL('.', import.meta.url);
  const { outputText } = ts.transpileModule(readFileSync(new URL(name, here), 'utf8'), {
    compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2023, verbatimModuleSyntax: true },
  });
  const script = outputText.replaceAll("'../../src/", "'../../dist/");
  return spawn(process.execPath, ['--input-type=module', '-e', script, ...args], {
    cwd: fileURLToPath(here),
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}
