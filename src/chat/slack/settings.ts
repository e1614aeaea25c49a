/** What the platform's side of the house is told; tokens never reach a log. */
export interface SlackSettings {
  /** `xoxb-…` */
  readonly botToken: string;
  /** Needed in mode `http`. */
  readonly signingSecret: string | null;
  /** `xapp-…` with `connections:write`; needed in mode `socket`. */
  readonly appToken: string | null;
  /** Another address of the Web API, ending in `/api/`; null for the platform's own. */
  readonly apiUrl: string | null;
  /** Id of the home channel, where the job threads stand. */
  readonly channel: string;
  readonly mode: 'http' | 'socket';
}
