import { webApi } from '@slack/bolt';
import type { Logger } from '@slack/bolt';
import type { SlackSettings } from './settings.js';

/** A slow platform must not hold a lane for longer. */
const CALL_MS = 8_000;
/** A name is nice to have; the answer does not wait longer for it. */
const NAME_MS = 2_000;

/** Every client has a time limit and no retries of its own: the library's retries post twice, and it waits for ever. */
function optionsFor(settings: SlackSettings, logger: Logger, timeout: number): webApi.WebClientOptions {
  return {
    logger,
    timeout,
    retryConfig: { retries: 0 },
    rejectRateLimitedCalls: true,
    ...(settings.apiUrl === null ? {} : { slackApiUrl: settings.apiUrl }),
  };
}

/** For messages, look-ups and the token check. */
export function sendingClient(settings: SlackSettings, logger: Logger): webApi.WebClient {
  return new webApi.WebClient(settings.botToken, optionsFor(settings, logger, CALL_MS));
}

/** For profile names. */
export function namesClient(settings: SlackSettings, logger: Logger): webApi.WebClient {
  return new webApi.WebClient(settings.botToken, optionsFor(settings, logger, NAME_MS));
}

/** For the address of the WebSocket. A fresh object each time: the library writes into it. */
export function lineOptions(settings: SlackSettings, logger: Logger): webApi.WebClientOptions {
  return optionsFor(settings, logger, CALL_MS);
}
