import { isIPv4 } from 'node:net';

/** Whether a host name or address is this computer and nothing else. */
export function isLoopback(host: string): boolean {
  const bare = host.toLowerCase().replace(/^\[(.*)\]$/, '$1');
  return bare === 'localhost' || bare === '::1' || (isIPv4(bare) && bare.startsWith('127.'));
}
