import { SHOP_DE } from './shop-de.js';
import { SHOP_EN } from './shop-en.js';
import { SHOP_ES } from './shop-es.js';
import { speaker } from './speaker.js';

/** The air of the shop and what was taken back: which waits they moved. */
export const sayShop = speaker({ en: SHOP_EN, de: SHOP_DE, es: SHOP_ES });
