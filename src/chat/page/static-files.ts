import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const KINDS: ReadonlyMap<string, string> = new Map([
  ['.html', 'text/html; charset=utf-8'],
  ['.css', 'text/css; charset=utf-8'],
  ['.js', 'text/javascript; charset=utf-8'],
  ['.svg', 'image/svg+xml'],
]);

export interface StaticFile {
  /** Path in the address, `/` for the page itself. */
  readonly path: string;
  readonly kind: string;
  readonly body: string;
  readonly etag: string;
}

export const BUILT_PAGE = fileURLToPath(new URL('./static/', import.meta.url));

/** The few files of the page, read once at start: what is not among them cannot be asked for. */
export function staticFiles(folder: string): StaticFile[] {
  return readdirSync(folder).flatMap((name) => {
    const kind = KINDS.get(extname(name));
    if (kind === undefined) return [];
    const body = readFileSync(join(folder, name), 'utf8');
    return [{ path: name === 'index.html' ? '/' : `/${name}`, kind, body, etag: `"${createHash('sha256').update(body).digest('base64url')}"` }];
  });
}
