import type { MiddlewareHandler } from 'hono';
import { Problem } from './problem.js';

const LOOPBACK = ['127.0.0.1', 'localhost', '[::1]'] as const;

const HEADERS = {
  'content-security-policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
} as const;

/**
 * Keeps strange web pages out: a page elsewhere can neither point its own host name at this machine
 * (DNS rebinding) nor post from its own origin. Sets the security headers on every answer, problems included.
 */
export function guard(allowedHosts: readonly string[]): MiddlewareHandler {
  const hosts = new Set<string>([...LOOPBACK, ...allowedHosts.map((host) => host.toLowerCase())]);
  return async (c, next) => {
    for (const [name, value] of Object.entries(HEADERS)) c.header(name, value);
    const host = c.req.header('host') ?? new URL(c.req.url).host;
    if (!hosts.has(hostName(host))) throw new Problem(403, `This page is not served under the name ${hostName(host)}. Add that name to the allowed hosts.`, 'Host');
    const origin = c.req.header('origin');
    if (c.req.method === 'POST' && origin !== undefined && hostOf(origin) !== host.toLowerCase()) {
      throw new Problem(403, 'Only the page itself may send this.', 'Origin');
    }
    await next();
  };
}

/** Without the port; an IPv6 address keeps its brackets. */
const hostName = (host: string): string => host.toLowerCase().replace(/:\d+$/, '');

const hostOf = (origin: string): string | null => (URL.canParse(origin) ? new URL(origin).host : null);
