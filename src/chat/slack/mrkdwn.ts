import type { Span } from '../../reply/answer.js';

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };

/** Text that nobody is pinged by: the three control characters of the platform's markup, escaped once. */
export function escapeText(text: string): string {
  return text.replace(/[&<>]/g, (character) => ESCAPES[character] ?? character);
}

/** `<@U…>` for a chat id; anything that does not look like one is plain text. */
export function mentionOf(chatId: string): string {
  return /^[UW][A-Z0-9]+$/.test(chatId) ? `<@${chatId}>` : escapeText(chatId);
}

export function spanMarkup(span: Span): string {
  switch (span.kind) {
    case 'text':
      return escapeText(span.text);
    case 'strong':
      return strongMarkup(span.text);
  }
}

/** Bold needs its asterisks at the letters, and a foreign asterisk inside would end it: then it stays plain. */
function strongMarkup(text: string): string {
  const core = text.trim();
  if (core === '' || /[*\n]/.test(core)) return escapeText(text);
  const start = text.indexOf(core);
  return `${text.slice(0, start)}*${escapeText(core)}*${text.slice(start + core.length)}`;
}
