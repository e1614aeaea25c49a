const LONGEST = 200;

/** What an error says, short enough for a status line. */
export function why(error: unknown): string {
  return error instanceof Error ? error.message.slice(0, LONGEST) : 'the connection was closed';
}
