import { Hono, type Context } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { deskJson } from './desk-json.js';
import { feed, feedStream } from './feed.js';
import { guard } from './guard.js';
import { jobJson, waitingJson } from './page-json.js';
import type { PagePorts } from './page-ports.js';
import { advanceClock, tellPracticeDay } from './practice.js';
import { Problem, problemResponse } from './problem.js';
import { BUILT_PAGE, staticFiles, type StaticFile } from './static-files.js';
import { knowsMessage, takeMessage, takePress } from './talk.js';

const LARGEST_BODY = 16 * 1024;

type Answering = (c: Context) => Response | Promise<Response>;

/** The local room: the page, its interface for programs, and the event stream. */
export function pageApp(ports: PagePorts): Hono {
  const app = new Hono();
  app.onError((error, c) => problemResponse(c, error instanceof Problem ? error : unexpected(error, ports)));
  app.notFound((c) => problemResponse(c, new Problem(404, `There is nothing at ${c.req.path}.`)));
  app.use(guard(ports.allowedHosts ?? []));
  app.use('/api/*', fresh);
  app.use('/api/*', bodyLimit({ maxSize: LARGEST_BODY, onError: tooLarge }));

  allow(app, 'POST', '/api/messages', (c) => takeMessage(c, ports));
  allow(app, 'GET', '/api/messages/:key', (c) => knowsMessage(c, ports));
  allow(app, 'POST', '/api/press', (c) => takePress(c, ports));
  allow(app, 'POST', '/api/clock', (c) => advanceClock(c, ports));
  allow(app, 'GET', '/api/practice', (c) => tellPracticeDay(c, ports));
  allow(app, 'GET', '/api/feed', (c) => feed(c, ports.desk));
  allow(app, 'GET', '/api/feed/stream', (c) => feedStream(c, ports));
  allow(app, 'GET', '/api/waiting', (c) => c.json({ waiting: ports.desk.waiting().map(waitingJson) }));
  allow(app, 'GET', '/api/jobs/:job', (c) => jobOf(c, ports));
  allow(app, 'GET', '/api/desk', (c) => c.json(deskJson(c, ports)));
  allow(app, 'GET', '/healthz', (c) => healthOf(c, ports));
  for (const file of staticFiles(ports.staticDir ?? BUILT_PAGE)) allow(app, 'GET', file.path, (c) => send(c, file));
  return app;
}

/** One method per path; GET answers HEAD as well. */
function allow(app: Hono, method: 'GET' | 'POST', path: string, answer: Answering): void {
  app.on(method, path, answer);
  app.all(path, (c) => {
    c.header('allow', method === 'GET' ? 'GET, HEAD' : method);
    return problemResponse(c, new Problem(405, `${path} answers ${method} only.`));
  });
}

/** What is asked for here changes by the minute. */
const fresh = async (c: Context, next: () => Promise<void>): Promise<void> => {
  await next();
  if (!c.res.headers.has('cache-control')) c.header('cache-control', 'no-store');
};

const tooLarge = (): never => {
  throw new Problem(413, `The body is larger than ${LARGEST_BODY / 1024} KiB.`, 'body');
};

function unexpected(error: Error, ports: PagePorts): Problem {
  ports.report(error);
  return new Problem(500, 'Something failed here and was written to the log. Send it again.');
}

function jobOf(c: Context, { desk }: PagePorts): Response {
  const job = c.req.param('job') ?? '';
  const sheet = desk.jobSheet(job);
  if (sheet === null) throw new Problem(404, `There is no job ${job} in the book.`, 'job');
  return c.json(jobJson(sheet));
}

function healthOf(c: Context, ports: PagePorts): Response {
  const health = ports.health();
  c.header('cache-control', 'no-store');
  return c.json(health, health.ok ? 200 : 503);
}

/** Kept by the browser, asked for again each time: a new build shows at once. */
function send(c: Context, file: StaticFile): Response {
  c.header('etag', file.etag);
  c.header('cache-control', 'no-cache');
  if (c.req.header('if-none-match') === file.etag) return c.body(null, 304);
  return c.body(file.body, 200, { 'content-type': file.kind });
}
