import { describe, expect, it } from 'vitest';
import { commandHelp } from '../../../src/grammar/command-table.js';
import { helpNow } from '../../../src/repair/help-now.js';
import { lampName } from '../../../src/repair/ids.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const ALL = commandHelp().map(({ kind }) => kind);
const help = (shift: Shift, who: string, at: string) => helpNow(shift.situation(who, on(at), null), ALL, 9);

const shift = new Shift();
shift.enters('tomek', 'Tue 08:00', { kind: 'paste', job: '500', card: 'P1' });
shift.enters('wren', 'Tue 08:01', { kind: 'cure', job: '501', card: 'P2' });
shift.enters('wren', 'Tue 08:10', { kind: 'lamp', job: '501', setting: warm(35), lamp: lampName('A') });

describe('help for the job touched last', () => {
  it.each([
    ['an open panel is to be closed', 'tomek', 'Tue 08:05', '500', ['closed', 'scrap']],
    ['with a lamp on, readings and the lamp come first', 'wren', 'Tue 08:15', '501', ['read', 'lamp', 'off', 'stay']],
    ['a due check comes before all', 'wren', 'Tue 09:31', '501', ['check', 'later']],
  ])('%s', (_name, who, at, job, first) => {
    const now = help(shift, who, at);
    expect(now.job).toBe(job);
    expect(now.kinds.slice(0, first.length)).toEqual(first);
    expect(now.kinds.length).toBeLessThanOrEqual(9);
  });

  it('without a job of their own, the day\'s questions and starts', () => {
    expect(help(shift, 'ines', 'Tue 08:15')).toMatchObject({ job: null, kinds: ['who-waits', 'when', 'cure', 'paste', 'what-if', 'latest-start', 'why', 'lamps', 'air'] });
  });

  it('shows nobody what they may not do', () => {
    for (const who of ['wren', 'tomek', 'ines', 'nobody']) {
      const { kinds, others } = help(shift, who, 'Tue 09:31');
      expect(new Set([...kinds, ...others]).size).toBe(kinds.length + others.length);
      expect([who, [...kinds, ...others].includes('release')]).toEqual([who, who === 'ines']);
      expect([who, [...kinds, ...others].includes('cure')]).toEqual([who, who !== 'nobody']);
    }
  });
});
