export const ANSWERED_EN = {
  done: '**done by {who} {at}**',
  'done-hard': '**done by {who} {at}** (hard)',
  'done-soft': '**done by {who} {at}** (soft)',
  undone: '**taken back by {who} {at}**',
  overtaken: '**no longer so**, changed by {who} {at}',
} as const;
