import { createServer } from 'node:http';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { Room } from './slack-stand-in/room.js';
import type { ApiAnswer } from './slack-stand-in/room.js';
import { SocketSide } from './slack-stand-in/socket-side.js';
import { listen } from './slack-stand-in/listen.js';
import { Views } from './slack-stand-in/views.js';

/**
 * What the next call of a method meets instead of a plain answer.
 * `limited`: 429 with Retry-After. `http`: that status, nothing done. `error`: `ok: false` with that word, nothing done.
 * `reset`: the connection is cut before anything is done. `hang`: no answer, nothing done.
 * `lost`: the call is carried out, the answer is not sent and the connection is cut. `done-then-http`: carried out, answered with that status.
 * `lost-hanging`: carried out, no answer, and the connection stays open.
 */
export type Fault =
  | { readonly kind: 'limited'; readonly seconds: number }
  | { readonly kind: 'http'; readonly status: number }
  | { readonly kind: 'error'; readonly word: string }
  | { readonly kind: 'reset' }
  | { readonly kind: 'hang' }
  | { readonly kind: 'lost' }
  | { readonly kind: 'lost-hanging' }
  | { readonly kind: 'done-then-http'; readonly status: number };

/** One call of the Web API as it arrived. `args` are the form fields; blocks and metadata are JSON texts in them. */
export interface ApiCall {
  readonly method: string;
  readonly args: Readonly<Record<string, string>>;
  /** Milliseconds since 1970. */
  readonly at: number;
}

export const STAND_IN_BOT_TOKEN = 'xoxb-stand-in';
export const STAND_IN_APP_TOKEN = 'xapp-stand-in';

/**
 * A stand-in of the chat platform on 127.0.0.1: the Web API methods the program uses, and Socket Mode.
 *
 * Give the program `apiUrl` as the API's address, `STAND_IN_BOT_TOKEN` and, for Socket Mode, `STAND_IN_APP_TOKEN`.
 * Read what it did from `calls`, `room.messages` (what stands in channels and threads), `room.shown` (ephemerals) and
 * `views` (forms and home tabs).
 * Talk to it with `overHttp(url, secret)` and the payload builders of `slack-stand-in/payloads.ts`, or over the
 * WebSocket with `socket.deliver(type, payload)`. Order faults with `fault`.
 */
export class SlackStandIn {
  readonly room = new Room();
  readonly views = new Views();
  readonly socket = new SocketSide();
  readonly calls: ApiCall[] = [];
  /** Set to false to answer every bot call with `invalid_auth`. */
  botTokenValid = true;
  /** Set to false to refuse the app-level token. */
  appTokenValid = true;
  readonly #faults = new Map<string, Fault[]>();
  readonly #server = createServer((request, response) => {
    void this.#serve(request, response);
  });
  #port = 0;

  /** Opens a stand-in on a free port, or on the given one (to come back after an outage). */
  static async open(port = 0): Promise<SlackStandIn> {
    const standIn = new SlackStandIn();
    standIn.#server.on('upgrade', (request, socket, head) => {
      standIn.socket.upgrade(request, socket, head);
    });
    standIn.#port = await listen(standIn.#server, port);
    return standIn;
  }

  get apiUrl(): string {
    return `http://127.0.0.1:${this.#port}/api/`;
  }

  get port(): number {
    return this.#port;
  }

  /** The next calls of `method` meet these faults, in order; later calls are answered plainly. */
  fault(method: string, ...faults: readonly Fault[]): void {
    this.#faults.set(method, [...(this.#faults.get(method) ?? []), ...faults]);
  }

  callsOf(method: string): readonly ApiCall[] {
    return this.calls.filter((call) => call.method === method);
  }

  async close(): Promise<void> {
    this.socket.close();
    this.#server.closeAllConnections();
    await new Promise<void>((resolve) => {
      this.#server.close(() => {
        resolve();
      });
    });
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const method = (request.url ?? '').replace(/^\/api\//, '');
    let body = '';
    for await (const chunk of request.setEncoding('utf8')) body += String(chunk);
    const args = Object.fromEntries(new URLSearchParams(body));
    this.calls.push({ method, args, at: Date.now() });
    const fault = this.#faults.get(method)?.shift();
    if (fault === undefined) answerWith(response, 200, this.#answer(method, args, request.headers.authorization));
    else this.#meet(fault, response, () => this.#answer(method, args, request.headers.authorization));
  }

  #meet(fault: Fault, response: ServerResponse, carryOut: () => ApiAnswer): void {
    switch (fault.kind) {
      case 'limited':
        response.setHeader('retry-after', String(fault.seconds));
        answerWith(response, 429, { ok: false, error: 'ratelimited' });
        return;
      case 'http':
        answerWith(response, fault.status, { ok: false });
        return;
      case 'error':
        answerWith(response, 200, { ok: false, error: fault.word });
        return;
      case 'hang':
        return;
      case 'reset':
        response.destroy();
        return;
      case 'lost-hanging':
        carryOut();
        return;
      case 'lost':
        carryOut();
        response.destroy();
        return;
      case 'done-then-http':
        carryOut();
        answerWith(response, fault.status, { ok: false });
        return;
    }
  }

  #answer(method: string, args: Readonly<Record<string, string>>, authorization: string | undefined): ApiAnswer {
    if (method === 'apps.connections.open') {
      if (!this.appTokenValid || authorization !== `Bearer ${STAND_IN_APP_TOKEN}`) return { ok: false, error: 'invalid_auth' };
      return { ok: true, url: `ws://127.0.0.1:${this.#port}/line?ticket=${this.calls.length}` };
    }
    if (!this.botTokenValid || authorization !== `Bearer ${STAND_IN_BOT_TOKEN}`) return { ok: false, error: 'invalid_auth' };
    return this.views.answer(method, args) ?? this.room.answer(method, args);
  }
}

function answerWith(response: ServerResponse, status: number, body: ApiAnswer): void {
  response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
}
