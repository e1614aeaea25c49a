import { describe, expect, it } from 'vitest';
import { toText } from '../../../src/reply/to-text.js';
import { DeskDay } from '../../support/desk-day.js';

/** Air 18 °C, 70 %: dew point 12.44 °C. Metal read at 15 °C while the paste lies open. */
function damp(): DeskDay {
  const day = new DeskDay({ shifts: [] });
  day.says('tomek', '07:45', 'air 18 rh 70');
  day.says('tomek', '08:00', 'paste 501 P1');
  day.says('tomek', '08:05', 'read 501 15');
  return day;
}

describe('a dew hold that the foreman decided', () => {
  it('is decided with what is written behind the button\'s line; without it nothing is stored', () => {
    const day = damp();
    const goOn = day.posts('decision')[0]?.answer.buttons.find(({ label }) => label === 'Go on');
    expect(goOn).toEqual({ label: 'Go on', line: 'release 501 j1', asks: 'reason' });
    expect(day.told('ines', '08:06', goOn?.line ?? '')).toMatch(/Needs a reason\..*Nothing stored/);
    expect(day.told('ines', '08:07', 'when 501')).toContain('HOLD');
    day.says('ines', '08:08', `${goOn?.line ?? ''} wiped and warmed`);
    expect(day.told('ines', '08:09', 'when 501')).toContain('Decided: P1 goes on, Ines 08:08: “wiped and warmed”.');
  });

  it('is shown with name, time and reason from then on', () => {
    const day = damp();
    expect(day.told('ines', '08:08', 'release 501 wiped and warmed by hand')).toMatch(/^501 goes on, decided by Ines/);
    const decided = 'Decided: P1 goes on, Ines 08:08: “wiped and warmed by hand”.';
    for (const line of ['when 501', 'why 501', 'closed 501', 'why 501', 'when 501']) expect(day.told('tomek', '08:10', line)).toContain(decided);
    day.says('tomek', '08:11', 'cure 501 j2 P2');
    const waits = day.told('wren', '08:12', 'who waits').split('\n');
    expect(waits.find((line) => line.startsWith('501 h'))).toContain('; decided: Ines 08:08: “wiped and warmed by hand”');
    expect(waits.find((line) => line.startsWith('501 j2'))).not.toContain('decided');
  });

  it('is taken back with the entry, and not told of what was scrapped after all', () => {
    const day = damp();
    day.says('ines', '08:08', 'release 501 wiped and warmed by hand');
    day.says('ines', '08:09', 'undo');
    expect(day.told('ines', '08:10', 'when 501')).not.toContain('Decided');
    day.says('ines', '08:11', 'release 501 wiped and warmed by hand');
    day.says('ines', '08:12', 'scrap 501 bead came off');
    day.says('tomek', '08:20', 'paste 501 P1');
    expect(day.told('ines', '08:21', 'when 501')).not.toContain('Decided');
  });
});

describe('the dew margin of a step that was overridden', () => {
  function overridden(): DeskDay {
    const day = new DeskDay({ shifts: [] });
    day.says('ines', '08:00', 'begin 501 bonded-panel');
    day.says('tomek', '08:01', 'air 18 rh 70');
    day.says('tomek', '08:05', 'read 501 j1 15');
    expect(day.told('ines', '08:06', 'override 501 bond wiped and warmed')).toMatch(/bond overridden 08:06, Ines, past this only:.*dew point/);
    day.says('tomek', '08:07', 'paste 501 P1');
    return day;
  }

  it('is decided for the bead as well: nobody is asked again, and every answer shows it', () => {
    const day = overridden();
    day.at('08:10');
    expect(day.heard('decision')).toEqual([]);
    expect(day.told('ines', '08:10', 'when 501')).not.toContain('HOLD');
    for (const line of ['when 501', 'why 501']) expect(day.told('tomek', '08:11', line)).toContain('Overridden: bond, Ines 08:06: “wiped and warmed”.');
    expect(day.told('tomek', '08:11', 'who waits')).toContain('overridden: bond (Ines 08:06: “wiped and warmed”)');
  });

  it('but not for metal that is read closer to it afterwards', () => {
    const day = overridden();
    day.says('tomek', '08:10', 'read 501 14');
    expect(day.heard('decision')).toEqual(['08:10 decision ines']);
    expect(day.told('ines', '08:11', 'when 501')).toContain('HOLD');
  });

  it('said after the paste, it decides the hold that stands already', () => {
    const day = new DeskDay({ shifts: [] });
    for (const line of ['begin 501 bonded-panel', 'batch 501 55-B', 'expiry 501 02/27', 'opened 501 28.02.2026', 'air 18 rh 70', 'read 501 j1 15']) day.says('ines', '08:00', line);
    expect(day.told('ines', '08:01', 'paste 501 P1')).toContain('HOLD');
    expect(day.heard('decision')).toEqual(['08:01 decision ines']);
    expect(day.told('ines', '08:02', 'override 501 bond wiped and warmed')).toMatch(/past this only: done out of turn \(metal only 2\.6 °C above the dew point\)/);
    expect(day.told('ines', '08:03', 'when 501')).not.toContain('HOLD');
    expect(day.told('ines', '08:03', 'release 501 once more')).toMatch(/nothing there waits for a decision/);
  });

  it('past something else, with warmer metal by then, it decides nothing about the damp reading', () => {
    const day = new DeskDay({ shifts: [] });
    for (const line of ['begin 501 bonded-panel', 'air 18 rh 70', 'read 501 j1 15']) day.says('ines', '08:00', line);
    day.says('ines', '08:02', 'read 501 j1 19');
    expect(day.told('ines', '08:03', 'override 501 bond cartridge is fine')).not.toContain('dew point');
    day.says('tomek', '08:04', 'paste 501 P1');
    expect(day.told('ines', '08:05', 'when 501')).toContain('HOLD');
  });

  it('and a taken back override decides nothing', () => {
    const day = overridden();
    day.says('ines', '08:08', 'undo');
    expect(day.told('ines', '08:09', 'when 501')).toContain('HOLD');
  });
});

describe('two answers that differ', () => {
  function differ(): DeskDay {
    const day = new DeskDay({ shifts: [] });
    day.says('ines', '08:00', 'cure 501 P2 lamp 35');
    day.says('ines', '08:01', 'hand 501 to tomek');
    day.says('tomek', '09:30', 'check 501 handling hard');
    day.says('wren', '09:31', 'check 501 handling soft');
    return day;
  }

  it('name both persons with what they said and when', () => {
    for (const line of ['why 501', 'when 501']) expect(differ().told('ines', '09:32', line)).toContain('two answers, held as soft (Tomek hard 09:30, Wren soft 09:31)');
  });

  it('ring at the foreman once, and at whoever said hard; the recheck rings at the owner only', () => {
    const day = differ();
    day.at('15:00');
    expect(day.heard('decision')).toEqual(['09:31 decision ines', '09:31 decision tomek']);
    expect(toText(day.posts('decision')[1]?.answer ?? day.says('tomek', '15:00', 'help'))).toMatch(/^STOP, 501 handling strength: your hard does not count yet, somebody said soft\./);
    expect(day.heard('handling').filter((post) => post > '09:31')).toEqual(['09:51 handling tomek', '10:01 handling tomek', '10:21 handling tomek']);
  });
});
