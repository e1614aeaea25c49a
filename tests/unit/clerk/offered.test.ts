import { describe, expect, it } from 'vitest';
import { DeskDay } from '../../support/desk-day.js';

const desk = (): DeskDay => {
  const day = new DeskDay({ shifts: [] });
  day.says('tomek', '08:00', 'cure 501 P2');
  day.says('tomek', '08:01', 'cure 502 P1');
  return day;
};

describe('what is offered instead of a figure that nothing has', () => {
  it('is a lost decimal point, and °F only where the card allows it', () => {
    expect(desk().told('tomek', '08:10', 'read 501 305')).toMatch(/Nothing stored\.\n\[30\.5°\] read 501 30\.5$/);
    expect(desk().told('tomek', '08:10', 'cure 503 P2 lamp 350')).toMatch(/\n\[35°\] cure 503 P2 lamp 35$/);
    expect(desk().told('tomek', '08:10', 'read 501 990')).not.toContain('[');
  });
});

describe('a suggestion', () => {
  it('keeps the card and the lamp that were understood', () => {
    expect(desk().told('tomek', '08:10', 'cure 503 P2 lamp A 35 xuer 20 min')).toContain('`cure 503 P2 lamp A 35`');
    expect(desk().told('tomek', '08:10', 'cure 790 P1 lamp 30,000')).toContain('`cure 790 P1 lamp 35`');
  });

  it('chooses no card for one that is not known', () => {
    const told = desk().told('tomek', '08:10', 'cure 503 q9 lamp 35');
    expect(told).toMatch(/a known card: .*P1.*P2/);
    expect(told).toContain('Try: `cure 503 lamp 35`.');
  });
});

describe('everyday questions', () => {
  it.each(['is 501 safe', 'can i drive 501', 'when is 501 ready', '501 ready?', 'ist 501 fertig?', 'wann ist 501 fertig', 'está listo 501?'])('%s: is answered as when', (line) => {
    const told = desk().told('tomek', '08:10', line);
    expect(told).toBe(desk().told('tomek', '08:10', 'when 501'));
    expect(told).not.toMatch(/safe|ready/);
  });

  it('a role with a slip in it is the role', () => {
    expect(desk().told('ines', '08:10', 'adopt sam technichian')).toBe(desk().told('ines', '08:10', 'adopt sam technician'));
  });
});
