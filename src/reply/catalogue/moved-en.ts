export const MOVED_EN = {
  more: 'and {count} more: type when {job}.',
  'keeps-only-move': '{job} keeps only the move in its record.',
  'moved-here': '**{title}** {card} moved here from {from}, start {start}.',
  'nothing-waits': 'Nothing waits there.',
} as const;
