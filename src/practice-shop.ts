import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ConfigRead, Environment } from './config.js';
import { describeProblem } from './config/file-problem.js';
import { readPracticeConfig } from './config/practice-config.js';
import { readPracticeDay, type DayLine } from './config/practice-day.js';
import { readShop } from './config/shop-file.js';
import { ClerkError } from './errors.js';

/** A shop to practise in: invented cars and people, and a book of its own that is thrown away at the end. */
export interface PracticeShop {
  readonly read: ConfigRead;
  /** What its people will say by themselves. */
  readonly lines: readonly DayLine[];
  forget(): void;
}

const shipped = (name: string): string => fileURLToPath(new URL(`./shop/${name}`, import.meta.url));

/** @throws ClerkError when the shipped example files cannot be read. */
export function openPracticeShop(environment: Environment): PracticeShop {
  const shop = readShop(shipped('example-shop.yaml'));
  if (!shop.ok) throw new ClerkError({ code: 'settings-refused', problems: shop.problems.map(describeProblem) });
  const practice = readPracticeDay(shipped('practice-day.yaml'), shop.shop.zone);
  if (!practice.ok) throw new ClerkError({ code: 'settings-refused', problems: practice.problems.map(describeProblem) });
  const folder = mkdtempSync(join(tmpdir(), 'cureclerk-practice-'));
  return { read: readPracticeConfig(environment, folder, practice.day.begins), lines: practice.day.lines, forget: () => { rmSync(folder, { recursive: true, force: true }); } };
}
