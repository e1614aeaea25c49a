export const TAKEOVER_EN = {
  'shift-ends': '**Your shift ends {end}**, still running: {jobs}. **Who takes over?**',
  'stay-yours': 'They stay yours until somebody accepts.',
  'not-all': 'Not all of them: `handover {taker} except {job}`.',
  'some-name': 'NAME',
  nobody: '**Nobody has taken over** from {owners}, whose shift ended {end}: {jobs}.',
  'comes-to-you': 'What comes due comes to you.',
  'one-by-one': 'Give them away one by one: `hand {job} to NAME`.',
  'jobs-more': '{jobs} and {more} more',
} as const;
