export const REASON_EN = {
  title: 'Go on',
  why: 'Why?',
  stands: '{line} and what you write; it stands in every later answer.',
  send: 'Send',
  cancel: 'Cancel',
  'not-opened': 'The form could not be opened. Type it: `{line}` and why.',
  'not-written': 'Nothing was written down: something went wrong here. Please send it again.',
} as const;
