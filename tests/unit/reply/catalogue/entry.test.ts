import { describe, expect, it } from 'vitest';
import type { Language } from '../../../../src/repair/shop.js';
import { hears } from '../../../support/spoken.js';
import { Shift, warm } from '../../../support/shift.js';

type Short = Parameters<Shift['says']>[2];
type Said = ReturnType<typeof hears>;

/** Enters all but the last without a word, and hears the answer to the last. */
function heard(language: Language, ...shorts: readonly (readonly [string, Short])[]): Said {
  const shift = new Shift();
  for (const [at, short] of shorts.slice(0, -1)) shift.enters('tomek', at, short);
  const [at, short] = shorts.at(-1) ?? ['08:00', { kind: 'undo' }];
  return hears(shift, 'tomek', at, short, language);
}

const DAMP: readonly (readonly [string, Short])[] = [
  ['07:45', { kind: 'air', value: warm(18), humidity: 62.5 }],
  ['08:00', { kind: 'paste', job: '501', card: 'P1' }],
  ['08:05', { kind: 'read', job: '501', value: warm(12.5) }],
];
const PAD: Short = { kind: 'cure', job: '501', card: 'P1', setting: warm(65), heater: 'pad' };

/** Read aloud in a workshop, each of them. */
const ANSWERS: readonly (readonly [string, Exclude<Language, 'en'>, () => Said, Said])[] = [
  ['paste', 'de', () => heard('de', ...DAMP.slice(0, 2)), {
    lines: ['501 P1 aufgetragen 08:00.', 'Blech schließen bis 09:00 (60 min bei 18 °C).', 'Handschuhe, Schutzbrille. Tippe auf „Geschlossen“, wenn das Blech sitzt.', 'Taupunkt 10,7 °C: Metall mindestens 13,8 °C.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['Geschlossen: closed 501 j1', 'Zurücknehmen: undo 2'],
  }],
  ['paste', 'es', () => heard('es', ...DAMP.slice(0, 2)), {
    lines: ['501 P1 aplicado 08:00.', 'Cierra el panel antes de 09:00 (60 min a 18 °C).', 'Guantes, gafas de protección. Toca «Cerrado» cuando el panel esté puesto.', 'Punto de rocío 10,7 °C: metal, como mínimo 13,8 °C.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Cerrado: closed 501 j1', 'Deshacer: undo 2'],
  }],
  ['damp metal', 'de', () => heard('de', ...DAMP), {
    lines: ['501 Messung 12,5 °C.', 'Blech schließen bis 09:00 (60 min bei 18 °C).', 'GESPERRT: Metall 1,8 °C über dem Taupunkt von 10,7 °C, 3 °C nötig. Der Meister entscheidet.', 'Fühler statt Finger, an der kältesten Stelle. Blankes Metall täuscht das Infrarotthermometer.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['Zurücknehmen: undo 3'],
  }],
  ['damp metal', 'es', () => heard('es', ...DAMP), {
    lines: ['501 lectura 12,5 °C.', 'Cierra el panel antes de 09:00 (60 min a 18 °C).', 'RETENIDO: metal 1,8 °C por encima del punto de rocío de 10,7 °C, hacen falta 3 °C. Decide el jefe de taller.', 'Sonda, no el dedo, en el punto más frío. El metal desnudo y brillante engaña al infrarrojo.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Deshacer: undo 3'],
  }],
  ['a pad found off', 'de', () => heard('de', ['08:00', PAD], ['08:20', { kind: 'off', job: '501', since: 'unknown' }]), {
    lines: ['501 Heizmatte 08:20 aus vorgefunden: Wärme zählt nur bis 08:00.', 'Handfestigkeit frühestens 13:00, eher später.', 'Heizmatte wieder an? Tippe auf „An“, dann messen.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['An: on 501 j1', 'Zurücknehmen: undo 3'],
  }],
  ['a pad found off', 'es', () => heard('es', ['08:00', PAD], ['08:20', { kind: 'off', job: '501', since: 'unknown' }]), {
    lines: ['501 manta encontrada apagada 08:20: el calor cuenta solo hasta 08:00.', 'Resistencia de manipulación: como pronto 13:00, seguramente más tarde.', '¿Vuelve la manta? Toca «Encendida» y luego mide.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Encendida: on 501 j1', 'Deshacer: undo 3'],
  }],
  ['too hot', 'de', () => heard('de', ['08:00', PAD], ['08:20', { kind: 'read', job: '501', value: warm(95) }]), {
    lines: ['501 ZU HEISS 95 °C, Grenze 85 °C.', 'Heizmatte jetzt aus oder weg. Der Meister bekommt Bescheid; die Aushärtung ist gesperrt.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['Heizmatte aus: off 501 j1', 'Tippfehler: undo 3'],
  }],
  ['too hot', 'es', () => heard('es', ['08:00', PAD], ['08:20', { kind: 'read', job: '501', value: warm(95) }]), {
    lines: ['501 DEMASIADO CALIENTE 95 °C, límite 85 °C.', 'Apaga o aparta ya la manta. Se avisa al jefe de taller; el curado queda retenido.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Manta: apagar: off 501 j1', 'Me equivoqué: undo 3'],
  }],
  ['taken back', 'de', () => heard('de', ['08:00', PAD], ['08:20', { kind: 'wrong-card', job: '501', card: 'P2' }], ['08:21', { kind: 'undo' }]), {
    lines: ['501 zurückgenommen: Kartenwechsel auf P2 von 08:20. Beides bleibt im Protokoll.', '501 Handfestigkeit frühestens 13:00, eher später.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: [],
  }],
  ['taken back', 'es', () => heard('es', ['08:00', PAD], ['08:20', { kind: 'wrong-card', job: '501', card: 'P2' }], ['08:21', { kind: 'undo' }]), {
    lines: ['501, anulado: cambio de ficha a P2 (08:20). Ambas cosas quedan en el registro.', '501 resistencia de manipulación: como pronto 13:00, seguramente más tarde.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: [],
  }],
];

describe('the answer to an entry', () => {
  it.each(ANSWERS)('%s, %s', (_, _language, say, said) => {
    expect(say()).toEqual(said);
  });

  it('says half a millimetre and a fraction of a percent as they are written there', () => {
    expect(heard('de', ['08:00', { kind: 'paste', job: '501', card: 'S1', depth: 3.5 }], ['08:01', { kind: 'depth', job: '501', millimetres: 3.5 }]).lines[0]).toBe('501 Raupe 3,5 mm tief: stand schon so da. Nichts geändert.');
    expect(heard('es', ['07:45', { kind: 'air', value: warm(18), humidity: 62.5 }]).lines[0]).toBe('Aire 18 °C, 62,5 % de humedad, anotado 07:45.');
  });
});
