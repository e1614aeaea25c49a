import type { Heat } from '../../repair/heat-choices.js';
import { degrees, type Setting } from './words.js';

/** `lamp 40 °C`, `lamp 35 °C then 55 °C`, `air only`. */
export function heatName(heat: Heat, setting: Setting): string {
  switch (heat.kind) {
    case 'air':
      return 'air only';
    case 'heater':
      return `${heat.heater} ${degrees(heat.setting, setting)}`;
    case 'recipe':
      return `lamp ${heat.stages.map((stage) => degrees(stage.lamp, setting)).join(' then ')}`;
  }
}
