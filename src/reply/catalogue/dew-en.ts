export const DEW_EN = {
  'frost-point': 'Frost point **{value}**: moisture settles as frost, which nobody can wipe dry. **Warm the metal first.**',
  'dew-point': 'Dew point {value}: metal at least **{least}**.',
  above: '{difference} above the {point, select, frost {frost} other {dew}} point of {value}',
  below: '{difference} below the {point, select, frost {frost} other {dew}} point of {value}',
  'too-close': 'metal {margin}, {needed} needed',
  'too-close-unread': 'metal too close to the dew point, {needed} needed',
} as const;
