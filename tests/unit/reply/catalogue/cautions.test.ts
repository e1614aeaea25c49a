import { describe, expect, it } from 'vitest';
import { CAUTIONS, type CautionKind } from '../../../../src/repair/procedure.js';
import { LANGUAGES } from '../../../../src/repair/shop.js';
import { cautionLine } from '../../../../src/reply/compose/cautions.js';

const in3 = (kind: CautionKind): string[] => LANGUAGES.map((language) => cautionLine(kind, { language }));

/** What a line warns of or asks for, in each language: none may lose it. Common practice, no source, as the lines themselves. */
const KEPT: readonly (readonly [CautionKind, readonly (readonly [en: string, de: string, es: string])[]])[] = [
  ['before-work', [['Battery', 'Batterie', 'Batería'], ['airbags', 'Airbags', 'airbags'], ['high voltage', 'Hochvolt', 'alta tensión'], ['made dead', 'spannungsfrei', 'sin tensión'], ['qualified', 'fachkundigen', 'cualificada'], ['foreman', 'Meister', 'jefe de taller']]],
  ['solvent', [['door open', 'Tor auf', 'puerta abierta'], ['no lamp', 'kein Strahler', 'ni lámpara'], ['no spark', 'keine Funken', 'ni chispas'], ['lidded', 'mit Deckel', 'con tapa']]],
  ['paste', [['Gloves', 'Handschuhe', 'Guantes'], ['eyes', 'Schutzbrille', 'gafas']]],
  ['clamps', [['Eyes', 'Schutzbrille', 'Gafas'], ['Fingers', 'Finger', 'Dedos']]],
  ['weld-wet', [['Only where', 'Nur wo', 'Solo donde'], ['repair method', 'Reparaturmethode', 'método de reparación'], ['Extraction', 'Absaugung', 'Extracción'], ['mask', 'Atemschutz', 'mascarilla'], ['cavity', 'Hohlraum', 'cavidad'], ['trim', 'Verkleidung', 'guarnecidos'], ['fuel', 'Kraftstoff', 'combustible'], ['wax', 'Wachs', 'cera'], ['second person with an extinguisher', 'zweite Person mit Feuerlöscher', 'segunda persona con extintor']]],
  ['weld-after', [["hand's width", 'Handbreit', 'ancho de mano'], ['short spots', 'kurze Punkte', 'puntos cortos'], ['cool', 'abkühlen', 'enfriar'], ['stop if', 'aufhören, wenn', 'detente si'], ['second person with an extinguisher', 'zweite Person mit Feuerlöscher', 'segunda persona con extintor']]],
  ['fire-watch', [['stays and looks', 'bleibt und schaut', 'se queda y mira'], ['far side', 'Rückseite', 'cara opuesta'], ['cavity', 'Hohlraum', 'cavidad'], ['trim', 'Verkleidung', 'guarnecidos'], ['Extinguisher at hand', 'Feuerlöscher griffbereit', 'Extintor a mano']]],
  ['lamp', [['Never leave', 'nie unbeaufsichtigt', 'Nunca dejes'], ['pad', 'Heizmatte', 'manta'], ['solvent', 'Lösemittel', 'disolvente'], ['tyre', 'Reifen', 'neumático'], ['glass edge', 'Glaskante', 'canto de cristal'], ['high-voltage', 'Hochvolt', 'alta tensión']]],
  ['battery', [['battery', 'Batterie', 'batería'], ['made dead', 'spannungsfrei', 'sin tensión'], ['shielded or out', 'abgeschirmt oder ausgebaut', 'protegidas o desmontadas'], ['vehicle maker', 'Hersteller', 'fabricante del vehículo'], ['Never leave', 'nie unbeaufsichtigt', 'Nunca dejes']]],
  ['reading', [['Probe, not finger', 'Fühler statt Finger', 'Sonda, no el dedo'], ['coldest', 'kältesten', 'más frío'], ['infrared', 'Infrarot', 'infrarrojo']]],
  ['clamps-off', [['one at a time', 'einzeln', 'de una en una'], ['if the repair method agrees', 'wenn die Reparaturmethode es zulässt', 'si el método de reparación lo permite'], ['stop if', 'aufhören, wenn', 'detente si']]],
  ['sanding', [['Mask', 'Staubmaske', 'Mascarilla'], ['extraction', 'Absaugung', 'aspiración'], ['Aluminium dust', 'Aluminiumstaub', 'Polvo de aluminio'], ['steel sparks', 'Stahlfunken', 'chispas de acero'], ['never', 'nie', 'nunca']]],
  ['filler', [['Peroxide', 'Peroxid', 'peróxido'], ['eyes', 'Schutzbrille', 'gafas'], ['no faster', 'nicht schneller', 'no lo acelera']]],
  ['isocyanate', [['Air-fed mask', 'Fremdbelüftete Maske', 'Máscara con suministro de aire'], ['local rule', 'örtlicher Vorschrift', 'norma local'], ['not enough', 'reicht nicht', 'no basta']]],
  ['bake', [['Batteries', 'Batterien', 'baterías'], ['gas struts', 'Gasdruckfedern', 'amortiguadores de gas'], ['aerosol cans', 'Spraydosen', 'aerosoles'], ['lowest limit of every', 'niedrigste Grenze aller', 'límite más bajo de todos']]],
  ['wax', [['no welding', 'nicht schweißen', 'ni soldar'], ['no bake', 'nicht in den Ofen', 'ni meter en el horno'], ['burns', 'brennt', 'arde']]],
  ['glass', [['No slamming', 'Keine Tür zuschlagen', 'Sin portazos'], ['window ajar', 'Fenster einen Spalt auf', 'ventanilla entreabierta'], ['tape stays', 'Klebeband bleibt dran', 'la cinta se queda'], ['the car stands', 'das Auto bleibt stehen', 'el coche no se mueve']]],
];

describe('a caution', () => {
  it.each(KEPT)('%s says the same in every language', (kind, kept) => {
    const lines = in3(kind);
    for (const words of kept) expect(words.filter((word, index) => lines[index]?.includes(word) !== true)).toEqual([]);
  });

  it('none is left out here', () => {
    expect(KEPT.map(([kind]) => kind).sort()).toEqual([...CAUTIONS].sort());
  });

  it('is marked in every language where it is in one', () => {
    for (const kind of CAUTIONS) expect(new Set(in3(kind).map((words) => words.split('**').length)).size).toBe(1);
  });

  it('stays short enough to be read', () => {
    for (const kind of CAUTIONS) {
      const [english = '', ...others] = in3(kind);
      for (const words of others) expect(words.length).toBeLessThan(english.length * 1.35 + 25);
    }
  });
});
