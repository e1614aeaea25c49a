import type { HEAT_NAME_EN } from './heat-name-en.js';

export const HEAT_NAME_ES: Readonly<Record<keyof typeof HEAT_NAME_EN, string>> = {
  'air-only': 'solo aire',
  heater: '{heater, select, pad {manta} other {lámpara}} {setting}',
  recipe: 'lámpara {settings}',
  then: '{before} y luego {after}',
};
