import type { RequestListener } from 'node:http';
import { HTTPReceiver, SocketModeReceiver } from '@slack/bolt';
import type { Logger, Receiver } from '@slack/bolt';
import { ClerkError } from '../../errors.js';
import { lineOptions } from './clients.js';
import type { SlackSettings } from './settings.js';

/** Puts a receiver into service: whatever it verifies goes to the reception. */
export type Admit = (receiver: Receiver) => void;

/** The handler for POST /slack/events; the app's own server calls it, no port is opened here. */
export function httpListener(settings: SlackSettings, logger: Logger, admit: Admit): RequestListener {
  const { signingSecret } = settings;
  if (signingSecret === null || signingSecret === '') throw missing('Chat mode "http" needs the signing secret of the app.');
  const receiver = new HTTPReceiver({ signingSecret, endpoints: ['/slack/events'], logger });
  admit(receiver);
  return (request, response) => {
    if (fromTheFuture(request.headers['x-slack-request-timestamp'])) {
      response.writeHead(401).end();
      return;
    }
    try {
      receiver.requestListener(request, response);
    } catch {
      // The receiver throws for every path and method that is not its own.
      response.writeHead(404).end();
    }
  };
}

/** The library refuses only old requests; the platform's rule is five minutes either way. */
const LARGEST_SKEW_S = 300;

const fromTheFuture = (timestamp: string | string[] | undefined): boolean => Number(timestamp) - Date.now() / 1_000 > LARGEST_SKEW_S;

/** Opens one WebSocket receiver after the other; each serves one line and never reconnects by itself. */
export function lineOpener(settings: SlackSettings, logger: Logger, admit: Admit): () => SocketModeReceiver {
  const { appToken } = settings;
  if (appToken === null || appToken === '') throw missing('Chat mode "socket" needs the app-level token (xapp-…) with connections:write.');
  return () => {
    const receiver = new SocketModeReceiver({ appToken, logger, autoReconnectEnabled: false, installerOptions: { clientOptions: lineOptions(settings, logger) } });
    admit(receiver);
    return receiver;
  };
}

function missing(problem: string): ClerkError {
  return new ClerkError({ code: 'settings-refused', problems: [problem] });
}
