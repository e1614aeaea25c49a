import { HEAT_NAME_DE } from './heat-name-de.js';
import { HEAT_NAME_EN } from './heat-name-en.js';
import { HEAT_NAME_ES } from './heat-name-es.js';
import { speaker } from './speaker.js';

/** Names of the heat that could be given to a joint. */
export const sayHeatName = speaker({ en: HEAT_NAME_EN, de: HEAT_NAME_DE, es: HEAT_NAME_ES });
