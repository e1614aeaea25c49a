import { describe, expect, it } from 'vitest';
import { lampName } from '../../../../src/repair/ids.js';
import type { Language } from '../../../../src/repair/shop.js';
import { composeWhy } from '../../../../src/reply/compose/why.js';
import { toText } from '../../../../src/reply/to-text.js';
import { on } from '../../../support/joint.js';
import { Shift, warm } from '../../../support/shift.js';

const why = (shift: Shift, job: string, at: string, language: Language): string[] => toText(composeWhy(shift.outlook(job), { shop: shift.shop, now: on(at), language })).split('\n');

/** 501 with P1 under a lamp of 60 °C, read twice, at seconds that need decimals. */
function underLamp(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
  shift.enters('tomek', '08:10', { kind: 'lamp', job: '501', setting: warm(60), lamp: lampName('A') });
  shift.enters('tomek', '08:20:20', { kind: 'read', job: '501', value: warm(40) });
  shift.enters('tomek', '08:40:20', { kind: 'read', job: '501', value: warm(52) });
  return shift;
}

/** 502 with K: 60 min at 30 °C and 90 at 60 °C, after three hours in air. */
function byRecipe(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '502', card: 'K' });
  shift.enters('tomek', '11:00', { kind: 'lamp', job: '502', setting: warm(30) });
  shift.enters('tomek', '12:05', { kind: 'check', job: '502', milestone: 'handling', result: 'hard' });
  shift.enters('tomek', '12:06', { kind: 'lamp', job: '502', setting: warm(60) });
  return shift;
}

function overNight(): Shift {
  const shift = new Shift();
  shift.enters('ines', 'Tue 15:20', { kind: 'cure', job: '503', card: 'P1' });
  return shift;
}

/** Lines of the sum and the minute it comes to, as figures a calculator takes; of the last line in any order. */
const figures = (lines: readonly string[]): string[][] =>
  lines.filter((line) => /^\D*\d\d:\d\d.*-|100 %/.test(line)).map((line) => {
    const found = line.replace(/(\d),(\d)/g, '$1.$2').match(/\d+(?:[.:]\d+)*/g) ?? [];
    return /100 %/.test(line) ? found.sort() : found;
  });

describe('the sum behind a time', () => {
  it.each([
    ['de', [
      '501 Handfestigkeit, Karte P1 (example 1), ab 08:00. Regel: Minuten / Zeilenminuten je Temperatur, zusammengezählt.',
      '08:00-08:20:20 übliche Luft 20 °C: 20,3 von 300 min = 6,8 %',
      '08:20:20-08:40:20 kältere von zwei Messungen 40 °C: 20 von 75 min = 26,7 %',
      '08:40:20-08:45 Messung 52 °C: 4,7 von 44,3 min = 10,5 %',
      'wenn es so bleibt: 08:45-09:09:47 Messung 52 °C: 24,8 von 44,3 min = 56 %',
      'Summe käme 09:10 auf 100 %, aufgerundet.',
    ]],
    ['es', [
      '501 resistencia de manipulación, ficha P1 (example 1), desde 08:00. Regla: minutos / minutos de la fila a cada temperatura, sumados.',
      '08:00-08:20:20 aire habitual 20 °C: 20,3 de 300 min = 6,8 %',
      '08:20:20-08:40:20 la más fría de dos lecturas 40 °C: 20 de 75 min = 26,7 %',
      '08:40:20-08:45 lectura 52 °C: 4,7 de 44,3 min = 10,5 %',
      'si sigue así: 08:45-09:09:47 lectura 52 °C: 24,8 de 44,3 min = 56 %',
      'La suma llegaría al 100 %: 09:10, redondeado hacia arriba.',
    ]],
  ] as const)('stands line by line in %s', (language, lines) => {
    expect(why(underLamp(), '501', '08:45:30', language).slice(0, -1)).toEqual(lines);
  });

  it('says in German and Spanish why nothing counts', () => {
    expect(why(byRecipe(), '502', '12:10', 'de')).toEqual(expect.arrayContaining(['08:00-11:00 Strahler aus: nichts zählt', '12:00-12:06 zwischen den Stufen: nichts zählt']));
    expect(why(byRecipe(), '502', '12:10', 'es')).toEqual(expect.arrayContaining(['08:00-11:00 lámpara apagada: no cuenta nada', '12:00-12:06 entre etapas: no cuenta nada']));
    expect(why(overNight(), '503', 'Wed 07:30', 'de')).toContain('Di 17:00-… Nacht 12 °C: schläft, zu kalt, nichts zählt');
    expect(why(overNight(), '503', 'Wed 07:30', 'es')).toContain('mar 17:00-… noche 12 °C: duerme, demasiado frío, no cuenta nada');
  });

  it.each([
    ['rows', underLamp, '501', '08:45:30'],
    ['a recipe', byRecipe, '502', '12:10'],
    ['a night', overNight, '503', 'Wed 07:30'],
  ] as const)('has the same figures in every language: %s', (_, made, job, at) => {
    const english = figures(why(made(), job, at, 'en'));
    expect(english.length).toBeGreaterThan(1);
    for (const language of ['de', 'es'] as const) expect(figures(why(made(), job, at, language))).toEqual(english);
  });
});
