import { describe, expect, it } from 'vitest';
import { commandHelp, COMMANDS } from '../../../../src/grammar/command-table.js';
import { jobNo } from '../../../../src/repair/ids.js';
import { LANGUAGES } from '../../../../src/repair/shop.js';
import { sayHelp } from '../../../../src/reply/catalogue/help.js';
import type { HelpNow } from '../../../../src/repair/help-now.js';
import { composeHelp, MOST_COMMANDS } from '../../../../src/reply/compose/help.js';
import { toText } from '../../../../src/reply/to-text.js';

const ALL = commandHelp().map(({ kind }) => kind);
const FIRST = ['lamp', 'read', 'off', 'check', 'who-waits', 'paste', 'closed', 'cure', 'undo'] as const;
const NOW: HelpNow = { job: jobNo('501'), kinds: FIRST.slice(0, MOST_COMMANDS), others: ALL.filter((kind) => !FIRST.some((one) => one === kind)) };

describe('help', () => {
  it.each(LANGUAGES)('fits twelve lines in %s', (language) => {
    expect(toText(composeHelp(commandHelp(), NOW, { language })).split('\n')).toHaveLength(12);
  });

  it.each([
    ['en', 'lamp 501 65: lamp on, turned', 'Also: moved, on, air, depth, build-up, wrong-card, later,', 'Times: 20 min ago, at 13:40.'],
    ['de', 'lamp 501 65: Strahler an, verstellt', 'Außerdem: verschoben, an, luft, tiefe, blech, karte, später,', 'Zeiten: vor 20 min, um 13:40.'],
    ['es', 'lamp 501 65: lámpara encendida, cambiada', 'También: movido, encendida, aire, profundidad, chapa, ficha, luego,', 'Horas: hace 20 min, a las 13:40.'],
  ] as const)('says what each line is for, and the other words, in %s', (language, line, others, times) => {
    const lines = toText(composeHelp(commandHelp(), NOW, { language })).split('\n');
    expect(lines).toContain(line);
    expect(lines.at(-2)?.startsWith(others)).toBe(true);
    expect(lines.at(-2)?.endsWith(times)).toBe(true);
  });

  it('has a word on every command there is', () => {
    for (const { kind } of Object.values(COMMANDS)) for (const language of LANGUAGES) expect(sayHelp({ language }, kind)).not.toBe('');
  });
});
