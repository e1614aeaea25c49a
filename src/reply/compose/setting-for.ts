import type { PersonId } from '../../repair/ids.js';
import type { Setting } from './words.js';

/** The shop's words as one person reads them: in their language, and with their unit beside the shop's. The channel, and whoever is not on the list, reads the shop's. */
export function settingFor(person: PersonId | 'channel', { shop, now }: Pick<Setting, 'shop' | 'now'>): Setting {
  const reader = shop.people.find(({ id }) => id === person);
  const language = reader?.language ?? shop.language;
  const unit = reader?.unit ?? shop.unit;
  return { shop, now, language, ...(unit === shop.unit ? {} : { unit }) };
}
