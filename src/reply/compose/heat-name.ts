import type { Heat } from '../../repair/heat-choices.js';
import { sayHeatName } from '../catalogue/heat-name.js';
import { degrees, type Setting } from './words.js';

/** `lamp 40 °C`, `lamp 35 °C then 55 °C`, `air only`. */
export function heatName(heat: Heat, setting: Setting): string {
  switch (heat.kind) {
    case 'air':
      return sayHeatName(setting, 'air-only');
    case 'heater':
      return sayHeatName(setting, 'heater', { heater: heat.heater, setting: degrees(heat.setting, setting) });
    case 'recipe':
      return sayHeatName(setting, 'recipe', { settings: stagesWords(heat.stages.map((stage) => degrees(stage.lamp, setting)), setting) });
  }
}

/** One setting after the other. */
const stagesWords = ([first = '', ...others]: readonly string[], setting: Setting): string =>
  others.reduce((before, after) => sayHeatName(setting, 'then', { before, after }), first);
