import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { WebSocketServer } from 'ws';
import type { WebSocket } from 'ws';
import { z } from 'zod';

const ackSchema = z.object({ envelope_id: z.string(), payload: z.unknown() });
export type EnvelopeType = 'events_api' | 'slash_commands' | 'interactive';

/** The WebSocket side of the stand-in: greets, hands out envelopes, remembers acknowledgements. */
export class SocketSide {
  readonly #server = new WebSocketServer({ noServer: true });
  readonly #waiting = new Map<string, (payload: unknown) => void>();
  /** Acknowledgements in the order they came. */
  readonly acks: { readonly envelopeId: string; readonly payload: unknown }[] = [];
  /** How many connections were ever greeted. */
  greeted = 0;
  /** When set, connections are accepted but never greeted. */
  mute = false;

  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    this.#server.handleUpgrade(request, socket, head, (line) => {
      line.on('message', (data: Buffer) => {
        this.#take(data.toString());
      });
      if (this.mute) return;
      line.send(JSON.stringify({ type: 'hello', num_connections: 1, connection_info: { app_id: 'A0CLERK' } }));
      this.greeted += 1;
    });
  }

  get open(): number {
    return this.#lines().length;
  }

  /** Sends an envelope over one open connection and resolves with what the acknowledgement carried; rejects after `withinMs`. */
  deliver(type: EnvelopeType, payload: unknown, withinMs = 5_000): Promise<unknown> {
    const [line] = this.#lines();
    if (line === undefined) return Promise.reject(new Error('no open connection'));
    const id = randomUUID();
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        reject(new Error(`not acknowledged within ${withinMs} ms`));
      }, withinMs);
      this.#waiting.set(id, (answer) => {
        clearTimeout(timer);
        resolve(answer);
      });
      line.send(JSON.stringify({ envelope_id: id, type, payload, accepts_response_payload: type !== 'events_api', retry_attempt: 0, retry_reason: '' }));
    });
  }

  /** Any text, as it is. */
  sendRaw(text: string): void {
    for (const line of this.#lines()) line.send(text);
  }

  /** The platform asks its clients to connect anew, as it does every few hours. */
  askToRenew(reason = 'refresh_requested'): void {
    this.sendRaw(JSON.stringify({ type: 'disconnect', reason }));
  }

  /** Cuts all connections without a word. */
  drop(): void {
    for (const line of this.#server.clients) line.terminate();
  }

  close(): void {
    this.drop();
    this.#server.close();
  }

  #lines(): WebSocket[] {
    return [...this.#server.clients].filter((line) => line.readyState === line.OPEN);
  }

  #take(text: string): void {
    const read = ackSchema.safeParse(JSON.parse(text));
    if (!read.success) return;
    this.acks.push({ envelopeId: read.data.envelope_id, payload: read.data.payload });
    this.#waiting.get(read.data.envelope_id)?.(read.data.payload);
    this.#waiting.delete(read.data.envelope_id);
  }
}
