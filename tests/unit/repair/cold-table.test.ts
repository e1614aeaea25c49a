import { describe, expect, it } from 'vitest';
import { postsOf } from '../../support/spoken.js';
import { Shift, warm } from '../../support/shift.js';

/** The example card G1 has a time from 5 °C on; the glass is set at 10:00. */
function glassAt(value: number, humidity: number | null = 60): Shift {
  const shift = new Shift();
  shift.enters('tomek', '10:00', { kind: 'air', value: warm(value), humidity });
  shift.enters('tomek', '10:00', { kind: 'cure', job: '7219', card: 'G1' });
  return shift;
}

describe('glass in air that its table has no row for', () => {
  it('tells the foreman once, however often the cold is read', () => {
    const shift = glassAt(3);
    shift.until('10:30');
    shift.enters('tomek', '10:30', { kind: 'air', value: warm(2), humidity: 60 });
    shift.until('16:00');
    expect(shift.heard()).toEqual(['10:00 decision ines']);
  });

  it('tells nobody where the table has a time, and when the reading was a mistake', () => {
    expect(glassAt(5).plan()).not.toContainEqual(expect.objectContaining({ kind: 'decision' }));
    const shift = new Shift();
    shift.enters('tomek', '10:00', { kind: 'air', value: warm(14), humidity: 60 });
    shift.enters('tomek', '10:00', { kind: 'cure', job: '7219', card: 'G1' });
    shift.enters('tomek', '11:00', { kind: 'air', value: warm(3), humidity: 60 });
    expect(shift.plan().map(({ kind }) => kind)).toEqual(['decision']);
    shift.enters('tomek', '11:00', { kind: 'undo' });
    shift.until('13:59');
    expect(shift.heard()).toEqual(['11:00 decision ines']);
    expect(shift.due('7219', 'drive-away')).toBe('14:00');
  });

  it.each<['de' | 'es', string[]]>([
    ['de', ['7219 Standzeit: keine Zeit, Luft 3 °C, das Datenblatt beginnt bei 5 °C.', 'Platz auf 5 °C oder mehr heizen. Was kälter stand, bekommt von mir keine Zeit: du entscheidest nach dem Datenblatt, ob neu gesetzt wird. Luft falsch gemessen? Messung zurücknehmen.']],
    ['es', ['7219 tiempo de espera: sin hora, aire 3 °C; la hoja de datos empieza en 5 °C.', 'Calienta el puesto a 5 °C o más. Lo que estuvo más frío no recibe hora de mí: según la hoja de datos decides tú si se coloca de nuevo. ¿Aire mal leído? Deshaz esa lectura.']],
  ])('says it in %s', (language, lines) => {
    const shift = glassAt(3);
    shift.until('10:01');
    expect(postsOf(shift, 'decision', language)[0]?.lines.slice(0, 2)).toEqual(lines);
  });
});
