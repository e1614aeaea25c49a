import { signature } from './payloads.js';

/** What the program answered to the platform. */
export interface HttpAnswer {
  readonly status: number;
  readonly body: string;
  readonly tookMs: number;
}

export interface OverHttp {
  /** Form fields from `commandPayload`. */
  command(fields: Readonly<Record<string, string>>): Promise<HttpAnswer>;
  /** A payload from `pressPayload`, or of a shortcut or a view. */
  action(payload: unknown): Promise<HttpAnswer>;
  /** A payload from `mentionPayload` or `directPayload`; `headers` for the platform's retry marks. */
  event(payload: unknown, headers?: Readonly<Record<string, string>>): Promise<HttpAnswer>;
  /** Any body, signed or not. */
  raw(body: string, headers: Readonly<Record<string, string>>): Promise<HttpAnswer>;
}

const FORM = 'application/x-www-form-urlencoded';

/** The platform as it calls the program over HTTP: signed requests to `url` (the full address, …/slack/events). */
export function overHttp(url: string, signingSecret: string): OverHttp {
  const raw = async (body: string, headers: Readonly<Record<string, string>>): Promise<HttpAnswer> => {
    const began = Date.now();
    const answer = await fetch(url, { method: 'POST', headers, body });
    return { status: answer.status, body: await answer.text(), tookMs: Date.now() - began };
  };
  const signed = (body: string, type: string, more: Readonly<Record<string, string>> = {}): Promise<HttpAnswer> => {
    const timestamp = Math.floor(Date.now() / 1_000);
    return raw(body, { 'content-type': type, 'x-slack-request-timestamp': String(timestamp), 'x-slack-signature': signature(signingSecret, timestamp, body), ...more });
  };
  return {
    command: (fields) => signed(new URLSearchParams(fields).toString(), FORM),
    action: (payload) => signed(new URLSearchParams({ payload: JSON.stringify(payload) }).toString(), FORM),
    event: (payload, headers) => signed(JSON.stringify(payload), 'application/json', headers),
    raw,
  };
}
