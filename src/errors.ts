/** Everything that can stop the program or one of its doors, with what is needed to say so. */
export type Trouble =
  /** Settings or settings files that cannot be used; one line each. */
  | { readonly code: 'settings-refused'; readonly problems: readonly string[] }
  /** The book belongs to the other kind of time. */
  | { readonly code: 'other-time'; readonly kept: 'real' | 'practice' }
  | { readonly code: 'port-taken'; readonly host: string; readonly port: number }
  | { readonly code: 'page-failed'; readonly host: string; readonly port: number; readonly reason: string }
  | { readonly code: 'chat-refused'; readonly reason: string }
  | { readonly code: 'chat-unreachable'; readonly reason: string };

export type TroubleCode = Trouble['code'];

/** The one error class; `trouble` holds the parts, `message` the words for the person at the screen. */
export class ClerkError extends Error {
  override readonly name = 'ClerkError';
  readonly code: TroubleCode;
  readonly trouble: Trouble;

  constructor(trouble: Trouble, cause?: unknown) {
    super(wordsFor(trouble), cause === undefined ? undefined : { cause });
    this.code = trouble.code;
    this.trouble = trouble;
  }
}

/** What is wrong and what to do. */
function wordsFor(trouble: Trouble): string {
  switch (trouble.code) {
    case 'settings-refused':
      return `The settings cannot be used:\n${trouble.problems.map((problem) => `  - ${problem}`).join('\n')}`;
    case 'other-time':
      return trouble.kept === 'real'
        ? 'This data folder holds real cars: a practice clock must not touch it. Unset CURECLERK_CLOCK, or name another folder in CURECLERK_DATA.'
        : 'This data folder was written with a practice clock: nothing in it is about real cars. Name another folder in CURECLERK_DATA.';
    case 'port-taken':
      return `Port ${trouble.port} on ${trouble.host} is taken by another program. Name a free one in CURECLERK_PORT (0 takes any).`;
    case 'page-failed':
      return `The local page cannot listen on ${trouble.host} port ${trouble.port} (${trouble.reason}).`;
    case 'chat-refused':
      return `The chat platform refuses this program (${trouble.reason}). Check the tokens and whether the app is still installed. The clock goes on.`;
    case 'chat-unreachable':
      return `The chat platform cannot be reached (${trouble.reason}). The clock goes on; what is due is sent when it can be reached again.`;
  }
}
