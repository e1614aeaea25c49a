export const ANSWERED_EN = {
  done: '**done by {who} {at}**',
  'done-hard': '**done by {who} {at}** (hard)',
  'done-soft': '**done by {who} {at}** (soft)',
  overtaken: '**no longer so**, changed by {who} {at}',
} as const;
