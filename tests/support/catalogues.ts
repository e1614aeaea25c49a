import { readdirSync } from 'node:fs';
import { z } from 'zod';
import type { Language } from '../../src/repair/shop.js';

const FOLDER = new URL('../../src/reply/catalogue/', import.meta.url);
const phrases = z.record(z.string(), z.string());

/** The phrases as the files hold them: one file for each area of the answers and language. */
export async function catalogueFiles(): Promise<{ readonly areas: readonly string[]; readonly phrasesOf: (area: string, language: Language) => Readonly<Record<string, string>> }> {
  const names = readdirSync(FOLDER).flatMap((file) => /^(.+-(?:en|de|es))\.ts$/.exec(file)?.[1] ?? []);
  const read = new Map<string, Readonly<Record<string, string>>>();
  for (const name of names) {
    const module: unknown = await import(new URL(`${name}.ts`, FOLDER).href);
    read.set(name, phrases.parse(z.record(z.string(), z.unknown()).parse({ ...z.looseObject({}).parse(module) })[constantName(name)]));
  }
  const areas = names.flatMap((name) => (name.endsWith('-en') ? [name.slice(0, -3)] : []));
  return { areas, phrasesOf: (area, language) => read.get(`${area}-${language}`) ?? {} };
}

const constantName = (file: string): string => file.toUpperCase().replaceAll('-', '_');
