import { describe, expect, it } from 'vitest';
import { lampName } from '../../../src/repair/ids.js';
import { hears } from '../../support/spoken.js';
import { Shift, warm } from '../../support/shift.js';

describe('a card that was wrong', () => {
  it('is said with the new time beside the old, and can be taken back', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:40', { kind: 'cure', job: '501', card: 'P1', setting: warm(35) });
    expect(hears(shift, 'tomek', '09:53', { kind: 'wrong-card', job: '501', card: 'P2' })).toEqual({
      lines: ['501 is P2, not P1 (changed 09:53).', 'Handling strength 11:00 by the clock (was 14:40).', 'P2 is an example card, not your data sheet.'],
      buttons: ['Undo: undo 2'],
    });
    expect(hears(shift, 'tomek', '09:54', { kind: 'undo', entry: shift.facts.at(-1)?.entry ?? null }).lines).toEqual([
      '501 taken back: change of card to P2 of 09:53. Both stay in the record.',
      '501 handling strength earliest 14:40, likely later (was 11:00).',
      'P1 is an example card, not your data sheet.',
    ]);
  });

  it('has another open limit before the panel is closed', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(hears(shift, 'tomek', '09:10', { kind: 'wrong-card', job: '501', card: 'P2' }).lines[1]).toBe('Close the panel by 09:50 (50 min at 20 °C). On P1 it was 10:00.');
    expect(hears(shift, 'tomek', '09:11', { kind: 'undo' }).lines[1]).toBe('501 Close the panel by 10:00 (60 min at 20 °C). It was 09:50.');
  });

  it('says a limit that the right card had passed already', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'paste', job: '501', card: 'P1' });
    shift.enters('tomek', '09:55', { kind: 'closed', job: '501' });
    const { lines } = hears(shift, 'tomek', '09:56', { kind: 'wrong-card', job: '501', card: 'P2' });
    expect(lines.slice(1, 3)).toEqual(['Handling strength HELD, open limit was passed (was 14:55).', 'Open limit 09:50 passed: the foreman decides.']);
  });

  it('says at once what is due already, with the buttons to answer', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
    const { lines, buttons } = hears(shift, 'tomek', '10:00', { kind: 'wrong-card', job: '501', card: 'T1' });
    expect(lines[1]).toMatch(/^Sanding time due since 09:\d\d, check it/);
    expect(buttons).toEqual(['Hard: check 501 j1 sand hard', 'Soft: check 501 j1 sand soft', 'Undo: undo 2']);
  });

  it('that is right already changes nothing', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(hears(shift, 'tomek', '08:10', { kind: 'wrong-card', job: '501', card: 'P1' }).lines).toEqual(['501 is P1 already. Nothing changed.']);
  });

  it('says heat that is too much for the right card', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(65), heater: 'pad' });
    const { lines, buttons } = hears(shift, 'tomek', '08:05', { kind: 'wrong-card', job: '501', card: 'P2' });
    expect(lines).toContain('Pad at 65 °C, P2 allows 60 °C: turn it down now, then read the joint.');
    expect(buttons).toEqual(['Pad off: off 501 j1', 'Undo: undo 2']);
    shift.enters('tomek', '08:06', { kind: 'undo' });
    shift.enters('tomek', '08:07', { kind: 'read', job: '501', value: warm(66) });
    expect(hears(shift, 'tomek', '08:10', { kind: 'wrong-card', job: '501', card: 'P2' }).lines.slice(0, 2)).toEqual(['501 is P2, not P1: TOO HOT 66 °C, limit 60 °C.', 'Pad off or back now. The foreman is told; the cure is held.']);
  });

  it.each<[string, string, string]>([
    ['a card that runs there', 'K', '501 j1: K runs there already since 08:00. If the two are one, scrap one of them. Nothing changed.'],
    ['one of two', 'P2', '501 j1: K and P1 run there. Scrap the wrong one, then start the right one. Nothing changed.'],
    ['a card nobody knows', 'X', '501: which material card? C1, E1, F1, G1, K, P2, S1, T1, W1. Nothing stored yet.'],
  ])('%s changes nothing', (_name, card, words) => {
    const shift = new Shift();
    for (const other of ['K', 'P1']) shift.enters('tomek', '08:00', { kind: 'cure', job: '501', joint: 'j1', card: other });
    expect(hears(shift, 'tomek', '08:10', { kind: 'wrong-card', job: '501', card }).lines).toEqual([words]);
  });
});

describe('the depth of a bead', () => {
  it('is asked for at the start, with the depths that are one tap', () => {
    const shift = new Shift();
    expect(hears(shift, 'tomek', '08:00', { kind: 'cure', job: '7214', joint: 'j3', card: 'S1' })).toEqual({
      lines: ['7214 j3 S1 closed 08:00, air 20 °C.', 'How deep is the bead? Until then no through-cure time.', 'S1 is an example card, not your data sheet.'],
      buttons: ['3 mm: depth 7214 j3 3 mm', '4 mm: depth 7214 j3 4 mm', '5 mm: depth 7214 j3 5 mm'],
    });
    expect(hears(shift, 'tomek', '08:01', { kind: 'stay', job: '7214' }).lines[0]).toMatch(/no lamp was noted/);
  });

  it('is asked for beside the button that is pressed next', () => {
    const shift = new Shift();
    const { lines, buttons } = hears(shift, 'tomek', '08:00', { kind: 'paste', job: '501', card: 'S1' });
    expect(lines).toContain('How deep is the bead? Until then no through-cure time.');
    expect(buttons).toEqual(['Closed: closed 501 j1', '3 mm: depth 501 j1 3 mm', '4 mm: depth 501 j1 4 mm']);
    expect(hears(shift, 'tomek', '08:01', { kind: 'wrong-card', job: '501', card: 'P1' }).lines.join('\n')).not.toContain('deep');
    expect(hears(shift, 'tomek', '08:02', { kind: 'wrong-card', job: '501', card: 'S1' }).buttons).toEqual(['3 mm: depth 501 j1 3 mm', '4 mm: depth 501 j1 4 mm', 'Undo: undo 3']);
  });

  it('is answered with the time, and with what it was before', () => {
    const shift = new Shift();
    shift.enters('tomek', '07:59', { kind: 'air', value: warm(20), humidity: 60 });
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'S1' });
    expect(hears(shift, 'tomek', '08:05', { kind: 'depth', job: '501', millimetres: 1 }).lines.slice(0, 2)).toEqual(['501 bead 1 mm deep.', 'Through-cure time 10:40 by the clock.']);
    expect(hears(shift, 'tomek', '08:06', { kind: 'depth', job: '501', millimetres: 0.5 }).lines.slice(0, 2)).toEqual(['501 bead 0.5 mm deep.', 'Through-cure time 08:40 by the clock (was 10:40).']);
    expect(hears(shift, 'wren', '08:07', { kind: 'depth', job: '501', millimetres: 0.5 }).lines[0]).toBe('501 bead 0.5 mm deep already. Nothing changed.');
    expect(hears(shift, 'tomek', '08:08', { kind: 'undo' }).lines.slice(0, 2)).toEqual(['501 taken back: bead depth 0.5 mm of 08:06. Both stay in the record.', '501 through-cure time 10:40 by the clock (was 08:40).']);
  });

  it.each<[string, number, string]>([
    ['P1', 3, 'P1 does not harden by depth: leave the depth out. Nothing stored.'],
    ['S1', 40, '40 mm is no depth of a bead (0.5 to 30 mm). Nothing stored.'],
  ])('on %s, %d mm is refused in words', (card, depth, words) => {
    expect(hears(new Shift(), 'tomek', '08:00', { kind: 'cure', job: '501', card, depth }).lines).toEqual([words]);
  });
});

describe('a heating pad', () => {
  const M1 = lampName('M1');
  const shift = (): Shift => {
    const one = new Shift();
    one.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    one.enters('tomek', '08:00', { kind: 'cure', job: '502', card: 'P2' });
    return one;
  };

  it('is called what it is', () => {
    const one = shift();
    expect(hears(one, 'tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater: 'pad', lamp: M1 }).lines.slice(0, 2)).toEqual(['501 pad M1 60 °C since 08:05.', 'Handling strength earliest 13:00, likely later.']);
    expect(hears(one, 'tomek', '08:30', { kind: 'off', job: '501' }).lines[0]).toBe('501 pad off 08:30: air counts since.');
  });

  it('runs no recipe, and says so', () => {
    expect(hears(shift(), 'tomek', '08:05', { kind: 'lamp', job: '502', setting: warm(60), heater: 'pad', lamp: M1 }).lines).toContain('A pad runs no recipe: nothing of it counts.');
    expect(hears(shift(), 'tomek', '08:05', { kind: 'cure', job: '503', card: 'K', setting: warm(60), heater: 'pad' }).lines).toContain('A pad runs no recipe: only what the joint itself reads counts.');
  });

  it.each<[string, 'lamp' | 'pad', string, string]>([
    ['an unknown pad', 'pad', 'M9', 'No pad M9 here. This shop has: M1, M2.'],
    ['a lamp called a pad', 'pad', 'A', 'A is a lamp here, not a pad. Nothing stored.'],
    ['a pad called a lamp', 'lamp', 'M1', 'M1 is a pad here, not a lamp. Nothing stored.'],
    ['an unknown lamp', 'lamp', 'Q', 'No lamp Q here. This shop has: A, B.'],
  ])('%s', (_name, heater, named, words) => {
    expect(hears(shift(), 'tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater, lamp: lampName(named) }).lines).toEqual([words]);
  });

  it('on another car is asked about by its name', () => {
    const one = shift();
    one.enters('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater: 'pad', lamp: M1 });
    one.enters('tomek', '08:06', { kind: 'cure', job: '503', card: 'P1' });
    expect(hears(one, 'tomek', '08:10', { kind: 'lamp', job: '503', setting: warm(60), heater: 'pad', lamp: M1 }).lines).toEqual(['Pad M1 is on 501 by my book. Moved here? Nothing stored yet.']);
  });

  it('in a shop that has none needs no name', () => {
    const one = new Shift({ pads: [] });
    one.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(hears(one, 'tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater: 'pad', lamp: M1 }).lines).toEqual(['No pad M1 here: no pads are written down for this shop. Leave the name out.']);
  });
});
