export const QUESTIONS_EN = {
  'limit-undecided': 'Open limit {at} was passed: the foreman decides.',
  'limit-decided': 'Open limit {at} was passed, decided by the foreman.',
  'recoat-by': 'Recoat by **{at}**, after that prepare it anew.',
  'law-first': "Data sheet, vehicle maker's method, local rules and your licence come first. This is a reminder, not permission.",
} as const;
