import { expect, it } from 'vitest';
import type { Language } from '../../../../src/repair/shop.js';
import { jobNo, lampName, personId } from '../../../../src/repair/ids.js';
import type { Refusal } from '../../../../src/repair/refusal.js';
import { celsius } from '../../../../src/cure/units.js';
import { composeRefusal } from '../../../../src/reply/compose/refusal.js';
import { toText } from '../../../../src/reply/to-text.js';
import { exampleShop } from '../../../support/example-shop.js';
import { on } from '../../../support/joint.js';

const SHOP = exampleShop();
const JOB = jobNo('501');

/** What was said, and what stands on the buttons. */
function said(refusal: Refusal, language: Language): string {
  const answer = composeRefusal(refusal, { shop: SHOP, now: on('10:00'), language });
  return [toText(answer), ...answer.buttons.map(({ label, line }) => `[${label}: ${line}]`)].join(' ');
}

/** Read aloud in a workshop, each of them. */
const ANSWERS: readonly (readonly [Refusal, de: string, es: string])[] = [
  [
    { code: 'held', job: JOB, reason: 'two-answers' },
    '501 GESPERRT, zwei Antworten, gilt als weich: der Meister entscheidet.',
    '501 RETENIDO, dos respuestas, cuenta como blando: decide el jefe de taller.',
  ],
  [
    { code: 'lamp-alone', job: JOB, heater: 'lamp', setting: celsius(60), ends: on('18:20'), closes: on('17:00'), stayLine: 'stay 501', airLine: 'cure 501 P1' },
    '501: Strahler 60 °C müsste bis 18:20 laufen, die Werkstatt schließt 17:00, und kein Strahler läuft allein. Wer bleibt? Noch nichts gespeichert. [Ich bleibe: stay 501] [Nur Luft: cure 501 P1]',
    '501: lámpara 60 °C haría falta hasta 18:20, el taller cierra 17:00, y ninguna lámpara funciona sola. ¿Quién se queda? Aún nada guardado. [Me quedo: stay 501] [Solo aire: cure 501 P1]',
  ],
  [
    { code: 'which-unit', value: 150.5, maximum: celsius(85), asCelsius: celsius(65.8), line: 'read 501 150.5F' },
    '150,5 was? Über den 85 °C dieser Karte. 150,5 °F = 65,8 °C. Noch nichts gezählt. [150,5 °F: read 501 150.5F]',
    '¿150,5 qué? Supera los 85 °C de esta ficha. 150,5 °F = 65,8 °C. Aún nada contado. [150,5 °F: read 501 150.5F]',
  ],
  [
    { code: 'wrong-role', role: 'apprentice', may: ['technician', 'foreman'] },
    'Das ist nicht für Azubis, sondern für Techniker oder Meister (Ines, Tomek). Nichts gespeichert.',
    'Eso no es para aprendices, sino para técnico o jefe de taller (Ines, Tomek). Nada guardado.',
  ],
  [
    { code: 'stranger', person: personId('kim'), foreman: personId('ines') },
    'Kim, du stehst nicht auf der Liste der Werkstatt, darum ist nichts gespeichert. Fragen geht: „who waits“, „when 501“. Bitte Ines, `adopt kim technician` zu tippen.',
    'Kim, no estás en la lista del taller, así que nada se ha guardado. Preguntar sí puedes: «who waits», «when 501». Pide a Ines que escriba `adopt kim technician`.',
  ],
  [
    { code: 'lamp-elsewhere', lamp: lampName('A'), heater: 'lamp', job: jobNo('502'), line: 'lamp 501 60 A yes' },
    'Strahler A ist in meinem Buch bei 502 an. Steht jetzt hier? Noch nichts gespeichert. [Steht jetzt hier: lamp 501 60 A yes]',
    'Lámpara A: en mi libro está encendida en 502. ¿Ahora está aquí? Aún nada guardado. [Ahora está aquí: lamp 501 60 A yes]',
  ],
  [
    { code: 'which-question', choices: [{ yes: 'hard', job: JOB, line: 'check 501 j1 handling hard' }, { yes: 'on', job: jobNo('502'), line: 'on 502 j1' }, { yes: 'accept', job: null, line: 'accept' }] },
    'Ja wozu? Mehr als eine Frage ist offen. Noch nichts gespeichert. [501 hart: check 501 j1 handling hard] [502 an: on 502 j1] [Annehmen: accept]',
    '¿Sí a qué? Hay más de una pregunta abierta. Aún nada guardado. [501 duro: check 501 j1 handling hard] [502 encendida: on 502 j1] [Aceptar: accept]',
  ],
  [
    { code: 'undo-too-late', enteredAt: on('07:30') },
    'Das ist 2 h 30 her: gib die richtige Zahl als neuen Eintrag ein oder frag den Meister.',
    'Eso fue hace 2 h 30: anota la cifra correcta como entrada nueva o pregunta al jefe de taller.',
  ],
];

it.each(ANSWERS)('why nothing was stored: $code', (refusal, de, es) => {
  expect([said(refusal, 'de'), said(refusal, 'es')]).toEqual([de, es]);
});
