export const BUTTONS_EN = {
  'is-card': 'It is {card}',
  'all-covered': 'All covered',
  undo: 'Undo',
  'typing-error': 'Typing error',
  closed: 'Closed',
  on: 'On',
  'turned-up': 'Turned up',
  'i-stay': 'I stay',
  hard: 'Hard',
  soft: 'Soft',
} as const;
