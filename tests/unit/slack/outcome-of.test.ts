import { webApi } from '@slack/bolt';
import { describe, expect, it } from 'vitest';
import { outcomeOf } from '../../../src/chat/slack/outcome-of.js';

const says = (error: string): Error => new webApi.WebAPIPlatformError({ ok: false, error });
const fetchFailed = (cause: unknown): Error => new webApi.WebAPIRequestError(new TypeError('fetch failed', { cause }));

describe('what a failed call says about the message', () => {
  it.each([
    ['a limit with its term', new webApi.WebAPIRateLimitedError(7), { kind: 'limited', retryAfterSeconds: 7 }],
    ['a limit without a term', says('ratelimited'), { kind: 'limited', retryAfterSeconds: 10 }],
    ['a refused connection', fetchFailed(Object.assign(new Error('x'), { code: 'ECONNREFUSED' })), { kind: 'failed' }],
    ['an unknown host', fetchFailed(Object.assign(new Error('x'), { code: 'ENOTFOUND' })), { kind: 'failed' }],
    ['a service that is down', says('service_unavailable'), { kind: 'failed', reason: 'service_unavailable' }],
    ['a bad token', says('invalid_auth'), { kind: 'failed', reason: 'invalid_auth' }],
    ['a missing scope', says('missing_scope'), { kind: 'failed', reason: 'missing_scope' }],
    ['a cut connection', fetchFailed(Object.assign(new Error('x'), { code: 'ECONNRESET' })), { kind: 'unknown' }],
    ['a time-out', new webApi.WebAPIRequestError(new DOMException('timeout', 'TimeoutError')), { kind: 'unknown' }],
    ['a server error', new webApi.WebAPIHTTPError(500, 'x', {}, ''), { kind: 'unknown' }],
    ['half a success', says('internal_error'), { kind: 'unknown' }],
    ['another half', says('fatal_error'), { kind: 'unknown' }],
    ['a page of some proxy', says('<html>Bad gateway</html>'), { kind: 'unknown' }],
    ['an answer cut in the middle', new TypeError('terminated'), { kind: 'unknown' }],
    ['anything thrown', undefined, { kind: 'unknown' }],
    ['an archived channel', says('is_archived'), { kind: 'refused', reason: 'is_archived' }],
    ['a message that cannot be', says('no_text'), { kind: 'refused', reason: 'no_text' }],
  ])('%s', (_name, error, outcome) => {
    expect(outcomeOf(error)).toMatchObject(outcome);
  });
});
