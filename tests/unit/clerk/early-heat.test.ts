import { describe, expect, it } from 'vitest';
import { DeskDay } from '../../support/desk-day.js';

describe('the next lamp stage before the check of the one before', () => {
  it('is asked about before anything is stored, typed or as the next stage', () => {
    const day = new DeskDay({ shifts: [] });
    day.says('tomek', '08:00', 'cure 501 K lamp 30');
    const told = day.told('tomek', '08:20', 'lamp 501 65');
    expect(told).toMatch(/^501 NOT yet: handling strength is not checked \(earliest .*\)\. Full heat on fresh paste bows the panel\./);
    expect(told).toMatch(/\n\[Lamp is at 65\] lamp 501 j1 65 at .* yes\n\[Stays at 30\] on 501 j1$/);
    expect(day.told('tomek', '08:20', 'up 501')).toMatch(/\n\[Lamp is at \d+\] lamp 501 j1 \d+C at .* yes\n\[Stays at 30\] on 501 j1$/);
    expect(day.told('ines', '08:21', 'lamps')).toContain('30 °C');
    const [hot, stays] = day.says('tomek', '08:22', 'lamp 501 65').buttons;
    expect(day.told('tomek', '08:22', stays?.line ?? '')).toMatch(/^501/);
    expect(day.told('ines', '08:23', 'lamps')).toContain('30 °C');
    expect(day.told('tomek', '08:23', hot?.line ?? '')).toContain('not checked: full heat on a soft joint');
    expect(day.told('ines', '08:24', 'lamps')).toContain('65 °C');
  });

  it('as a step of a procedure says in its first line that it is out of turn', () => {
    const day = new DeskDay({ shifts: [] });
    day.says('tomek', '08:00', 'begin 501 bonded-panel');
    day.says('tomek', '08:01', 'cure 501 P1');
    const [first] = day.told('tomek', '08:02', 'lamp 501 65').split('\n');
    expect(first).toMatch(/^lamp-gentle does not count: .*out of turn/);
  });
});
