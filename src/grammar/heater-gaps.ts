import type { Heater } from '../cure/history.js';
import { missing, type Built } from './declaration.js';

const USUAL: Readonly<Record<Heater, number>> = { lamp: 65, pad: 60 };

/** The word lamp or pad without the temperature it is set to. */
export const settingMissing = (heater: Heater): Built => missing(`${heater}-temperature`, `${USUAL[heater]}`, `${USUAL[heater]}C`);
