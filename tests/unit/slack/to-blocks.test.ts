import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clip } from '../../../src/chat/slack/clip.js';
import { toBlocks } from '../../../src/chat/slack/to-blocks.js';
import type { SlackBlock } from '../../../src/chat/slack/to-blocks.js';
import { toText } from '../../../src/chat/slack/to-text.js';
import type { Answer, Button, Line } from '../../../src/reply/answer.js';
import { checkPost } from '../../support/slack-stand-in/check-post.js';

const answer = (lines: readonly Line[], buttons: readonly Button[] = []): Answer => ({ tone: 'plain', lines, buttons });
const plain = (text: string): Answer => answer([[{ kind: 'text', text }]]);
const strong = (text: string): Answer => answer([[{ kind: 'strong', text }]]);

function markup(blocks: readonly SlackBlock[]): string {
  return blocks.map((block) => (block.type === 'section' ? (block.text?.text ?? '') : '')).join('');
}

/** What a reader sees of escaped text. */
const unescape = (text: string): string => text.replace(/&(?:amp|lt|gt);/g, (entity) => ({ '&amp;': '&', '&lt;': '<', '&gt;': '>' })[entity] ?? entity);

describe('an answer as blocks', () => {
  it('marks a button behind which a reason is written', () => {
    const [, actions] = toBlocks(answer([[{ kind: 'text', text: '501' }]], [{ label: 'Go on', line: 'release 501 j1', asks: 'reason' }, { label: 'Scrap', line: 'scrap 501 j1 foreman' }]), null);
    expect(actions?.type === 'actions' ? actions.elements.map((element) => 'action_id' in element && element.action_id) : []).toEqual(['ask-reason-0', 'press-1']);
  });

  it('shows lines, strong words and buttons', () => {
    const blocks = toBlocks(
      answer(
        [[{ kind: 'text', text: '501: handling at ' }, { kind: 'strong', text: '14:20' }], [{ kind: 'text', text: 'Check by hand.' }]],
        [{ label: 'Hard', line: 'hard 501' }, { label: 'Soft', line: 'soft 501' }],
      ),
      'U1',
    );
    expect(blocks).toEqual([
      { type: 'section', text: { type: 'mrkdwn', text: '<@U1> 501: handling at *14:20*\nCheck by hand.' } },
      {
        type: 'actions',
        elements: [
          { type: 'button', action_id: 'press-0', text: { type: 'plain_text', text: 'Hard', emoji: false }, value: 'hard 501', accessibility_label: 'Hard: hard 501' },
          { type: 'button', action_id: 'press-1', text: { type: 'plain_text', text: 'Soft', emoji: false }, value: 'soft 501', accessibility_label: 'Soft: soft 501' },
        ],
      },
    ]);
  });

  it.each([
    ['<!channel>', '&lt;!channel&gt;'],
    ['<@U1>', '&lt;@U1&gt;'],
    ['&amp;', '&amp;amp;'],
    ['*_~`', '*_~`'],
    ['a > b & c < d', 'a &gt; b &amp; c &lt; d'],
    ['<https://a.b|click>', '&lt;https://a.b|click&gt;'],
  ])('escapes %j exactly once, in blocks and in the text', (hostile, escaped) => {
    expect(markup(toBlocks(plain(hostile), null))).toBe(escaped);
    expect(toText(plain(hostile), null)).toBe(escaped);
  });

  it.each([
    ['<!channel>', '*&lt;!channel&gt;*'],
    [' 14:20 ', ' *14:20* '],
    ['a*b', 'a*b'],
    ['  ', null],
    ['one\ntwo', 'one\ntwo'],
  ])('makes %j strong only where the asterisks would hold', (text, shown) => {
    const blocks = toBlocks(strong(text), null);
    if (shown === null) expect(blocks).toEqual([]);
    else expect(markup(blocks)).toBe(shown);
  });

  it('mentions nobody who has no chat id of the right shape', () => {
    expect(toText(plain('x'), '!channel')).toBe('!channel x');
    expect(toText(plain('x'), 'U1> <!here')).toBe('U1&gt; &lt;!here x');
    expect(markup(toBlocks(plain('x'), 'U1> <!here'))).toBe('U1&gt; &lt;!here x');
  });

  it('gives the platform a text even when there is none', () => {
    expect(toText(answer([]), null)).toBe('(no text)');
    expect(toBlocks(answer([]), null)).toEqual([]);
  });

  it('cuts what is far too long, in blocks as in text, and says so', () => {
    const long = plain('&'.repeat(20_000));
    const blocks = toBlocks(long, 'U1');
    expect(blocks.length).toBe(5);
    expect(markup(blocks).endsWith('…')).toBe(true);
    expect(markup(blocks).length).toBeLessThan(13_000);
    expect(toText(long, null).length).toBeLessThan(40_000);
    expect(toText(long, null).endsWith('…')).toBe(true);
  });

  it('splits many buttons over blocks and leaves out one that no press could carry', () => {
    const buttons = [...Array.from({ length: 30 }, (_, n) => ({ label: `b${n}`, line: `check ${n}` })), { label: 'too long', line: 'x'.repeat(2_001) }];
    const blocks = toBlocks(answer([[{ kind: 'text', text: 'x' }]], buttons), null).filter((block) => block.type === 'actions');
    expect(blocks.map((block) => block.elements.length)).toEqual([25, 5]);
  });

  it('always makes what the platform takes, and what the reader sees is what was said', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 900 });
    const line = fc.array(fc.record({ kind: fc.constantFrom('text' as const, 'strong' as const), text }), { maxLength: 4 });
    const button = fc.record({ label: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 120 }), line: fc.string({ minLength: 1, maxLength: 60 }) });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), fc.array(button, { maxLength: 6 }), fc.option(fc.constant('U1')), (lines, buttons, mention) => {
        const said = answer(lines, buttons);
        const shown = toText(said, mention);
        const blocks = toBlocks(said, mention);
        expect(checkPost({ text: shown }, blocks)).toBeNull();
        expect(shown.replace(/^<@U1> /, '')).not.toMatch(/[<>]/);
        expect(markup(blocks).replace(/^<@U1> /, '')).not.toMatch(/[<>]/);
        const whole = lines.map((spans) => spans.map((span) => span.text).join('')).join('\n');
        if (whole.length < 7_000 && whole.trim() !== '') expect(unescape(shown)).toBe(mention === null ? whole : `<@U1> ${whole}`);
      }),
    );
  });
});

describe('clip', () => {
  it('keeps what fits and never cuts a character in half', () => {
    expect(clip('abc', 3)).toBe('abc');
    expect(clip('abcd', 3)).toBe('ab…');
    expect(clip('a🛠🛠', 4)).toBe('a🛠…');
    expect(clip('🛠🛠', 3)).toBe('🛠…');
  });
});
