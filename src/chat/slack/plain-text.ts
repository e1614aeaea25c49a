/** `<@U1>`, `<#C1|name>`, `<https://x|label>`, `<!date^…|text>`: what the platform makes of typed text. */
const MARKED = /<([^<>]*)>/g;
const ENTITIES: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>' };

/**
 * Typed text as the person saw it while typing: mentions become names, links their label, and the three
 * entities are decoded exactly once. `nameOf` names a mentioned person by chat id.
 */
export function plainText(raw: string, nameOf: (chatId: string) => string): string {
  return raw
    .replace(MARKED, (_whole, inside: string) => unmark(inside, nameOf))
    .replace(/&(?:amp|lt|gt);/g, (entity) => ENTITIES[entity] ?? entity)
    .replaceAll('\u00a0', ' ')
    .trim();
}

/** Takes the bot's own mention off; without a known bot id, the first mention in the text is the bot. */
export function withoutMention(raw: string, botUserId: string | null): string {
  return botUserId === null ? raw.replace(/<@[^<>]*>/, ' ') : raw.replaceAll(new RegExp(`<@${botUserId}(?:\\|[^<>]*)?>`, 'g'), ' ');
}

function unmark(inside: string, nameOf: (chatId: string) => string): string {
  const [target = '', label] = inside.split('|', 2);
  if (target.startsWith('@')) return nameOf(target.slice(1));
  if (target.startsWith('#')) return `#${label ?? target.slice(1)}`;
  if (target.startsWith('!')) return label ?? `@${target.slice(1)}`;
  return label ?? target;
}
