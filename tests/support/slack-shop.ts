import { celsius, minutes } from '../../src/cure/units.js';
import { lampName, personId } from '../../src/repair/ids.js';
import type { Shop } from '../../src/repair/shop.js';

const DAY = { opens: 8 * 60, closes: 17 * 60 };

/** A shop whose people are on the chat platform: Anna by id, Walter not at all. */
export function slackShop(): Shop {
  return {
    name: 'Example shop',
    zone: 'Europe/Berlin',
    hours: { 1: DAY, 2: DAY, 3: DAY, 4: DAY, 5: DAY, 6: null, 7: null },
    air: null,
    night: null,
    closedDays: null,
    holidays: [],
    unit: 'C',
    language: 'en',
    people: [
      { id: personId('anna'), name: 'Anna', role: 'technician', chatId: 'U0ANNA1', language: 'en', unit: null },
      { id: personId('walter'), name: 'Walter', role: 'foreman', chatId: null, language: 'en', unit: null },
    ],
    lamps: [lampName('A')],
    pads: [],
    rhythm: {
      openWarning: minutes(10),
      readingDue: minutes(20),
      stillOn: minutes(60),
      stageDue: minutes(10),
      repeats: [minutes(10), minutes(30)],
      foreman: minutes(50),
      putOff: minutes(10),
      backdating: minutes(120),
    },
    shifts: [],
    bays: [],
    fireWatch: minutes(60),
    batteryCaution: celsius(60),
  };
}
