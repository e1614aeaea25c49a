import { describe, expect, it } from 'vitest';
import { cureFormView } from '../../../src/chat/slack/cure-form-view.js';
import { formLine } from '../../../src/chat/slack/form-line.js';
import { homeView } from '../../../src/chat/slack/home-view.js';
import type { CureForm } from '../../../src/clerk/desk.js';
import { readLine } from '../../../src/grammar/read-line.js';
import type { Language } from '../../../src/repair/shop.js';
import { sayForm } from '../../../src/reply/catalogue/form.js';
import { answerOf } from '../../support/fake-desk.js';
import { readModal } from '../../support/slack-stand-in/check-view.js';
import { SHOP } from '../grammar/line-file.js';

const FORM: CureForm = { cards: [{ name: 'S1', title: 'Example sealer', needsDepth: true }], lamps: ['A'], pads: ['M1'], last: { card: 'S1', heat: null } };
const EMPTY = { job: null, joint: null, card: null, depth: null, heat: null, setting: null, when: null, time: null };

/** Every word of the form in the order of reading; what is chosen keeps the value that the line is made of. */
function wordsOf(language: Language): string[] {
  const view = cureFormView(FORM, { language });
  if (readModal(JSON.parse(JSON.stringify(view))) === null) throw new Error('the platform would not take this form');
  return [...JSON.stringify(view).matchAll(/"text":"([^"]+)"/g)].map(([, text = '']) => text);
}

describe('the form for a new cure', () => {
  it('is German for whoever reads German', () => {
    expect(wordsOf('de')).toEqual([
      'Aushärtung beginnen', 'Beginnen', 'Abbrechen',
      'Auftrag', '501', 'Fuge', 'j1', 'Nur wenn der Auftrag mehr als eine hat.', 'Materialkarte', 'S1: Example sealer', 'S1: Example sealer', 'Raupentiefe in mm', '3',
      'Wärme', 'Nur Luft', 'Strahler A', 'Heizmatte M1', 'Strahler', 'Heizmatte', 'Nur Luft',
      'Einstellung von Strahler oder Heizmatte', '35', 'Geschlossen und Wärme an', 'jetzt', 'vor 5 min', 'vor 15 min', 'vor 30 min', 'jetzt',
      'Oder eine andere Zeit', '13:40 oder vor 25 min',
    ]);
  });

  it('is Spanish for whoever reads Spanish', () => {
    expect(wordsOf('es')).toEqual([
      'Empezar un curado', 'Empezar', 'Cancelar',
      'Trabajo', '501', 'Junta', 'j1', 'Solo si el trabajo tiene más de una.', 'Ficha de material', 'S1: Example sealer', 'S1: Example sealer', 'Profundidad del cordón en mm', '3',
      'Calor', 'Solo aire', 'lámpara A', 'manta M1', 'lámpara', 'manta', 'Solo aire',
      'Ajuste de la lámpara o la manta', '35', 'Cerrado y calor encendido', 'ahora', 'hace 5 min', 'hace 15 min', 'hace 30 min', 'ahora',
      'U otra hora', '13:40, o hace 25 min',
    ]);
  });

  it.each(['en', 'de', 'es'] as const)('sends the same values in %s, and fits the platform', (language) => {
    expect([...JSON.stringify(cureFormView(FORM, { language })).matchAll(/"value":"([^"]+)"/g)].map(([, value]) => value)).toEqual(['S1', 'S1', 'air', 'lamp A', 'pad M1', 'lamp', 'pad', 'air', '0', '5', '15', '30', '0']);
  });

  it.each(['en', 'de', 'es'] as const)('offers times that can be read, in %s', (language) => {
    const said = sayForm({ language }, 'time-example').split(/, or | oder |, o /);
    expect(said.map((time) => readLine(`closed 501 ${time === '13:40' ? `at ${time}` : time}`, SHOP).ok)).toEqual([true, true]);
  });

  it.each([
    ['de', { job: 'Eine Auftragsnummer, etwa 501.', joint: 'Eine Fuge heißt j1, j2, …', card: 'Wähl die Materialkarte.', depth: 'Millimeter, etwa 3 oder 4,5.', setting: 'Eine Temperatur, etwa 35 oder 95F.' }],
    ['es', { job: 'Un número de trabajo, como 501.', joint: 'Una junta es j1, j2, …', card: 'Elige la ficha de material.', depth: 'Milímetros, como 3 o 4,5.', setting: 'Una temperatura, como 35 o 95F.' }],
  ] as const)('says in %s what is wrong with a field', (language, errors) => {
    expect(formLine({ ...EMPTY, joint: 'x', depth: 'x', heat: 'lamp', setting: 'x' }, { language })).toEqual({ ok: false, errors });
  });

  it.each([
    ['de', 'Eine Einstellung ist eingetippt, aber kein Strahler und keine Heizmatte gewählt: wähl eins davon, oder lösch die Einstellung.', 'Welche Einstellung? Etwa 35.'],
    ['es', 'Hay un ajuste escrito, pero ninguna lámpara ni manta elegida: elige una, o borra el ajuste.', '¿Qué ajuste? Como 35.'],
  ] as const)('says in %s that heat and setting do not belong together', (language, noHeater, noSetting) => {
    const filled = { ...EMPTY, job: '501', card: 'P2' };
    expect(formLine({ ...filled, heat: 'air', setting: '35' }, { language })).toEqual({ ok: false, errors: { heat: noHeater } });
    expect(formLine({ ...filled, heat: 'lamp' }, { language })).toEqual({ ok: false, errors: { setting: noSetting } });
  });
});

describe('the home tab', () => {
  it.each([
    ['de', '*Meine Fugen*|Keine deiner Fugen wartet auf etwas.|*Alles, was wartet*|x|Wer wartet|Strahler|Hilfe'],
    ['es', '*Mis curados*|Ninguno de tus curados espera nada.|*Todo lo que espera*|x|Quién espera|Lámparas|Ayuda'],
  ] as const)('is all %s', (language, words) => {
    const view = JSON.stringify(homeView({ mine: [], waiting: answerOf('x') }, { language }));
    expect([...view.matchAll(/"text":"([^"]+)"/g)].map(([, text]) => text).join('|')).toBe(words);
    expect([...view.matchAll(/"value":"([^"]+)"/g)].map(([, line]) => line)).toEqual(['who waits', 'lamps', 'help']);
  });
});
