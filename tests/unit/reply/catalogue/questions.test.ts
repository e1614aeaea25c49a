import { describe, expect, it } from 'vitest';
import { lampName } from '../../../../src/repair/ids.js';
import type { Language } from '../../../../src/repair/shop.js';
import { heatName } from '../../../../src/reply/compose/heat-name.js';
import { composeWhen, safetyTail } from '../../../../src/reply/compose/questions.js';
import { toText } from '../../../../src/reply/to-text.js';
import { celsius, minutes } from '../../../../src/cure/units.js';
import { on } from '../../../support/joint.js';
import { Shift, warm } from '../../../support/shift.js';

const when = (shift: Shift, at: string, language: Language): string[] => toText(composeWhen(shift.outlook('501'), { shop: shift.shop, now: on(at), language })).split('\n');

function underLamp(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
  shift.enters('tomek', '09:30', { kind: 'closed', job: '501' });
  shift.enters('ines', '09:31', { kind: 'release', job: '501' });
  shift.enters('tomek', '09:32', { kind: 'lamp', job: '501', setting: warm(60), lamp: lampName('A') });
  return shift;
}

describe('the answer about one job', () => {
  it.each([
    ['de', ['501 P1, Tomek, Strahler A 60 °C.', /^Handfestigkeit frühestens 14:30, eher später; etwa 10:\d\d, wenn eine Messung es zeigt\.$/, 'Offene Zeit bis 09:00 war überschritten, vom Meister entschieden.']],
    ['es', ['501 P1, Tomek, lámpara A 60 °C.', /^Resistencia de manipulación: como pronto 14:30, seguramente más tarde; sobre 10:\d\d si una lectura lo muestra\.$/, 'Se pasó el tiempo abierto (hasta 09:00); lo decidió el jefe de taller.']],
  ] as const)('in %s', (language, [head, first, passed]) => {
    const lines = when(underLamp(), '09:34', language);
    expect(lines.slice(0, 2)).toEqual([head, expect.stringMatching(first)]);
    expect(lines).toContain(passed);
  });

  it('names the heat that could be given', () => {
    const setting = { shop: new Shift().shop, now: on('08:00') };
    const recipe = { kind: 'recipe', stages: [35, 55].map((lamp) => ({ lamp: celsius(lamp), minutes: minutes(30), reaches: null })) } as const;
    expect((['en', 'de', 'es'] as const).map((language) => heatName(recipe, { ...setting, language }))).toEqual(['lamp 35 °C then 55 °C', 'Strahler 35 °C, dann 55 °C', 'lámpara 35 °C y luego 55 °C']);
    expect((['de', 'es'] as const).map((language) => heatName({ kind: 'heater', heater: 'pad', setting: celsius(42.5) }, { ...setting, language }))).toEqual(['Heizmatte 42,5 °C', 'manta 42,5 °C']);
  });

  it('ends where it has to with what comes first', () => {
    expect(safetyTail({ language: 'de' })).toBe('Datenblatt, Methode des Fahrzeugherstellers, örtliche Vorschriften und deine Berechtigung gehen vor. Das ist eine Erinnerung, keine Freigabe.');
    expect(safetyTail({ language: 'es' })).toBe('Antes van la hoja de datos, el método del fabricante del vehículo, las normas locales y tu habilitación. Esto es un recordatorio, no un permiso.');
  });
});
