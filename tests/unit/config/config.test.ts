import { existsSync } from 'node:fs';
import { inspect } from 'node:util';
import { describe, expect, it } from 'vitest';
import { readConfig, type Config, type Environment } from '../../../src/config.js';

const BOT = 'xoxb-bot-token';
const APP = 'xapp-app-token';
const SIGNING = 'signing-secret-text';
const SOCKET = { SLACK_BOT_TOKEN: BOT, SLACK_APP_TOKEN: APP, SLACK_CHANNEL: 'C02ABC' };
const HTTP = { SLACK_BOT_TOKEN: BOT, SLACK_SIGNING_SECRET: SIGNING, SLACK_CHANNEL: 'C02ABC' };

function config(environment: Environment): Config {
  const read = readConfig(environment);
  if (!read.ok) throw new Error(read.problems.join('\n'));
  return read.config;
}

function problems(environment: Environment): readonly string[] {
  const read = readConfig(environment);
  return read.ok ? [] : read.problems;
}

describe('the settings', () => {
  it('have defaults that run at once: own data folder, loopback, the shipped examples, no Slack', () => {
    const read = config({ PATH: '/bin' });
    expect(read).toMatchObject({ data: './data', host: '127.0.0.1', port: 4780, shop: { example: true }, cards: { example: true }, procedures: { example: true }, clock: null, logLevel: 'info', slack: null });
    expect(existsSync(read.shop.path)).toBe(true);
    expect(existsSync(read.cards.path)).toBe(true);
    expect(existsSync(read.procedures.path)).toBe(true);
  });

  it('are taken from the environment, and an empty variable is not set', () => {
    const read = config({ CURECLERK_DATA: '/var/lib/shop', CURECLERK_HOST: '::1', CURECLERK_PORT: '0', CURECLERK_SHOP: 'shop.yaml', CURECLERK_CARDS: 'cards', CURECLERK_PROCEDURES: 'procedures', CURECLERK_CLOCK: ' x60 ', CURECLERK_LOG: 'debug', SLACK_BOT_TOKEN: '' });
    expect(read).toEqual({ data: '/var/lib/shop', host: '::1', port: 0, shop: { path: 'shop.yaml', example: false }, cards: { path: 'cards', example: false }, procedures: { path: 'procedures', example: false }, clock: 'x60', logLevel: 'debug', slack: null });
    expect(config({ CURECLERK_PORT: '', CURECLERK_DATA: ' ' })).toMatchObject({ port: 4780, data: './data' });
  });

  it.each(['127.0.0.1', '127.8.0.1', 'localhost', '::1', '[::1]'])('let the page listen on %s', (host) => {
    expect(config({ CURECLERK_HOST: host }).host).toBe(host);
  });

  it.each(['0.0.0.0', '192.168.1.5', '::', 'shop.example', '127.example.org', '127.0.0.1.example.org'])('do not let the page listen on %s before there is a sign-in', (host) => {
    expect(problems({ CURECLERK_HOST: host })).toEqual([expect.stringContaining('sign-in is not built yet')]);
  });

  it.each(['65536', '-1', '80.5', 'http', '4780x', '0x50'])('refuse port %s', (port) => {
    expect(problems({ CURECLERK_PORT: port })).toEqual([`CURECLERK_PORT must be a whole number from 0 to 65535, not "${port}".`]);
  });

  it('refuse an unknown variable of their own and name the nearest', () => {
    expect(problems({ CURECLERK_PROT: '1', OTHER_PROT: '1' })).toEqual(['CURECLERK_PROT is not known; did you mean CURECLERK_PORT?']);
    expect(problems({ CURECLERK_MYSTERY: '1' })).toEqual([expect.stringContaining('known are CURECLERK_DATA')]);
  });

  it('refuse an unknown log level and tell every problem at once', () => {
    expect(problems({ CURECLERK_LOG: 'loud', CURECLERK_PORT: 'x', CURECLERK_HOST: '0.0.0.0' })).toHaveLength(3);
  });
});

describe('the settings of Slack', () => {
  it('choose the socket with an app token and HTTP with a signing secret', () => {
    expect(config(SOCKET).slack).toMatchObject({ mode: 'socket', apiUrl: null, channel: 'C02ABC', signingSecret: null });
    expect(config(HTTP).slack).toMatchObject({ mode: 'http', appToken: null });
    expect(config({ ...SOCKET, ...HTTP }).slack?.mode).toBe('socket');
  });

  it('hold the secrets for those who ask', () => {
    const { slack } = config({ ...SOCKET, ...HTTP });
    expect([slack?.botToken.reveal(), slack?.appToken?.reveal(), slack?.signingSecret?.reveal()]).toEqual([BOT, APP, SIGNING]);
  });

  it('show no secret in print, in JSON or in an inspection', () => {
    const read = config({ ...SOCKET, ...HTTP });
    const shown = [JSON.stringify(read), inspect(read, { depth: null, showHidden: true }), String(read.slack?.botToken), `is ${String(read.slack?.signingSecret)}`].join('\n');
    expect(shown).toContain('[secret]');
    for (const secret of [BOT, APP, SIGNING]) expect(shown).not.toContain(secret);
  });

  it.each([
    ['the bot token', { ...SOCKET, SLACK_BOT_TOKEN: undefined }, 'SLACK_BOT_TOKEN is missing'],
    ['the channel', { ...HTTP, SLACK_CHANNEL: undefined }, 'SLACK_CHANNEL is missing'],
    ['the way in', { SLACK_BOT_TOKEN: BOT, SLACK_CHANNEL: 'C1' }, 'SLACK_APP_TOKEN (connection from here'],
  ])('say that %s is missing', (_, environment, expected) => {
    expect(problems(environment)).toEqual([expect.stringContaining(expected)]);
  });

  it('say everything that is missing', () => {
    expect(problems({ SLACK_SIGNING_SECRET: SIGNING })).toHaveLength(2);
  });

  it('need nothing when no secret is set', () => {
    expect(config({ SLACK_CHANNEL: 'C1', SLACK_API_URL: 'https://example.org/' }).slack).toBeNull();
  });

  it('notice tokens in each other’s place, and a channel by name, without showing a token', () => {
    const said = problems({ SLACK_BOT_TOKEN: APP, SLACK_APP_TOKEN: BOT, SLACK_CHANNEL: '#bonding bay' });
    expect(said).toHaveLength(3);
    expect(said.join('\n')).not.toMatch(/app-token|bot-token/);
  });

  it.each([
    ['http://127.0.0.1:5055/api', 'http://127.0.0.1:5055/api/'],
    ['http://localhost:5055/api/', 'http://localhost:5055/api/'],
    ['http://[::1]:5055/', 'http://[::1]:5055/'],
    ['https://relay.example.org/api', 'https://relay.example.org/api/'],
  ])('take %s as the base of the methods', (typed, expected) => {
    expect(config({ ...SOCKET, SLACK_API_URL: typed }).slack?.apiUrl).toBe(expected);
  });

  it.each(['http://relay.example.org/api/', 'ftp://127.0.0.1/', 'relay'])('send no token to %s', (url) => {
    expect(problems({ ...SOCKET, SLACK_API_URL: url })).toEqual([expect.stringContaining('SLACK_API_URL must be an address')]);
  });

  it('keep a practice clock away from a real workspace', () => {
    const refused = [expect.stringContaining('CURECLERK_CLOCK sets a practice clock')];
    expect(problems({ ...SOCKET, CURECLERK_CLOCK: 'x60' })).toEqual(refused);
    expect(problems({ ...SOCKET, CURECLERK_CLOCK: 'x60', SLACK_API_URL: 'https://relay.example.org/' })).toEqual(refused);
    expect(config({ ...SOCKET, CURECLERK_CLOCK: 'x60', SLACK_API_URL: 'http://127.0.0.1:5055/' }).clock).toBe('x60');
  });
});
