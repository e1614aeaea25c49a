import { webApi } from '@slack/bolt';
import { describe, expect, it } from 'vitest';
import { fromTheLibrary } from '../../../src/chat/slack/from-the-library.js';
import { Health } from '../../../src/chat/slack/health.js';
import { quietLog } from '../../support/quiet-log.js';

describe('Health', () => {
  it('is as bad as its worst part and gives that part\'s reason', () => {
    const health = new Health(quietLog(), ['token', 'line']);
    expect(health.status().state).toBe('starting');
    health.set('token', 'up', null);
    expect(health.status().state).toBe('starting');
    health.set('line', 'up', null);
    expect(health.status()).toEqual({ state: 'up', reason: null });
    health.set('home', 'down', 'invite the bot');
    expect(health.status()).toEqual({ state: 'down', reason: 'invite the bot' });
    health.set('home', 'up', null);
    expect(health.status()).toEqual({ state: 'up', reason: null });
  });

  it('says a change once', () => {
    const log = quietLog();
    const health = new Health(log, []);
    for (let n = 0; n < 3; n += 1) health.set('line', 'down', 'gone');
    health.set('line', 'up', null);
    expect(log.lines.map((line) => line.split(':')[0])).toEqual(['warn', 'info']);
  });
});

describe('fromTheLibrary', () => {
  const thrownIn = (file: string): Error => Object.assign(new Error('x'), { stack: `Error: x\n    at f (${file}:1:1)` });

  it.each([
    ['a call that failed', new webApi.WebAPIHTTPError(500, 'x', {}, ''), true],
    ['an error thrown in its files', thrownIn('/app/node_modules/@slack/socket-mode/dist/src/SocketModeClient.js'), true],
    ['the empty rejection of its WebSocket code', undefined, true],
    ['an error of our own', thrownIn('/app/dist/clerk/clerk.js'), false],
    ['an error of the database', Object.assign(thrownIn('/app/node_modules/better-sqlite3/lib/database.js'), { code: 'SQLITE_FULL' }), false],
    ['a thrown text', 'stop', false],
  ])('knows %s', (_name, reason, expected) => {
    expect(fromTheLibrary(reason)).toBe(expected);
  });
});
