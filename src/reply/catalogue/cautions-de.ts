import type { CAUTIONS_EN } from './cautions-en.js';

export const CAUTIONS_DE: Readonly<Record<keyof typeof CAUTIONS_EN, string>> = {
  'before-work': 'Batterie, Airbags, Hochvolt: von einer fachkundigen Person spannungsfrei gemacht? Nicht bekannt: frag den Meister.',
  solvent: 'Dämpfe: Tor auf, kein Strahler und keine Funken, bis es trocken ist. Lappen in den Behälter mit Deckel.',
  paste: 'Handschuhe, Schutzbrille.',
  clamps: 'Schutzbrille. Finger weg von der Quetschstelle der Klemmen.',
  'weld-wet': 'Nur wo die Reparaturmethode es vorsieht. Absaugung und Atemschutz; Hohlraum frei, Verkleidung, Kraftstoff und Wachs weg; eine zweite Person mit Feuerlöscher.',
  'weld-after': 'Hitze zieht eine Handbreit weit: kurze Punkte, dazwischen abkühlen lassen, aufhören, wenn es riecht. Eine zweite Person mit Feuerlöscher.',
  'fire-watch': 'Jemand bleibt und schaut nach: Rückseite, Hohlraum, Verkleidung. Feuerlöscher griffbereit.',
  lamp: 'Strahler und Heizmatte nie unbeaufsichtigt lassen. Nichts Lösemittelfeuchtes in der Nähe, kein Reifen, keine Glaskante, kein Hochvoltteil.',
  battery: 'Heiß genug, um einer Batterie zu schaden: Hochvoltteile nach Herstellervorgabe spannungsfrei und abgeschirmt oder ausgebaut? Die Wärme nie unbeaufsichtigt lassen.',
  reading: 'Fühler statt Finger, an der kältesten Stelle. Blankes Metall täuscht das Infrarotthermometer.',
  'clamps-off': 'Klemmen einzeln ab, wenn die Reparaturmethode es zulässt; aufhören, wenn sich der Spalt bewegt.',
  sanding: 'Staubmaske und Absaugung. Aluminiumstaub und Stahlfunken nie in dieselbe Absaugung.',
  filler: 'Peroxidhärter: Schutzbrille. Mehr davon härtet nicht schneller.',
  isocyanate: 'Fremdbelüftete Maske nach örtlicher Vorschrift; eine Papiermaske reicht nicht.',
  bake: 'Batterien, Gasdruckfedern, Spraydosen draußen? Es zählt die niedrigste Grenze aller Materialien in diesem Auto.',
  wax: '**Ab jetzt an diesem Auto nicht schweißen und nicht in den Ofen**: der Nebel brennt.',
  glass: 'Keine Tür zuschlagen, ein Fenster einen Spalt auf, Klebeband bleibt dran, das Auto bleibt stehen.',
};
