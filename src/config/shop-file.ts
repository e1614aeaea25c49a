import type { Shop } from '../repair/shop.js';
import { problemsOf, type FileProblem } from './file-problem.js';
import { shopSchema } from './shop-schema.js';
import { readYamlFile } from './yaml-file.js';

export type ShopRead = { readonly ok: true; readonly shop: Shop } | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Reads shop.yaml: the whole shop, or every problem with its line and field. */
export function readShop(path: string): ShopRead {
  const yaml = readYamlFile(path, path);
  if (!yaml.ok) return yaml;
  const parsed = shopSchema.safeParse(yaml.value);
  if (!parsed.success) return { ok: false, problems: problemsOf(path, parsed.error.issues, yaml.lineOf) };
  return { ok: true, shop: parsed.data };
}
