import type { types } from '@slack/bolt';
import type { Answer, Button, Line } from '../../reply/answer.js';
import { clip } from './clip.js';
import { ASKS_REASON } from './reason-view.js';
import { mentionOf, spanMarkup } from './mrkdwn.js';

export type SlackBlock = types.SectionBlock | types.ActionsBlock | types.ContextBlock;

/** Limits of the platform: 3,000 characters per section, and about 13,000 per message although none is written down. */
const SECTION_LIMIT = 2_900;
const SECTIONS = 4;
const BUTTONS_PER_BLOCK = 25;
const LABEL_LIMIT = 75;
const VALUE_LIMIT = 2_000;
/** Plain characters per piece: even if every one is escaped to five, a piece fits into a section. */
const PIECE = 400;

/** An answer as the platform's blocks; `mention` is the chat id of the person who must act. */
export function toBlocks(answer: Answer, mention: string | null): SlackBlock[] {
  const pieces = [...(mention === null ? [] : [`${mentionOf(mention)} `]), ...answer.lines.flatMap(linePieces)];
  return [...pack(pieces).map(section), ...buttonBlocks(answer.buttons)];
}

export function section(markup: string): types.SectionBlock {
  return { type: 'section', text: { type: 'mrkdwn', text: markup } };
}

/** A line as markup, cut into pieces that are each complete in themselves. */
function linePieces(line: Line, index: number): string[] {
  const pieces = line.flatMap((span) => cut(span.text).map((text) => spanMarkup({ kind: span.kind, text })));
  return index === 0 ? pieces : ['\n', ...pieces];
}

function cut(text: string): string[] {
  const characters = Array.from(text);
  const pieces: string[] = [];
  for (let start = 0; start < characters.length; start += PIECE) pieces.push(characters.slice(start, start + PIECE).join(''));
  return pieces;
}

function pack(pieces: readonly string[]): string[] {
  const sections: string[] = [];
  let current = '';
  for (const piece of pieces) {
    if (current.length + piece.length > SECTION_LIMIT) {
      sections.push(current);
      current = '';
    }
    current += piece;
  }
  sections.push(current);
  const filled = sections.filter((text) => text.trim() !== '');
  return filled.length <= SECTIONS ? filled : [...filled.slice(0, SECTIONS), '…'];
}

function buttonBlocks(buttons: readonly Button[]): types.ActionsBlock[] {
  const elements = buttons.filter((button) => button.line.length <= VALUE_LIMIT).map(buttonElement);
  const blocks: types.ActionsBlock[] = [];
  for (let start = 0; start < elements.length; start += BUTTONS_PER_BLOCK) {
    blocks.push({ type: 'actions', elements: elements.slice(start, start + BUTTONS_PER_BLOCK) });
  }
  return blocks;
}

function buttonElement(button: Button, index: number): types.Button {
  return {
    type: 'button',
    action_id: `${button.asks === undefined ? 'press' : ASKS_REASON}-${index}`,
    text: { type: 'plain_text', text: clip(button.label, LABEL_LIMIT), emoji: false },
    value: button.line,
    accessibility_label: clip(`${button.label}: ${button.line}`, LABEL_LIMIT),
  };
}
