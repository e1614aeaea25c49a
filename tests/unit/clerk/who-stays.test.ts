import { describe, expect, it } from 'vitest';
import { DeskDay } from '../../support/desk-day.js';

/** P1 under a lamp that is needed past closing: whoever taps [I stay] stays. */
function evening(): DeskDay {
  const day = new DeskDay({ shifts: [] });
  const [stay] = day.says('tomek', '15:58', 'cure 430 P1 lamp 30 A').buttons;
  expect(stay?.label).toBe('I stay');
  const said = day.told('wren', '15:59', stay?.line ?? '');
  expect(said).toMatch(/^430 P1 closed 15:58, lamp A 30 °C, Wren stays until midnight at the latest\./);
  expect(said).not.toMatch(/I stay|Who stays/);
  return day;
}

const closing = (day: DeskDay): string => {
  day.at('17:01');
  return day.posts('bundle').map(({ answer }) => answer.lines.map((line) => line.map(({ text }) => text).join('')).join('\n')).join('\n\n');
};

describe('who stays with a lamp past closing', () => {
  it('is named wherever the lamp is, and the closing bundle does not ask for it', () => {
    const day = evening();
    for (const [line, shown] of [['when 430', 'lamp A 30 °C, Wren stays.'], ['who waits', 'lamp A 30 °C, Wren stays'], ['lamps', 'A 430 30 °C, Wren stays']] as const) expect(day.told('tomek', '16:05', line)).toContain(shown);
    const bundle = closing(day);
    expect(bundle).toContain('lamp A 30 °C, Wren stays');
    expect(bundle).not.toContain('switched off?');
  });

  it('is named with a lamp that is switched on, and until when that counts', () => {
    const day = new DeskDay({ shifts: [] });
    day.says('tomek', '15:50', 'cure 430 P1');
    const said = day.told('tomek', '15:58', 'lamp 430 30 at 15:58 attended');
    expect(said).toMatch(/^430 lamp 30 °C since 15:58, Tomek stays with it until midnight at the latest\./);
    expect(day.told('wren', '16:00', 'stay 430')).toMatch(/^430 Wren stays with the lamp past closing, until midnight at the latest\./);
    expect(day.told('tomek', '16:10', 'lamp 430 35')).toMatch(/^430 lamp 35 °C since 16:10\./);
  });

  it('leaves the question for the other lamps, by job', () => {
    const day = evening();
    day.says('tomek', '16:00', 'cure 431 K lamp 30 B');
    day.says('tomek', '16:00', 'cure 431 j2 K lamp 30');
    expect(closing(day)).toContain('No lamp runs alone: 431, 431 j2 switched off?');
  });

  it('a lamp that nobody stays with is asked about as ever', () => {
    const day = new DeskDay({ shifts: [] });
    day.says('tomek', '07:30', 'cure 430 P1 lamp 30 A');
    expect(closing(day)).toContain('No lamp runs alone: switched off?');
    expect(day.told('tomek', '17:02', 'when 430')).not.toContain('stays');
  });

  it.each(['ines stays 430', 'Ines bleibt 430', 'ines se queda 430', 'ines stays with 430'])('a person named by somebody else: %s', (line) => {
    const day = evening();
    expect(day.told('tomek', '16:05', line)).toMatch(/^430 Ines stays with the lamp past closing/);
    expect(day.told('tomek', '16:06', 'when 430')).toContain('Ines stays');
    expect(day.told('tomek', '16:07', 'undo')).not.toContain('Nothing of yours');
    expect(day.told('tomek', '16:08', 'when 430')).toContain('Wren stays');
  });

  it('nobody whom the shop does not know, and nobody who is only asked for', () => {
    const day = evening();
    expect(day.told('tomek', '16:05', 'zorro stays 430')).toMatch(/^Nobody called “zorro” here/);
    expect(day.told('tomek', '16:05', 'ines stays 430?')).not.toContain('stays with');
    expect(day.told('tomek', '16:05', 'who stays 430')).not.toContain('stays with');
    expect(day.told('tomek', '16:06', 'when 430')).toContain('Wren stays');
    expect(day.told('tomek', '16:07', 'someone stays 430')).toMatch(/^430 Tomek stays/);
  });
});
