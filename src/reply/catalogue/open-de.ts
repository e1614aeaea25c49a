import type { OPEN_EN } from './open-en.js';

export const OPEN_DE: Readonly<Record<keyof typeof OPEN_EN, string>> = {
  'close-panel': 'Blech schließen bis **{at}** ({figures}).',
  'close-glass': 'Scheibe einsetzen bis **{at}** ({figures}).',
  'close-bead': 'Raupe abziehen bis **{at}** ({figures}).',
  'tap-panel': 'Tippe auf „Geschlossen“, wenn das Blech sitzt.',
  'tap-glass': 'Tippe auf „Geschlossen“, wenn die Scheibe sitzt.',
  'tap-bead': 'Tippe auf „Geschlossen“, wenn die Raupe abgezogen ist.',
  'no-sheet-time': '{card} hat **keine Angabe** zur offenen Zeit: schau ins Datenblatt.',
  'do-not-start': '**Nicht anfangen**: {temperature} ist heißer als jede Zeile zur offenen Zeit von {card}.',
  'limit-held': '**GESPERRT**: offene Zeit bis **{at}** überschritten ({figures}), der Meister entscheidet.',
  'limit-decided': 'Offene Zeit bis **{at}** überschritten ({figures}), vom Meister entschieden.',
  'figures-at': '{minutes} min bei {temperature}',
  'figures-unknown': '{minutes} min, Luft nicht bekannt',
  'figures-were': 'Es waren {figures}.',
  'damp-held': '**GESPERRT**: {why}. Der Meister entscheidet.',
  'how-deep': '**Wie tief ist die Raupe?** Bis dahin keine Zeit für die Durchhärtung.',
  depth: '{depth, number} mm',
};
