import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CHECKS, GROUPS } from '../support/reference-checks.js';
import { ROOT } from '../support/source-files.js';

const groups = Object.entries(GROUPS);

describe('the known answers of references.json', () => {
  it('have each their own id', () => {
    expect(CHECKS).toHaveLength(329);
    expect(new Set(CHECKS.map((check) => check.id)).size).toBe(CHECKS.length);
  });

  it('belong to exactly one group each', () => {
    const claims = CHECKS.map(({ id }) => ({ id, by: groups.filter(([, ids]) => ids.test(id)).map(([group]) => group) }));
    expect(claims.filter(({ by }) => by.length !== 1)).toEqual([]);
  });

  it.each(groups)('%s has ids, and a file of its own that runs them all', (group, ids) => {
    expect(CHECKS.filter((check) => ids.test(check.id)).length).toBeGreaterThan(0);
    expect(readFileSync(join(ROOT, 'tests/reference', `${group}.test.ts`), 'utf8')).toContain(`\neveryCheck('${group}', [`);
  });
});
