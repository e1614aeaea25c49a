import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** Writes files into a fresh folder that lives as long as the test; returns the folder. */
export function writtenFiles(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'cureclerk-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true });
  });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}
