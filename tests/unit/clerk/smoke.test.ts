import { describe, expect, it } from 'vitest';
import { DeskDay } from '../../support/desk-day.js';

const ALONE = { shifts: [] } as const;

describe('smoke or fire, typed', () => {
  it.each(['smoke 601', 'rauch 601', 'humo 601', '601 smells', 'fire 601', '601 brennt', '601 huele', 'feuer 601', '601 on fire', 'smoke 601 at the sill', 'help, there is fire at 601!!'])('%s is an alarm to everybody, first of all what to do, with no watch running', (line) => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'cure 601 P1');
    const said = day.told('wren', '09:00', line);
    expect(said.split('\n')[0]).toMatch(/^601 SMOKE noted 09:00 by Wren\. Call the fire service first, then everybody out\. Put it out only without danger to yourself; local rules come first\./);
    day.at('09:01');
    expect(day.heard('safety')).toEqual(expect.arrayContaining(day.shop.people.map(({ id }) => `09:00 safety ${id}`)));
    day.at('09:06');
    expect(day.heard('safety')).toContain('09:05 safety ines');
  });

  it.each(['fire', 'smoke', 'feuer', 'fuego', 'es brennt', 'rauch', 'humo'])('%s alone is heard by everybody at once, and the car is asked for', (line) => {
    const day = new DeskDay(ALONE);
    const said = day.told('wren', '09:00', line);
    expect(said).toMatch(/fire service first[^]*Which car\?/);
    expect(day.heard('safety').sort()).toEqual(day.shop.people.map(({ id }) => `09:00 safety ${id}`).filter((one) => !one.endsWith('wren')).sort());
  });

  it('is taken from whoever is not on the list, and about a car nobody has entered', () => {
    const day = new DeskDay(ALONE);
    expect(day.told('visitor', '09:00', 'smoke 704')).toMatch(/^704 SMOKE noted 09:00 by Visitor/);
    day.at('09:01');
    expect(day.heard('safety')).toContain('09:00 safety ines');
  });

  it('stands in every answer about the car until the foreman releases it, and then a watch runs', () => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'cure 601 P1');
    day.says('wren', '09:00', 'smoke 601');
    for (const line of ['when 601', 'why 601', 'read 601 30', 'smoke 601', 'clear 601', 'hard 601']) expect(day.told('tomek', '09:02', line).split('\n')[0]).toMatch(/^601 SMOKE or FIRE reported 09:00 by Wren; the foreman has not decided\. Call the fire service first/);
    expect(day.told('ines', '09:10', 'release 601 tape smouldered')).toMatch(/Fire watch 10:10/);
    expect(day.told('tomek', '09:11', 'when 601')).not.toMatch(/SMOKE/);
  });

  it.each(['is there smoke at 601?', 'no fire 601', 'fire extinguisher empty'])('%s calls nobody', (line) => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'cure 601 P1');
    day.says('wren', '09:00', line);
    day.at('09:01');
    expect(day.heard('safety')).toEqual([]);
  });
});

describe('the word that ends a fire watch', () => {
  it.each(['clear 703', 'cold 703', '703 all cold', 'kalt 703', 'alles kalt 703', 'frío 703', '703 todo frío', 'clear 703 j3', 'no smoke 703'])('%s is taken from whoever stands there', (line) => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'done 703 weld');
    expect(day.told('ines', '09:02', line)).toMatch(/Fire watch confirmed 09:02 by Ines/);
  });

  it.each(['hard 703', 'hart 703', 'ok hard 703', 'ok 703'])('is not %s', (line) => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'done 703 weld');
    expect(day.told('ines', '09:02', line)).not.toMatch(/Fire watch confirmed/);
    expect(day.told('ines', '09:03', 'clear 703')).toMatch(/Fire watch confirmed/);
  });

  it('is a bare ok from whoever was asked, and from nobody else', () => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'done 703 weld');
    expect(day.told('wren', '09:01', 'ok')).not.toMatch(/Fire watch confirmed/);
    expect(day.told('tomek', '09:02', 'ok')).toMatch(/Fire watch confirmed 09:02 by Tomek/);
  });

  it('ends nothing while the work goes on, and says so', () => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'weld 703');
    expect(day.told('ines', '09:02', 'clear 703')).toMatch(/hot work is noted as going on[^]*`?done 703 weld/);
  });
});

describe('the end of hot work, as its button says it', () => {
  it.each(['703 welding over', 'welding over 703', '703 schweißen vorbei', '703 soldadura terminada', '703 weld over'])('%s', (line) => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'weld 703');
    expect(day.told('tomek', '08:10', line)).toMatch(/hot work over 08:10/);
  });

  it('is never said as if nothing had been stored, though its step does not count yet', () => {
    const day = new DeskDay(ALONE);
    day.says('tomek', '08:00', 'begin 601 bonded-panel');
    day.says('tomek', '08:01', 'weld 601 j3');
    const said = day.told('tomek', '08:10', 'done 601 j3 weld');
    expect(said).toMatch(/hot work over 08:10[^]*weld-after does not count: after clamps-off/);
    expect(said).not.toMatch(/Nothing stored/);
  });
});
