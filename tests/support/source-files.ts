import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';

export const ROOT = resolve(import.meta.dirname, '../..');

/** A file of the repository; `path` is from the root, with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

const TEXT = /\.(?:ts|js|mjs|css|html|yaml|sql|sh)$/;

/** Every text file below a folder of the repository, sorted by path. */
export function sourceFiles(folder: string): SourceFile[] {
  const entries = readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true });
  const paths = entries.filter((entry) => entry.isFile() && TEXT.test(entry.name)).map((entry) => join(entry.parentPath, entry.name));
  return paths.sort().map((path) => ({ path: relative(ROOT, path).split(sep).join('/'), text: readFileSync(path, 'utf8') }));
}

export function isTypeScript(file: SourceFile): boolean {
  return file.path.endsWith('.ts');
}
