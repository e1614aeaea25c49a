import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { z } from 'zod';

const Button = z.object({ id: z.string(), label: z.string() });
const Reply = z.object({ id: z.string(), text: z.string(), buttons: z.array(Button) });
const Said = z.object({ reply: Reply });
const About = z.object({ job: z.string().nullable(), joint: z.string().nullable(), card: z.string().nullable(), kind: z.string() });
const Post = z.object({ seq: z.number(), at: z.string(), dueAt: z.string(), to: z.string(), about: About, reply: Reply });
const Feed = z.object({ posts: z.array(Post) });
const Milestone = z.object({ kind: z.string(), dueAt: z.string().nullable(), state: z.enum(['running', 'due', 'confirmed', 'held', 'asleep']), share: z.number() });
const Sheet = z.object({ job: z.string(), cures: z.array(z.object({ joint: z.string(), card: z.string(), milestones: z.array(Milestone) })) });

const Now = z.object({ now: z.string() });

export type ReplyJson = z.infer<typeof Reply>;
export type PostJson = z.infer<typeof Post>;
export type SheetJson = z.infer<typeof Sheet>;

export const tempFolder = (): string => mkdtempSync(join(tmpdir(), 'cureclerk-'));

/** The built program as its own process, talked to from outside. */
export class Program {
  readonly url: string;
  readonly #child: ChildProcess;

  private constructor(url: string, child: ChildProcess) {
    this.url = url;
    this.#child = child;
  }

  /** Starts `dist/main.js` with a free port and waits until it takes messages. */
  static async start(environment: Readonly<Record<string, string>>, words: readonly string[] = []): Promise<Program> {
    const { PATH = '', HOME = '' } = process.env;
    const child = spawn(process.execPath, ['dist/main.js', ...words], { env: { PATH, HOME, CURECLERK_PORT: '0', CURECLERK_LOG: 'error', ...environment }, stdio: ['ignore', 'pipe', 'pipe'] });
    const errors: string[] = [];
    child.stderr.on('data', (chunk: Buffer) => errors.push(chunk.toString()));
    const url = await new Promise<string>((resolve, reject) => {
      createInterface({ input: child.stdout }).on('line', (line) => {
        if (line.startsWith('ready ')) resolve(line.slice('ready '.length));
      });
      child.once('exit', (code) => { reject(new Error(`The program ended with ${String(code)}:\n${errors.join('')}`)); });
    });
    return new Program(url, child);
  }

  async say(from: string, text: string): Promise<ReplyJson> {
    return Said.parse(await this.#send('/api/messages', { from, text })).reply;
  }

  async press(from: string, reply: ReplyJson, label: string): Promise<ReplyJson> {
    const button = reply.buttons.find((one) => one.label === label);
    if (button === undefined) throw new Error(`No button ${label} under: ${reply.text}`);
    return Said.parse(await this.#send('/api/press', { from, reply: reply.id, button: button.id })).reply;
  }

  async feed(after = 0): Promise<PostJson[]> {
    return Feed.parse(await this.get(`/api/feed?after=${after}`)).posts;
  }

  async job(no: string): Promise<SheetJson> {
    return Sheet.parse(await this.get(`/api/jobs/${no}`));
  }

  async advance(duration: string): Promise<void> {
    await this.#send('/api/clock', { advance: duration });
  }

  /** To the next moment at which something is planned, at the latest to the instant `until`; gives the instant it is then. */
  async advanceToNext(until: string): Promise<string> {
    return Now.parse(await this.#send('/api/clock', { to: 'next', until })).now;
  }

  async get(path: string): Promise<unknown> {
    const response = await fetch(this.url + path);
    if (!response.ok) throw new Error(`GET ${path}: ${response.status} ${await response.text()}`);
    return response.json();
  }

  async post(path: string, body: unknown): Promise<Response> {
    return fetch(this.url + path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
  }

  signal(name: NodeJS.Signals): void {
    this.#child.kill(name);
  }

  /** `kill -9`: no goodbye. */
  async kill(): Promise<void> {
    this.#child.kill('SIGKILL');
    await this.#ended();
  }

  /** SIGTERM; returns the exit code. */
  async stop(): Promise<number | null> {
    this.#child.kill('SIGTERM');
    return this.#ended();
  }

  async #ended(): Promise<number | null> {
    if (this.#child.exitCode !== null || this.#child.signalCode !== null) return this.#child.exitCode;
    return new Promise((resolve) => this.#child.once('exit', (code) => { resolve(code); }));
  }

  async #send(path: string, body: unknown): Promise<unknown> {
    const response = await this.post(path, body);
    if (!response.ok) throw new Error(`POST ${path}: ${response.status} ${await response.text()}`);
    return response.json();
  }
}
