import { describe, expect, it } from 'vitest';
import { lampName } from '../../../src/repair/ids.js';
import { DeskDay } from '../../support/desk-day.js';

const names = [lampName('A'), lampName('B')];
const busy = (): DeskDay => {
  const day = new DeskDay({ shifts: [], lamps: names });
  day.says('tomek', '08:00', 'cure 503 P2 lamp 35 lamp A');
  day.says('tomek', '08:01', 'cure 502 P2 lamp 35 lamp B');
  day.says('tomek', '08:02', 'cure 504 P2');
  return day;
};

describe('a lamp without a name, where every lamp of the shop heats another job', () => {
  it('is asked about, and counts nowhere until it is said which', () => {
    const day = busy();
    const told = day.told('tomek', '08:05', 'lamp 504 35');
    expect(told).toMatch(/^504: A is on 503, B is on 502: which one\? It goes off there\. Nothing stored yet\.\n\[A, off 503\] lamp 504 j1 35 lamp A at .* yes\n\[B, off 502\]/);
    expect(day.told('tomek', '08:06', 'lamps')).not.toContain('504');
    expect(day.told('tomek', '08:06', 'cure 505 P2 lamp 35')).toContain('which one?');
    const [first] = day.says('tomek', '08:07', 'lamp 504 35').buttons;
    expect(day.told('tomek', '08:07', first?.line ?? '')).toMatch(/^504 lamp A 35 °C since 08:07/);
    expect(day.told('tomek', '08:08', 'lamps')).toMatch(/A 504/);
    expect(day.told('tomek', '08:08', 'lamps')).not.toContain('503');
  });

  it('is taken as before where one is free, and where the shop has no list', () => {
    const day = busy();
    day.says('tomek', '08:03', 'off 503');
    expect(day.told('tomek', '08:05', 'lamp 504 35')).not.toContain('which one?');
    const plain = new DeskDay({ shifts: [], lamps: [] });
    plain.says('tomek', '08:00', 'cure 501 P2 lamp 35');
    expect(plain.told('tomek', '08:01', 'cure 502 P2 lamp 35')).toMatch(/^502 P2/);
  });
});
