/** `text`, shortened to at most `limit` UTF-16 units with an ellipsis, never cutting a character in half. */
export function clip(text: string, limit: number): string {
  if (text.length <= limit) return text;
  let kept = '';
  for (const character of text) {
    if (kept.length + character.length >= limit) break;
    kept += character;
  }
  return `${kept}…`;
}
