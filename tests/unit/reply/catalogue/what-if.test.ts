import { describe, expect, it } from 'vitest';
import { jobNo } from '../../../../src/repair/ids.js';
import { latestStart } from '../../../../src/repair/latest-start.js';
import { mayNow, type Deed } from '../../../../src/repair/may.js';
import type { Language } from '../../../../src/repair/shop.js';
import { whatIf } from '../../../../src/repair/what-if.js';
import type { Answer } from '../../../../src/reply/answer.js';
import { composeLatestStart, composeLatestStartRefusal } from '../../../../src/reply/compose/latest-start.js';
import { composeMay } from '../../../../src/reply/compose/may.js';
import { composeWhatIf, composeWhatIfRefusal } from '../../../../src/reply/compose/what-if.js';
import { toText } from '../../../../src/reply/to-text.js';
import { on } from '../../../support/joint.js';
import { latestStartCommand, whatIfCommand } from '../../../support/questions.js';
import { Shift, warm } from '../../../support/shift.js';

// Example cards (invented figures) in the example shop.

type Other = Exclude<Language, 'en'>;
const lines = (answer: Answer): string[] => [...toText(answer).split('\n'), ...answer.buttons.map(({ label, line }) => `${label}: ${line}`)];

/** 501 with a card since 09:00, as air is. */
function begun(card: string): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card });
  return shift;
}

function supposed(language: Other, card: string, when: string, change: Parameters<typeof whatIfCommand>[0]): string[] {
  const shift = begun(card);
  const result = whatIf(whatIfCommand(change), shift.situation('tomek', on(when)));
  const setting = { shop: shift.shop, now: on(when), language };
  return lines(result.ok ? composeWhatIf(result.whatIf, setting) : composeWhatIfRefusal(result.refusal, setting));
}

function planned(language: Other, when: string, change: Parameters<typeof latestStartCommand>[0]): string[] {
  const shift = new Shift();
  const result = latestStart(latestStartCommand(change), shift.situation('tomek', on(when)));
  const setting = { shop: shift.shop, now: on(when), language };
  return lines(result.ok ? composeLatestStart(result.plan, setting) : composeLatestStartRefusal(result.refusal, setting));
}

/** P1 at 65 °C from 09:00: handling 09:25, confirmed 09:27; full 10:20. */
function may(language: Other, deed: Deed, when: string): string[] {
  const shift = begun('P1');
  shift.enters('tomek', '09:00', { kind: 'read', job: '501', value: warm(65) });
  if (when > '09:27') shift.enters('ines', '09:27', { kind: 'check', job: '501', milestone: 'handling', result: 'hard' });
  return lines(composeMay(mayNow({ kind: 'may', job: jobNo('501'), joint: null, deed }, shift.situation('wren', on(when))), { shop: shift.shop, now: on(when), language }));
}

const LAMP = { setting: warm(65) };
const FRIDAY = on('Fri 16:00');
const P1 = { de: 'P1 ist eine Beispielkarte, nicht dein Datenblatt.', es: 'P1 es una ficha de ejemplo, no tu hoja de datos.' };

/** Read aloud in a workshop, each of them. */
const ANSWERS: readonly (readonly [string, Other, () => string[], readonly string[]])[] = [
  ['what if', 'de', () => supposed('de', 'P1', '10:00', LAMP), [
    '501 was wäre wenn, nichts wird gespeichert. Wie es steht: Handfestigkeit 14:00, Endfestigkeit noch keine Zeit.',
    'Strahler 65 °C ab 10:00: Handfestigkeit 10:39, Endfestigkeit 11:38, wenn eine Messung 65 °C zeigt, bis 10:20.',
    'Strahler 40 °C: Handfestigkeit 11:15, Endfestigkeit noch keine Zeit, 87 % der Wartezeit bis 17:00, wenn eine Messung es zeigt, bis 10:20.',
    'Strahler 30 °C: Handfestigkeit 12:10, Endfestigkeit noch keine Zeit, 40 % der Wartezeit bis 17:00, wenn eine Messung es zeigt, bis 10:20.',
    'Kein Strahler läuft allein: nach 17:00 zählt er nur, wenn jemand bleibt.',
    P1.de,
    'Strahler 65 °C: lamp 501 j1 65C',
  ]],
  ['what if', 'es', () => supposed('es', 'P1', '10:00', LAMP), [
    '501 qué pasaría, no se guarda nada. Tal como está: manipulación 14:00, final aún sin hora.',
    'Lámpara 65 °C desde 10:00: manipulación 10:39, final 11:38, si una lectura muestra 65 °C antes de 10:20.',
    'Lámpara 40 °C: manipulación 11:15, final aún sin hora, 87 % de la espera hasta 17:00, si una lectura lo muestra antes de 10:20.',
    'Lámpara 30 °C: manipulación 12:10, final aún sin hora, 40 % de la espera hasta 17:00, si una lectura lo muestra antes de 10:20.',
    'Ninguna lámpara funciona sola: después de 17:00 solo cuenta si alguien se queda.',
    P1.es,
    'Lámpara 65 °C: lamp 501 j1 65C',
  ]],
  ['too cold a lamp', 'de', () => supposed('de', 'P2', '10:00', { setting: warm(30) }), ['Strahler 30 °C zählt nicht: das Programm von P2 beginnt bei 35 °C. Nichts wird gespeichert.']],
  ['too cold a lamp', 'es', () => supposed('es', 'P2', '10:00', { setting: warm(30) }), ['Lámpara 30 °C no cuenta nada: la receta de P2 empieza en 35 °C. No se guarda nada.']],
  ['the latest start', 'de', () => planned('de', 'Tue 08:00', { card: 'P1', readyBy: FRIDAY }), [
    '501 P1 Plan, nichts wird gespeichert: Endfestigkeit bis Fr 16:00, wenn geschlossen bis Fr 14:20 mit Strahler 65 °C.',
    'Strahler 40 °C: schließen bis Fr 07:44.',
    'Strahler 30 °C: schließen bis Mi 16:10.',
    'Nur Luft: schließen bis Di 08:30, wenn die Luft jeden Morgen 20 °C hat.',
    'Wenn es so warm wird: binnen 20 min messen. Kein Strahler läuft allein: aus bei Feierabend.',
    P1.de,
  ]],
  ['the latest start', 'es', () => planned('es', 'Tue 08:00', { card: 'P1', readyBy: FRIDAY }), [
    '501 P1 plan, no se guarda nada: resistencia final para vie 16:00 si se cierra antes de vie 14:20 con lámpara 65 °C.',
    'Lámpara 40 °C: cerrar antes de vie 07:44.',
    'Lámpara 30 °C: cerrar antes de mié 16:10.',
    'Solo aire: cerrar antes de mar 08:30, si cada mañana el aire está a 20 °C.',
    'Si llega a esa temperatura: toma una lectura en 20 min. Ninguna lámpara funciona sola: apagada al cierre.',
    P1.es,
  ]],
  ['too late', 'de', () => planned('de', 'Fri 15:30', { card: 'F1', readyBy: FRIDAY }).slice(0, 2), ['501 F1: zu spät für Schleifzeit bis Fr 16:00. Jetzt geschlossen mit Strahler 60 °C: fällig Fr 16:33.', 'Strahler 30 °C: zu spät (Fr 12:20); jetzt geschlossen: fällig Mo 10:00.']],
  ['too late', 'es', () => planned('es', 'Fri 15:30', { card: 'F1', readyBy: FRIDAY }).slice(0, 2), ['501 F1: demasiado tarde para tiempo de lijado (vie 16:00). Cerrado ahora con lámpara 60 °C toca vie 16:33.', 'Lámpara 30 °C: demasiado tarde (vie 12:20); cerrado ahora toca lun 10:00.']],
  ['may I, too early', 'de', () => may('de', 'sand', '09:10'), ['501 NOCH NICHT. Endfestigkeit frühestens 10:20. Ausgequollener Kleber setzt das Papier zu und reißt Kanten mit.', P1.de]],
  ['may I, too early', 'es', () => may('es', 'sand', '09:10'), ['501 AÚN NO. Final: 10:20 como pronto. El adhesivo rebosado emboza el papel y arranca bordes.', P1.es]],
  ['may I, confirmed', 'de', () => may('de', 'unclamp', '09:30').slice(0, 1), ['501 Handfestigkeit bestätigt 09:27 von Ines. Datenblatt und Reparaturmethode entscheiden.']],
  ['may I, confirmed', 'es', () => may('es', 'unclamp', '09:30').slice(0, 1), ['501 manipulación: confirmado 09:27 por Ines. Deciden la hoja de datos y el método de reparación.']],
];

describe('answers to what somebody wants to do', () => {
  it.each(ANSWERS)('%s in %s', (_, __, heard, expected) => {
    expect(heard()).toEqual(expected);
  });

  it('names the opening at which it can be closed, its weekday as a weekday is written', () => {
    const asked = latestStart(latestStartCommand({ card: 'F1', readyBy: on('Sat 12:00') }), new Shift().situation('tomek', on('Sat 09:00')));
    if (!asked.ok) throw new Error(asked.refusal.code);
    expect(toText(composeLatestStart(asked.plan, { shop: new Shift().shop, now: on('Sat 09:00') }))).toMatch(/; closed Mon 07:30 due /);
  });
});
