import { readConfig } from '../../src/config.js';
import { readShop } from '../../src/config/shop-file.js';
import type { OpeningHours, Shop } from '../../src/repair/shop.js';

/** The invented shop that comes with the program, changed as a test needs it. */
export const exampleShop = (change: Partial<Shop> = {}): Shop => ({ ...SHIPPED, ...change });

/** The same hours from Monday to Friday, closed at the weekend. */
export function weekdays(opens: string, closes: string): Shop['hours'] {
  const hours: OpeningHours = { opens: minuteOfDay(opens), closes: minuteOfDay(closes) };
  return { 1: hours, 2: hours, 3: hours, 4: hours, 5: hours, 6: null, 7: null };
}

function minuteOfDay(time: string): number {
  const [hour = '', minute = ''] = time.split(':');
  return Number(hour) * 60 + Number(minute);
}

const SHIPPED = shipped();

function shipped(): Shop {
  const config = readConfig({});
  if (!config.ok) throw new Error(config.problems.join('\n'));
  const shop = readShop(config.config.shop.path);
  if (!shop.ok) throw new Error(JSON.stringify(shop.problems));
  return shop.shop;
}
