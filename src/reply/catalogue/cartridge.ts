import { CARTRIDGE_DE } from './cartridge-de.js';
import { CARTRIDGE_EN } from './cartridge-en.js';
import { CARTRIDGE_ES } from './cartridge-es.js';
import { speaker } from './speaker.js';

/** What stands on a cartridge, and what is wrong with it. */
export const sayCartridge = speaker({ en: CARTRIDGE_EN, de: CARTRIDGE_DE, es: CARTRIDGE_ES });
