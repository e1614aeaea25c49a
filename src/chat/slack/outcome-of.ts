import { webApi } from '@slack/bolt';
import type { Outcome } from '../../outbox/chat-sender.js';
import { why } from './why.js';

const { WebAPIPlatformError, WebAPIRateLimitedError, WebAPIRequestError } = webApi;

/** The platform's page says of these: some part of the operation may have succeeded. */
const MAYBE_DONE: ReadonlySet<string> = new Set(['internal_error', 'fatal_error']);
const NOT_NOW: ReadonlySet<string> = new Set(['service_unavailable', 'request_timeout', 'team_added_to_org', 'upgrading']);
/** Somebody has to repair the token or the installation; the message itself is fine and waits. */
export const ACCOUNT_TROUBLE: ReadonlySet<string> = new Set([
  'invalid_auth', 'not_authed', 'account_inactive', 'token_revoked', 'token_expired', 'missing_scope', 'no_permission',
  'org_login_required', 'ekm_access_denied', 'accesslimited', 'access_denied', 'team_access_not_granted', 'two_factor_setup_required',
]);
/** Somebody has to invite the bot or repair the channel in the settings. */
export const PLACE_TROUBLE: ReadonlySet<string> = new Set(['channel_not_found', 'not_in_channel', 'is_archived']);
/** Somebody deleted or locked the thread; the channel itself still takes the message. */
export const THREAD_TROUBLE: ReadonlySet<string> = new Set(['thread_not_found', 'message_not_found', 'cannot_reply_to_message', 'restricted_action_thread_locked']);
/** The request never left this machine, so nothing can have been posted. */
const NEVER_LEFT: ReadonlySet<string> = new Set([
  'ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'ENETUNREACH', 'EHOSTUNREACH', 'ENETDOWN', 'UND_ERR_CONNECT_TIMEOUT',
  'CERT_HAS_EXPIRED', 'DEPTH_ZERO_SELF_SIGNED_CERT', 'SELF_SIGNED_CERT_IN_CHAIN', 'UNABLE_TO_VERIFY_LEAF_SIGNATURE', 'ERR_TLS_CERT_ALTNAME_INVALID',
]);
const LIMITED_WITHOUT_TERM_SECONDS = 10;

/** The platform's error word, or null when it did not answer in its own language. */
export function errorWord(error: unknown): string | null {
  if (!(error instanceof WebAPIPlatformError)) return null;
  // A proxy's page in place of an answer arrives as one long "error word".
  return /^[a-z][a-z0-9_]*$/.test(error.data.error) ? error.data.error : null;
}

/** What a failed call says about the message it carried. */
export function outcomeOf(error: unknown): Exclude<Outcome, { kind: 'sent' }> {
  if (error instanceof WebAPIRateLimitedError) return { kind: 'limited', retryAfterSeconds: error.retryAfter };
  if (error instanceof WebAPIRequestError && neverLeft(error)) return { kind: 'failed', reason: error.message };
  const word = errorWord(error);
  if (word === null || MAYBE_DONE.has(word)) return { kind: 'unknown', reason: word ?? why(error) };
  if (word === 'ratelimited' || word === 'rate_limited') return { kind: 'limited', retryAfterSeconds: LIMITED_WITHOUT_TERM_SECONDS };
  return { kind: NOT_NOW.has(word) || ACCOUNT_TROUBLE.has(word) ? 'failed' : 'refused', reason: word };
}

function neverLeft(error: Error): boolean {
  for (let cause: unknown = error; cause instanceof Error; cause = cause.cause) {
    if ('code' in cause && typeof cause.code === 'string' && NEVER_LEFT.has(cause.code)) return true;
  }
  return false;
}
