import type { DEW_EN } from './dew-en.js';

export const DEW_DE: Readonly<Record<keyof typeof DEW_EN, string>> = {
  'frost-point': 'Frostpunkt **{value}**: Feuchte schlägt als Reif nieder, den wischt niemand trocken. **Erst das Metall wärmen.**',
  'dew-point': 'Taupunkt {value}: Metall mindestens **{least}**.',
  above: '{difference} über dem {point, select, frost {Frostpunkt} other {Taupunkt}} von {value}',
  below: '{difference} unter dem {point, select, frost {Frostpunkt} other {Taupunkt}} von {value}',
  'too-close': 'Metall {margin}, {needed} nötig',
  'too-close-unread': 'Metall zu nah am Taupunkt, {needed} nötig',
};
