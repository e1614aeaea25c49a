import { isValidSlackRequest } from '@slack/bolt';
import { describe, expect, it } from 'vitest';
import { signature } from '../../support/slack-stand-in/payloads.js';
import { slackHouse, SECRET } from '../../support/slack-house.js';

/** The worked example of the platform's documentation page "Verifying requests from Slack"; SECRET is the secret of that page. */
const TIMESTAMP = 1531420618;
const BODY =
  'token=xyzz0WbapA4vBCDEFasx0q6G&team_id=T1DC2JH3J&team_domain=testteamnow&channel_id=G8PSS9T3V&channel_name=foobar&user_id=U2CERLKJA&user_name=roadrunner&command=%2Fwebhook-collect&text=&response_url=https%3A%2F%2Fhooks.slack.com%2Fcommands%2FT1DC2JH3J%2F397700885554%2F96rGlfmibIGlgcZRskXaIFfN&trigger_id=398738663015.47445629121.803a0bc887a14d10d2c447fce8b6703c';
const EXPECTED = 'v0=a2114d57b48eac39b9ad189dd8316235a7b4a8d21a10bd27519666489c69b503';

const headers = (timestamp: number, signed: string) => ({ 'x-slack-request-timestamp': timestamp, 'x-slack-signature': signed });

describe('the signature of a request', () => {
  it('is computed as the platform documents it', () => {
    expect(signature(SECRET, TIMESTAMP, BODY)).toBe(EXPECTED);
  });

  it('of the documented example is accepted by the library at that time, and by nobody five minutes later', () => {
    const at = (nowMilliseconds: number): boolean => isValidSlackRequest({ signingSecret: SECRET, body: BODY, headers: headers(TIMESTAMP, EXPECTED), nowMilliseconds });
    expect(at(TIMESTAMP * 1_000)).toBe(true);
    expect(at((TIMESTAMP + 301) * 1_000)).toBe(false);
  });

  it.each([
    ['an old request', String(TIMESTAMP), EXPECTED, BODY],
    ['another body', null, null, `${BODY}&text=closed`],
    ['a signature of another version', null, 'v1=00', BODY],
    ['no signature', null, '', BODY],
  ])('keeps out %s', async (_name, oldTimestamp, wrong, body) => {
    const { http, desk, standIn } = await slackHouse('http');
    const timestamp = oldTimestamp ?? String(Math.floor(Date.now() / 1_000));
    const signed = wrong ?? signature(SECRET, Number(timestamp), BODY);
    const answer = await http.raw(body, { 'content-type': 'application/x-www-form-urlencoded', 'x-slack-request-timestamp': timestamp, 'x-slack-signature': signed });
    expect(answer.status).toBe(401);
    expect(desk.said).toEqual([]);
    expect(standIn.callsOf('chat.postMessage')).toEqual([]);
  });
});
