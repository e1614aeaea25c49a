import { createHmac } from 'node:crypto';
import { isValidSlackRequest } from '@slack/bolt';
import { expect, onTestFinished, vi } from 'vitest';
import { z } from 'zod';
import { everyCheck, kind } from '../support/reference-checks.js';
import { SECRET, slackHouse } from '../support/slack-house.js';
import { signature } from '../support/slack-stand-in/payloads.js';

/**
 * The worked example of the platform's page "Verifying requests from Slack"; the freshness rule of its Python library;
 * HMAC-SHA256: RFC 4231 test case 2 (from memory). The program's receiver takes the requests, at the time of the example.
 */
const signed = z.object({ signing_secret: z.literal(SECRET), timestamp: z.coerce.number(), body: z.string() });

/** Status with which the program's own receiver answers a request that comes at `now` (seconds). */
async function received(now: number, timestamp: number, body: string, sealed: string): Promise<number> {
  vi.useFakeTimers({ toFake: ['Date'], now: now * 1_000 });
  onTestFinished(() => { vi.useRealTimers(); });
  const { http } = await slackHouse('http');
  const headers = { 'content-type': 'application/x-www-form-urlencoded', 'x-slack-request-timestamp': String(timestamp), 'x-slack-signature': sealed };
  return (await http.raw(body, headers)).status;
}

everyCheck('signing', [
  kind(/^slack-doc$/, signed, z.string(), async (given, expected) => {
    expect(signature(given.signing_secret, given.timestamp, given.body)).toBe(expected);
    expect(await received(given.timestamp, given.timestamp, given.body, expected)).toBe(200);
  }),
  kind(/^slack-tamper$/, signed.extend({ signature: z.string() }), z.literal(false), async (given) => {
    const headers = { 'x-slack-request-timestamp': given.timestamp, 'x-slack-signature': given.signature };
    expect(isValidSlackRequest({ signingSecret: given.signing_secret, body: given.body, headers, nowMilliseconds: given.timestamp * 1_000 })).toBe(false);
    expect(await received(given.timestamp, given.timestamp, given.body, given.signature)).toBe(401);
  }),
  kind(/^slack-skew$/, z.object({ timestamp: z.number(), now: z.array(z.number()) }), z.array(z.boolean()), async ({ timestamp, now }, expected) => {
    const body = 'command=%2Fcure&text=help';
    const accepted: boolean[] = [];
    for (const at of now) accepted.push((await received(at, timestamp, body, signature(SECRET, timestamp, body))) === 200);
    expect(accepted).toEqual(expected);
  }),
  kind(/^rfc4231-/, z.object({ key: z.string(), data: z.string() }), z.string(), (given, expected) => {
    expect(createHmac('sha256', given.key).update(given.data).digest('hex')).toBe(expected);
  }),
]);
