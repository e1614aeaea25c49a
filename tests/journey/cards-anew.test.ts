import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { Day } from '../support/day.js';

const CARD = 'card: Z9\ntitle: test epoxy\nversion: one\nbasis: panel-temperature\nhandling: { 15: 200, 20: 100 }\n';

/** The signal is taken between two messages: ask until the answer has changed. */
const soon = { timeout: 10_000, interval: 100 };

it('reads changed cards while it runs; a mistake leaves every card as it was; a running cure keeps its own', async () => {
  const cards = mkdtempSync(join(tmpdir(), 'cureclerk-cards-'));
  const file = join(cards, 'z9.yaml');
  writeFileSync(file, CARD);
  const day = await Day.begin('2026-03-02T09:00', { CURECLERK_CARDS: cards });
  expect((await day.says('tomek', 'cure 501 Z9')).text).toContain('10:40');

  // The first file is right and new, the second is not: neither may be taken.
  writeFileSync(file, CARD.replace('20: 100', '20: 120'));
  writeFileSync(join(cards, 'bad.yaml'), 'card: Y1\ntitle: bad\nversion: one\nbasis: panel-temperature\nhandling: { 15: 100, 20: 200 }\n');
  day.program.signal('SIGUSR2');
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect((await day.says('tomek', 'cure 502 Z9')).text).toContain('10:40');
  expect((await day.says('tomek', 'cure 503 Y1')).text).not.toContain('closed 09:00');

  writeFileSync(join(cards, 'bad.yaml'), 'card: Y1\ntitle: good\nversion: one\nbasis: panel-temperature\nhandling: { 15: 200, 20: 180 }\n');
  day.program.signal('SIGUSR2');
  await vi.waitFor(async () => { expect((await day.says('tomek', 'cure 504 Y1')).text).toContain('12:00'); }, soon);
  expect((await day.says('tomek', 'cure 505 Z9')).text).toContain('11:00');
  expect(await day.milestone('501', 'handling')).toBe('10:40 running');
});
