import { describe, expect, it } from 'vitest';
import { plainText, withoutMention } from '../../../src/chat/slack/plain-text.js';
import { slashLine } from '../../../src/chat/slack/slash-line.js';

describe('slashLine', () => {
  const isCommandLine = (line: string): boolean => /^(closed|who|cure)\b/.test(line);

  it.each([
    ['501 P2 lamp 35', 'cure 501 P2 lamp 35'],
    ['closed 501 20 min ago', 'closed 501 20 min ago'],
    ['cure 501 P2', 'cure 501 P2'],
    ['  who waits ', 'who waits'],
    ['', 'help'],
    ['   ', 'help'],
  ])('reads %j as %j', (text, line) => {
    expect(slashLine(text, isCommandLine)).toBe(line);
  });
});

describe('plainText', () => {
  const nameOf = (chatId: string): string => (chatId === 'U1' ? 'anna' : chatId);

  it.each([
    ['501 soft', '501 soft'],
    ['a &amp; b', 'a & b'],
    ['&lt;60', '<60'],
    // Typed as `&amp;`; the platform escaped its ampersand once.
    ['&amp;amp;', '&amp;'],
    ['&amp;lt;', '&lt;'],
    ['&quot;', '&quot;'],
    ['release 501 said <@U1>', 'release 501 said anna'],
    ['<@U2|ben>', 'U2'],
    ['see <#C1|bonding>', 'see #bonding'],
    ['<https://a.b/c?d=1&amp;e|a.b> ok', 'a.b ok'],
    ['<https://a.b/c>', 'https://a.b/c'],
    ['<tel:5013540|501 35 40>', '501 35 40'],
    ['<!here> 501', '@here 501'],
    ['<!date^1700000000^{time}|13:40>', '13:40'],
    ['501\u00a0P2', '501 P2'],
  ])('reads %j as %j', (raw, text) => {
    expect(plainText(raw, nameOf)).toBe(text);
  });
});

describe('withoutMention', () => {
  it('takes off the bot and nobody else', () => {
    expect(withoutMention('<@U0BOT> 501 soft said <@U1>', 'U0BOT').trim()).toBe('501 soft said <@U1>');
    expect(withoutMention('501 soft <@U0BOT|clerk>', 'U0BOT').trim()).toBe('501 soft');
  });

  it('takes the first mention for the bot as long as nobody knows it', () => {
    expect(withoutMention('<@U9> 501 soft said <@U1>', null).trim()).toBe('501 soft said <@U1>');
  });
});
