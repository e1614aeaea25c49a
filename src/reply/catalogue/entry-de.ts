import type { ENTRY_EN } from './entry-en.js';

export const ENTRY_DE: Readonly<Record<keyof typeof ENTRY_EN, string>> = {
  'nothing-waits': 'Auf dieser Karte gibt es nichts mehr abzuwarten.',
  'forecast-was': '{forecast} (vorher {was}).',
  'open-was-on': 'Auf {card} war es {at}.',
  'open-used': '{used} von {limit} min gebraucht.',
  'air-along': 'Luft {air}; das Blech kann noch kälter sein: messen.',
  'metal-margin': 'Metall {margin}.',
  'too-hot': '**{title} ZU HEISS {value}**, Grenze {limit}.',
  'too-hot-card': '**{title} ist {card}, nicht {before}: ZU HEISS {value}**, Grenze {limit}.',
  'heat-away': '{heater, select, pad {Heizmatte} other {Strahler}} jetzt aus oder weg. Der Meister bekommt Bescheid; die Aushärtung ist gesperrt.',
};
