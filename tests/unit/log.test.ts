import { describe, expect, it } from 'vitest';
import { readConfig } from '../../src/config.js';
import { Secret } from '../../src/config/secret.js';
import { openLog } from '../../src/log.js';

const BOT = 'xoxb-12-ab-CD';
const SIGNING = 'a"quoted"signing secret';

function heard() {
  const lines: string[] = [];
  return { lines, to: { write: (line: string) => lines.push(line) } };
}

describe('the log', () => {
  it('writes one line of JSON per entry from its level up', () => {
    const { lines, to } = heard();
    const log = openLog('warn', { to });
    log.info('not this');
    log.child({ room: 'store' }).warn({ job: '501' }, 'this');
    expect(lines.map((line): unknown => JSON.parse(line))).toEqual([expect.objectContaining({ level: 40, room: 'store', job: '501', msg: 'this' })]);
  });

  it.each(['err', 'error'])('writes an error under %s with its message and where it came from', (name) => {
    const { lines, to } = heard();
    openLog('info', { to }).error({ [name]: new Error('disk full') }, 'failed');
    expect(JSON.parse(lines[0] ?? '')).toHaveProperty([name, 'message'], 'disk full');
    expect(lines[0]).toContain('log.test.ts');
  });

  it('shows no secret of the settings', () => {
    const { lines, to } = heard();
    const config = readConfig({ SLACK_BOT_TOKEN: BOT, SLACK_SIGNING_SECRET: SIGNING, SLACK_CHANNEL: 'C1' });
    openLog('info', { to }).info(config, 'settings');
    expect(lines.join('')).toContain('"channel":"C1"');
    expect(lines.join('')).not.toContain('xoxb');
    expect(lines.join('')).not.toContain('signing secret');
  });

  it('blots out tokens and the given secrets wherever they stand', () => {
    const { lines, to } = heard();
    const log = openLog('info', { to, secrets: [new Secret(SIGNING)] });
    log.info(`called with Bearer ${BOT}`);
    log.error({ err: new Error(`bad signature for ${SIGNING}`, { cause: new Error('xapp-1-A2-c3d4') }) }, 'failed');
    const text = lines.join('');
    expect(text).toContain('Bearer [secret]');
    expect(text).toContain('bad signature for [secret]');
    expect(text).not.toMatch(/xoxb|xapp|quoted/);
  });

  it('blots out what stands in the field of a credential', () => {
    const { lines, to } = heard();
    openLog('info', { to }).info({ token: 'plain-1', headers: { authorization: 'plain-2' }, request: { headers: { cookie: 'plain-3' } } }, 'asked');
    expect(lines.join('')).not.toContain('plain');
    expect(lines.join('').match(/\[secret\]/g)).toHaveLength(3);
  });
});
