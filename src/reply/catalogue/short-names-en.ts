export const SHORT_NAMES_EN = {
  handling: 'handling',
  full: 'full',
  sand: 'sanding',
  'drive-away': 'standing',
  'recoat-from': 'recoat',
  skin: 'skin',
  through: 'through-cure',
  'flash-off': 'flash-off',
  dwell: 'metal',
  'drip-free': 'drip-free',
  dry: 'drying',
  'fire-watch': 'fire watch',
} as const;
