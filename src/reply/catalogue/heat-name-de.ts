import type { HEAT_NAME_EN } from './heat-name-en.js';

export const HEAT_NAME_DE: Readonly<Record<keyof typeof HEAT_NAME_EN, string>> = {
  'air-only': 'nur Luft',
  heater: '{heater, select, pad {Heizmatte} other {Strahler}} {setting}',
  recipe: 'Strahler {settings}',
  then: '{before}, dann {after}',
};
