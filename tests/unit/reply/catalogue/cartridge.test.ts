import { describe, expect, it } from 'vitest';
import type { Language } from '../../../../src/repair/shop.js';
import { hears, postsOf } from '../../../support/spoken.js';
import { Shift } from '../../../support/shift.js';

type Other = Exclude<Language, 'en'>;

const LABEL = { batch: '55-B', expiry: '01/26', opened: '2025-12-01' };

const pasted = (language: Other): readonly string[] => hears(new Shift(), 'tomek', '08:00', { kind: 'paste', job: '501', card: 'P1', label: LABEL }, language).lines.slice(0, 3);

function again(language: Other): readonly string[] {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1', label: LABEL });
  const figures = [{ what: 'expiry', text: '03/27' }, { what: 'opened', text: '2026-03-02' }] as const;
  return hears(shift, 'tomek', '08:05', { kind: 'enter', job: '501', what: 'batch', text: '66-C', more: figures }, language).lines.slice(0, 1);
}

function asked(language: Other, closes: boolean): readonly string[] {
  const shift = new Shift();
  if (closes) shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', label: { ...LABEL, batch: null } });
  else shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1', label: LABEL });
  shift.until('08:01');
  return postsOf(shift, 'decision', language)[0]?.lines ?? [];
}

/** Read aloud in a workshop, each of them. */
describe('what is said about a cartridge', () => {
  it.each<[string, readonly string[], readonly string[]]>([
    ['at the paste, de', pasted('de'), ['501 GESPERRT: Charge 55-B abgelaufen 01/26, offen seit 2025-12-01, erlaubt 30 Tage. Nur Ines lässt es weitergehen: `release 501` und warum.', '501 P1 aufgetragen 08:00.', 'Eine andere vor dem Schließen hebt das auf: `batch 501 66-C expiry 2027-03 opened 2026-03-02`.']],
    ['at the paste, es', pasted('es'), ['501 RETENIDO: lote 55-B caducó 01/26, abierto 2025-12-01, se permiten 30 días. Solo Ines puede dejarlo seguir: `release 501` y por qué.', '501 P1 aplicado 08:00.', 'Otro antes de cerrar lo levanta: `batch 501 66-C expiry 2027-03 opened 2026-03-02`.']],
    ['another one, de', again('de'), ['501 Kartusche notiert: Charge 66-C, haltbar bis 03/27, offen seit 2026-03-02.']],
    ['another one, es', again('es'), ['501 cartucho anotado: lote 66-C, caduca 03/27, abierto 2026-03-02.']],
    ['to the foreman, de', asked('de', false).slice(0, 2), ['501 Charge 55-B abgelaufen 01/26, offen seit 2025-12-01, erlaubt 30 Tage. Du entscheidest.', 'Abgelaufener Kleber erreicht seine Festigkeit vielleicht nicht. Eine andere Kartusche vor dem Schließen hebt die Sperre auf.']],
    ['to the foreman, closed, es', asked('es', true).slice(0, 2), ['501 cartucho caducó 01/26, abierto 2025-12-01, se permiten 30 días. Tú decides.', 'Un adhesivo caducado puede no llegar a su resistencia, y la pieza está cerrada.']],
  ])('%s', (_, said, expected) => {
    expect(said).toEqual(expected);
  });
});
