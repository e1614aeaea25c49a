export const LIKELY_EN = {
  'if-read': '; about {at} if a reading shows it',
  'likely-if-read': ', likely about {at} if a reading shows it',
  'by-law': "By the sheet's own law ({energy} kJ/mol) likely {at}; never announced on it.",
  unannounced: 'Likely {at} (temperatures as they most likely are); nothing is announced yet.',
  announced: 'Likely {at} (temperatures as they most likely are); announced is {due}.',
} as const;
