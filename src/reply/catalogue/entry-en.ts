export const ENTRY_EN = {
  'nothing-waits': 'Nothing more to wait for on this card.',
  'forecast-was': '{forecast} (was {was}).',
  'open-was-on': 'On {card} it was {at}.',
  'open-used': '{used} of {limit} min used.',
  'air-along': 'Air {air}; the metal may still be colder: measure.',
  'metal-margin': 'Metal {margin}.',
  'too-hot': '**{title} TOO HOT {value}**, limit {limit}.',
  'too-hot-card': '**{title} is {card}, not {before}: TOO HOT {value}**, limit {limit}.',
  'heat-away': '{heater, select, pad {Pad} other {Lamp}} off or back now. The foreman is told; the cure is held.',
} as const;
