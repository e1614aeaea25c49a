import { createServer, type RequestListener, type Server } from 'node:http';
import { getRequestListener } from '@hono/node-server';
import { pageApp } from './page-app.js';
import type { PagePorts } from './page-ports.js';

export interface ServedPage extends AsyncDisposable {
  /** Where the page can be opened on this machine. */
  readonly url: string;
}

/** Where the chat platform calls in, on the same port. */
const CHAT_EVENTS = '/slack/events';

export interface Place {
  readonly host: string;
  /** 0 takes any free port. */
  readonly port: number;
  /** Takes what the chat platform sends, with its own check of signatures; left out when nothing calls in. */
  readonly chatEvents?: RequestListener | null;
}

/** Answers under way may finish for so long; then the last connections are cut, also those that a browser opened and never used. */
const GRACE_MILLISECONDS = 500;

/** Serves the page until disposed; rejects when the place is taken. Disposing ends the event streams. */
export async function servePage(ports: Omit<PagePorts, 'closing'>, place: Place): Promise<ServedPage> {
  const closing = new AbortController();
  const answer = getRequestListener(pageApp({ ...ports, closing: closing.signal }).fetch);
  const { chatEvents = null } = place;
  const server = createServer((request, response) => {
    if (chatEvents !== null && pathOf(request.url) === CHAT_EVENTS) chatEvents(request, response);
    else void answer(request, response);
  });
  await listening(server, place);
  return {
    url: urlOf(place.host, server.address()),
    [Symbol.asyncDispose]: () => {
      closing.abort();
      return closed(server);
    },
  };
}

const listening = (server: Server, { host, port }: Place): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve();
    });
  });

const closed = (server: Server): Promise<void> =>
  new Promise((resolve, reject) => {
    const cut = setTimeout(() => { server.closeAllConnections(); }, GRACE_MILLISECONDS);
    server.close((error) => {
      clearTimeout(cut);
      if (error === undefined) resolve();
      else reject(error);
    });
  });

const pathOf = (url: string | undefined): string => (url ?? '').split('?')[0] ?? '';

function urlOf(host: string, address: ReturnType<Server['address']>): string {
  if (address === null || typeof address === 'string') throw new Error(`The page is served at an unexpected place: ${String(address)}`);
  const name = host === '0.0.0.0' || host === '::' ? 'localhost' : host;
  return `http://${name.includes(':') ? `[${name}]` : name}:${address.port}`;
}
