import type { Heater } from '../cure/history.js';
import { missing, type Built } from './declaration.js';

export const EITHER_HEATER = 'either lamp or pad';

const USUAL: Readonly<Record<Heater, number>> = { lamp: 65, pad: 60 };

/** The word lamp or pad without the temperature it is set to. */
export const settingMissing = (heater: Heater): Built => missing(`a ${heater} temperature`, `${USUAL[heater]}`, `${USUAL[heater]}C`);
