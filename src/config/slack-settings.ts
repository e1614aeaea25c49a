import { isLoopback } from './loopback.js';
import { Secret } from './secret.js';

interface SlackCommon {
  readonly botToken: Secret;
  /** Another base for the platform's methods, ending in a slash; null: the platform's own. */
  readonly apiUrl: string | null;
  /** Id of the home channel. */
  readonly channel: string;
}

/** `socket`: the program calls out and needs no public address; `http`: the platform calls in. */
export type SlackSettings =
  | (SlackCommon & { readonly mode: 'socket'; readonly appToken: Secret; readonly signingSecret: Secret | null })
  | (SlackCommon & { readonly mode: 'http'; readonly appToken: null; readonly signingSecret: Secret });

export type SlackRead = { readonly settings: SlackSettings | null; readonly problems: readonly string[] };

type Look = (name: string) => string | null;

/** Slack is on as soon as one of its secrets is set; then everything that it needs must be there. */
export function readSlack(look: Look): SlackRead {
  const botToken = look('SLACK_BOT_TOKEN');
  const appToken = look('SLACK_APP_TOKEN');
  const signingSecret = look('SLACK_SIGNING_SECRET');
  if (botToken === null && appToken === null && signingSecret === null) return { settings: null, problems: [] };
  const channel = look('SLACK_CHANNEL');
  const api = apiUrlOf(look('SLACK_API_URL'));
  const problems = [...missing(botToken, appToken, signingSecret, channel), ...misplaced(botToken, appToken, channel), ...(api.problem === null ? [] : [api.problem])];
  if (problems.length > 0 || botToken === null || channel === null) return { settings: null, problems };
  const common = { botToken: new Secret(botToken), apiUrl: api.url, channel };
  const signing = signingSecret === null ? null : new Secret(signingSecret);
  if (appToken !== null) return { settings: { ...common, mode: 'socket', appToken: new Secret(appToken), signingSecret: signing }, problems };
  return { settings: signing === null ? null : { ...common, mode: 'http', appToken: null, signingSecret: signing }, problems };
}

function missing(botToken: string | null, appToken: string | null, signingSecret: string | null, channel: string | null): string[] {
  const problems: string[] = [];
  if (botToken === null) problems.push('SLACK_BOT_TOKEN is missing: Slack is set up only in part. Set it, or unset every SLACK_ variable.');
  if (appToken === null && signingSecret === null) {
    problems.push('SLACK_APP_TOKEN (connection from here, no public address needed) or SLACK_SIGNING_SECRET (the platform calls in) is missing: set one of them.');
  }
  if (channel === null) problems.push('SLACK_CHANNEL is missing: the id of the channel that the clerk posts to, such as C02ABCDEF.');
  return problems;
}

/** Tokens that were put into each other's place; no token is ever shown. */
function misplaced(botToken: string | null, appToken: string | null, channel: string | null): string[] {
  const problems: string[] = [];
  if (botToken?.startsWith('xapp-') === true) problems.push('SLACK_BOT_TOKEN holds an app-level token (xapp-): it belongs into SLACK_APP_TOKEN.');
  if (appToken?.startsWith('xoxb-') === true) problems.push('SLACK_APP_TOKEN holds a bot token (xoxb-): it belongs into SLACK_BOT_TOKEN.');
  if (channel !== null && !/^[A-Za-z0-9_-]+$/.test(channel)) problems.push("SLACK_CHANNEL must be the channel's id, such as C02ABCDEF, not its name.");
  return problems;
}

/** Tokens travel to this address, so it is encrypted unless it is this computer. */
function apiUrlOf(text: string | null): { readonly url: string | null; readonly problem: string | null } {
  if (text === null) return { url: null, problem: null };
  const wrong = { url: null, problem: 'SLACK_API_URL must be an address that begins with https:// (http:// only for this computer).' };
  if (!URL.canParse(text)) return wrong;
  const url = new URL(text);
  const allowed = url.protocol === 'https:' || (url.protocol === 'http:' && isLoopback(url.hostname));
  return allowed ? { url: url.href.endsWith('/') ? url.href : `${url.href}/`, problem: null } : wrong;
}
