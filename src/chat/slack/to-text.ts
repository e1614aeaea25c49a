import type { Answer } from '../../reply/answer.js';
import { clip } from './clip.js';
import { escapeText, mentionOf } from './mrkdwn.js';

/** The platform cuts at 40,000; escaping may lengthen by five. */
const LONGEST = 7_000;
/** The platform refuses a message without text. */
const NOTHING_SAID = '(no text)';

/**
 * The whole answer as one text: what notifications show and screen readers read.
 * `mention` is the chat id of the person who must act; it stands first.
 */
export function toText(answer: Answer, mention: string | null): string {
  const lines = answer.lines.map((line) => line.map((span) => span.text).join(''));
  const said = escapeText(clip(lines.join('\n'), LONGEST));
  const text = said.trim() === '' ? NOTHING_SAID : said;
  return mention === null ? text : `${mentionOf(mention)} ${text}`;
}
