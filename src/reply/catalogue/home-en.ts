export const HOME_EN = {
  mine: 'My cures',
  'none-of-mine': 'None of your cures waits for anything.',
  all: 'All that waits',
  'who-waits': 'Who waits',
  lamps: 'Lamps',
  help: 'Help',
} as const;
