import { describe, expect, it } from 'vitest';
import { LANGUAGES, type Language } from '../../../../src/repair/shop.js';
import { exampleShop } from '../../../support/example-shop.js';
import { postsOf } from '../../../support/spoken.js';
import { Shift, warm } from '../../../support/shift.js';

type Kind = Shift['posts'][number]['kind'];
type Said = ReturnType<typeof postsOf>[number];
type Other = Exclude<Language, 'en'>;

/** The last post of a kind until then. */
const heard = (shift: Shift, kind: Kind, until: string, language: Language): Said | undefined => {
  shift.until(until);
  return postsOf(shift, kind, language).at(-1);
};

function lamp(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P2', setting: warm(35) });
  return shift;
}

/** The foreman hears last: the button to go on is theirs. */
function tooHot(): Shift {
  const shift = new Shift({ people: exampleShop().people.filter(({ role }) => role !== 'apprentice') });
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(65), heater: 'pad' });
  shift.enters('tomek', '08:20', { kind: 'read', job: '501', value: warm(95) });
  return shift;
}

function pasted(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
  return shift;
}

function damp(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '07:45', { kind: 'air', value: warm(18), humidity: 62.5 });
  shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
  shift.enters('tomek', '08:05', { kind: 'read', job: '501', value: warm(12.5) });
  return shift;
}

/** Read aloud in a workshop, each of them. */
const POSTS: readonly (readonly [string, Other, () => Said | undefined, Said])[] = [
  ['a check is due', 'de', () => heard(lamp(), 'handling', '09:20', 'de'), {
    lines: ['501 Handfestigkeit fällig 09:20 nach der Uhr, nicht bestätigt seit 08:00.', 'Strahler die ganze Zeit an gewesen? Wenn nicht, sag das zuerst.', 'Prüf die Proberaupe an der kältesten Stelle.', 'P2 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['Hart: check 501 j1 handling hard', 'Weich: check 501 j1 handling soft', "Strahler war aus: off 501 j1 don't know when", 'Später, 10 min: later 501 j1'],
  }],
  ['a check is due', 'es', () => heard(lamp(), 'handling', '09:20', 'es'), {
    lines: ['501 resistencia de manipulación: toca 09:20 según el reloj, sin confirmar desde 08:00.', '¿Estuvo la lámpara encendida todo el tiempo? Si no, dilo primero.', 'Prueba el cordón testigo en el punto más frío.', 'P2 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Duro: check 501 j1 handling hard', 'Blando: check 501 j1 handling soft', "Lámpara estaba apagada: off 501 j1 don't know when", 'Más tarde, 10 min: later 501 j1'],
  }],
  ['still on', 'de', () => heard(lamp(), 'still-on', '09:10', 'de'), {
    lines: ['501 noch an? Strahler 35 °C, zuletzt gesehen 08:00.', 'Handfestigkeit 09:20, wenn die Wärme an bleibt.', 'P2 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['An: on 501 j1', 'Aus: off 501 j1', "Weiß nicht: off 501 j1 don't know when"],
  }],
  ['still on', 'es', () => heard(lamp(), 'still-on', '09:10', 'es'), {
    lines: ['501 ¿sigue encendida? lámpara 35 °C, vista por última vez 08:00.', 'resistencia de manipulación: 09:20 si el calor sigue encendido.', 'P2 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Encendida: on 501 j1', 'Apagada: off 501 j1', "No lo sé: off 501 j1 don't know when"],
  }],
  ['too hot', 'de', () => heard(tooHot(), 'safety', '08:30', 'de'), {
    lines: ['501 ZU HEISS 95 °C, Grenze 85 °C. Heizmatte jetzt aus oder weg.', 'Gemessen 08:20 von Tomek. Die Aushärtung ist gesperrt, bis der Meister entscheidet.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['Heizmatte aus: off 501 j1', 'Tippfehler: undo 3', 'Geht weiter: release 501 j1 …'],
  }],
  ['too hot', 'es', () => heard(tooHot(), 'safety', '08:30', 'es'), {
    lines: ['501 DEMASIADO CALIENTE 95 °C, límite 85 °C. Apaga o aparta ya la manta.', 'Leído 08:20 por Tomek. El curado queda retenido hasta que decida el jefe de taller.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Manta: apagar: off 501 j1', 'Me equivoqué: undo 3', 'Que siga: release 501 j1 …'],
  }],
  ['the open limit comes', 'de', () => heard(pasted(), 'open-limit', '08:50', 'de'), {
    lines: ['501 offene Zeit bis 09:00: Blech schließen, noch 10 min.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['Geschlossen: closed 501 j1', 'Verwerfen: scrap 501 j1 open limit passed'],
  }],
  ['the open limit has passed', 'es', () => heard(pasted(), 'open-limit', '09:00', 'es'), {
    lines: ['501 se pasó el tiempo abierto, hasta 09:00; no consta como cerrado.', '¿Cerrado a tiempo? Toca «Cerrado» y corrige la hora. Si no, decide el jefe de taller.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Cerrado: closed 501 j1', 'Descartar: scrap 501 j1 open limit passed'],
  }],
  ['damp metal, for the foreman', 'de', () => heard(damp(), 'decision', '08:06', 'de'), {
    lines: ['501 Metall 1,8 °C über dem Taupunkt von 10,7 °C, 3 °C nötig. Du entscheidest.', 'Eine Raupe auf feuchtem Metall hält vielleicht nicht. Abgewischt und gewärmt: zurücknehmen oder verwerfen und neu auftragen.', 'P1 ist eine Beispielkarte, nicht dein Datenblatt.'],
    buttons: ['Geht weiter: release 501 j1 …', 'Verwerfen: scrap 501 j1 foreman'],
  }],
  ['damp metal, for the foreman', 'es', () => heard(damp(), 'decision', '08:06', 'es'), {
    lines: ['501 metal 1,8 °C por encima del punto de rocío de 10,7 °C, hacen falta 3 °C. Tú decides.', 'Un cordón sobre metal húmedo puede no agarrar. Limpiado y calentado: deshaz o descarta y aplica de nuevo.', 'P1 es una ficha de ejemplo, no tu hoja de datos.'],
    buttons: ['Que siga: release 501 j1 …', 'Descartar: scrap 501 j1 foreman'],
  }],
];

describe('what the bot says by itself', () => {
  it.each(POSTS)('%s, %s', (_, _language, say, said) => {
    expect(say()).toEqual(said);
  });

  it('sends the same lines in every language, whatever stands on the buttons', () => {
    const sent = LANGUAGES.map((language) => heard(lamp(), 'handling', '09:20', language)?.buttons.map((button) => button.slice(button.lastIndexOf(': ') + 2)));
    expect(sent).toEqual([sent[0], sent[0], sent[0]]);
  });
});
