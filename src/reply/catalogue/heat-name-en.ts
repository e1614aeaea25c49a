export const HEAT_NAME_EN = {
  'air-only': 'air only',
  heater: '{heater, select, pad {pad} other {lamp}} {setting}',
  recipe: 'lamp {settings}',
  then: '{before} then {after}',
} as const;
