export const LAMPS_EN = {
  none: '**No lamp and no pad** is written down for this shop, and none is noted as on.',
  free: '{names} {count, plural, other {free}}',
  on: 'on',
  till: '{line} till {at}',
  'due-since': '{line}, due since {at}',
  'off-at': '{line}, **off at {at}** unless somebody stays',
  left: '**{name}** {title} is done, **still on?**',
  'left-seen': '**{name}** {title} is done, **still on?** Last seen {at}',
  unseen: '**{name}** {title} not seen on',
  'unseen-since': '**{name}** {title} not seen on since {at}',
} as const;
