import { describe, expect, it } from 'vitest';
import { readLine } from '../../../../src/grammar/read-line.js';
import type { Language } from '../../../../src/repair/shop.js';
import { composeMisread } from '../../../../src/reply/compose/misread.js';
import { problemWords } from '../../../../src/reply/compose/problem-words.js';
import { withButtons } from '../../../support/desk-day.js';
import { SHOP } from '../../grammar/line-file.js';

function told(language: Language, line: string): string {
  const read = readLine(line, SHOP);
  return read.ok ? `read as ${read.command.kind}` : withButtons(composeMisread(read.misread, line, { language }));
}

describe('a line that was not understood', () => {
  it.each([
    ['lampe 501', 'Verstanden: lampe, Auftrag 501. Braucht: eine Temperatur für den Strahler. Beispiel für die Form: `lampe 501 65`. Nichts gespeichert.'],
    ['closed 501 banana', 'Verstanden: zu, Auftrag 501. Nicht verstanden: „banana“. Braucht: ein bekanntes Wort. Versuch: `closed 501`. Nichts gespeichert.'],
    ['check 501', 'Verstanden: check, Auftrag 501. Braucht: hart oder weich. Versuch: `check 501 hard`. Nichts gespeichert.\n[hart] check 501 hard\n[weich] check 501 soft'],
    ['air 1,30', 'Verstanden: luft. Nicht verstanden: „1,30“. Braucht: eine Temperatur (1,3) oder eine Uhrzeit (1:30). Beispiel für die Form: `air 1.3`. Nichts gespeichert.\n[1.3] air 1.3'],
    ['off 501 full', 'Verstanden: aus, Auftrag 501. Nicht verstanden: „full“. Braucht: die Zeile ohne Stufe: „aus“ nimmt keine. Versuch: `off 501`. Nichts gespeichert.'],
    ['closed 501 20 min', 'Verstanden: zu, Auftrag 501. Nicht verstanden: „20 min“. Braucht: das Wort „vor“ oder eine Uhrzeit. Versuch: `closed 501 20 min ago`. Nichts gespeichert.\n[vor 20 min] closed 501 20 min ago'],
  ])('%s, in German', (line, answer) => {
    expect(told('de', line)).toBe(answer);
  });

  it.each([
    ['lámpara 501', 'Entendido: lámpara, trabajo 501. Hace falta: una temperatura de la lámpara. Ejemplo de la forma: `lámpara 501 65`. Nada guardado.'],
    ['closed 501 banana', 'Entendido: cerrado, trabajo 501. No entendido: «banana». Hace falta: una palabra conocida. Prueba: `closed 501`. Nada guardado.'],
    ['check 501', 'Entendido: check, trabajo 501. Hace falta: duro o blando. Prueba: `check 501 hard`. Nada guardado.\n[duro] check 501 hard\n[blando] check 501 soft'],
    ['air 1,30', 'Entendido: aire. No entendido: «1,30». Hace falta: una temperatura (1,3) o una hora (1:30). Ejemplo de la forma: `air 1.3`. Nada guardado.\n[1.3] air 1.3'],
    ['off 501 full', 'Entendido: apagada, trabajo 501. No entendido: «full». Hace falta: la línea sin etapa: «apagada» no la lleva. Prueba: `off 501`. Nada guardado.'],
    ['closed 501 20 min', 'Entendido: cerrado, trabajo 501. No entendido: «20 min». Hace falta: la palabra «hace» o una hora. Prueba: `closed 501 20 min ago`. Nada guardado.\n[hace 20 min] closed 501 20 min ago'],
  ])('%s, in Spanish', (line, answer) => {
    expect(told('es', line)).toBe(answer);
  });
});

describe('the words that a misread asks for', () => {
  it.each([
    'was wenn 501 strahler 65 ab 16:00', 'closed 501 vor 20 min', 'übergabe Bo außer 501', 'off 501 weiß nicht wann', 'metal 501 dünn', 'metal 501 flansch', 'prüfen 501 hart',
    'qué pasa si 501 lámpara 65 desde 16:00', 'closed 501 hace 20 min', 'relevo Bo menos 501', 'off 501 no sé cuándo', 'metal 501 fina', 'metal 501 pestaña', 'comprobar 501 duro', 'ficha 501 P2', 'closed 501 um 13:40', 'closed 501 a las 13:40',
  ])('are read: %s', (line) => {
    expect(told('en', line)).toMatch(/^read as /);
  });

  it('say their figures with the sign for decimals of the reader', () => {
    expect((['en', 'de', 'es'] as const).map((language) => problemWords({ is: 'hours-or-clock', hours: 1.3, clock: '1:30' }, { language }))).toEqual(['1.3 h or 1:30 h?', '1,3 h oder 1:30 h', '1,3 h o 1:30 h']);
  });
});
