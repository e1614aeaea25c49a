import { describe, expect, it } from 'vitest';
import { withButtons, DeskDay } from '../../support/desk-day.js';

const HELD = '501 HELD: batch 55-B expired 01/26. Only Ines can let it go on: `release 501` and why.';
const LABEL = 'Cartridge: batch 55-B, expires 01/26, opened 20.02.26. Batch 55-B expired 01/26.';

/** Monday 2 March 2026; a job without a procedure. */
function expired(): { readonly day: DeskDay; readonly pasted: string[] } {
  const day = new DeskDay();
  return { day, pasted: day.told('tomek', '08:00', 'paste 501 P1 batch 55-B exp 01/26 opened 20.02.26').split('\n') };
}

describe('a cartridge that is out of date, on a job without a procedure', () => {
  it('is the first thing said at the paste, with who alone lets it go on and what else helps', () => {
    expect(expired().pasted.slice(0, 4)).toEqual([HELD, '501 P1 paste on 08:00.', 'Another one before closing lifts it: `batch 501 66-C expiry 2027-03`.', 'Close the panel by 09:00 (60 min at 20 °C).']);
  });

  it('stands in every answer about the job and in the list', () => {
    const { day } = expired();
    expect(day.told('tomek', '08:01', 'when 501').split('\n')).toEqual(expect.arrayContaining([HELD, LABEL]));
    expect(day.told('tomek', '08:01', 'why 501').split('\n').slice(0, 3)).toEqual([HELD, '501 not closed yet: no strength clock runs.', LABEL]);
    expect(day.told('wren', '08:01', 'who waits')).toContain('501 close the panel by 09:00, HELD, cartridge out of date or open too long, Tomek');
    expect(day.told('tomek', '08:20', 'closed 501').split('\n').slice(0, 3)).toEqual([HELD, '501 closed 08:20. 20 of 60 min used.', 'Handling strength 13:20 HELD, cartridge out of date or open too long.']);
    expect(day.told('tomek', '08:21', 'why 501')).toContain(LABEL);
  });

  it('is put to the foreman once, and nothing else is said while it waits', () => {
    const { day } = expired();
    day.told('tomek', '08:20', 'closed 501');
    day.at('16:00');
    expect(day.heard()).toEqual(['08:00 decision ines']);
    expect(withButtons(day.posts('decision')[0]?.answer ?? { tone: 'plain', lines: [], buttons: [] }).split('\n')).toEqual(['501 batch 55-B expired 01/26. You decide.', 'A paste past its date may not reach its strength. Another cartridge before closing lifts the hold.', 'P1 is an example card, not your data sheet.', '[Go on] release 501 j1 …', '[Scrap] scrap 501 j1 foreman']);
  });

  it('goes on with the foreman\'s reason, which stands in every later answer beside what it was', () => {
    const { day } = expired();
    day.told('tomek', '08:20', 'closed 501');
    expect(day.told('tomek', '08:30', 'release 501 looks fine')).toContain('Only the foreman may decide that (Ines).');
    const decided = 'Decided: P1 goes on, Ines 08:31: “maker gives six months more”.';
    expect(day.told('ines', '08:31', 'release 501 maker gives six months more')).toContain(decided);
    for (const line of ['when 501', 'why 501']) expect(day.told('tomek', '08:32', line)).toMatch(new RegExp(`${LABEL.replaceAll('.', '\\.')}[^]*${decided}`));
    day.at('13:20');
    expect(day.heard('handling')).toEqual(['13:20 handling tomek']);
  });

  it('another one lifts it while the panel is open', () => {
    const { day } = expired();
    const told = day.told('tomek', '08:05', 'batch 501 66-C exp 03/27').split('\n');
    expect(told.slice(0, 2)).toEqual(['501 cartridge noted: batch 66-C, expires 03/27.', 'Close the panel by 09:00 (60 min at 20 °C).']);
    expect(day.told('tomek', '08:06', 'when 501')).not.toContain('HELD');
  });

  it('goes with the cure to another job', () => {
    const { day } = expired();
    day.told('tomek', '08:05', 'move 501>502');
    expect(day.told('tomek', '08:06', 'when 502').split('\n')[0]).toBe(HELD.replaceAll('501', '502'));
  });

  it('undo names the paste and takes the cartridge with it', () => {
    const { day } = expired();
    expect(day.told('tomek', '08:01', 'undo')).toContain('501 taken back: paste of 08:00.');
    expect(day.told('tomek', '08:02', 'paste 501 P1')).not.toContain('HELD');
  });
});

describe('a cartridge in a procedure', () => {
  it('is entered in one line, and each figure is told back', () => {
    const day = new DeskDay();
    day.told('ines', '08:00', 'begin 501 bonded-panel');
    expect(day.told('tomek', '08:01', 'batch 501 55-B exp 02/26 opened 28.2.26').split('\n')[0]).toBe(
      '501 bond: batch 55-B noted, Tomek. bond: expired: HOLD, 02/26. Take a new one and enter its date; only the foreman can go on with this one, with a reason. bond: opened 28.2.26 noted, Tomek.',
    );
  });
});
