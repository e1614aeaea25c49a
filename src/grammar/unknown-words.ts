import { replaced, replacing, typedAt, without, written } from './draft.js';
import type { Finding, LineState } from './line-state.js';
import { oneSlipAway } from './spelling.js';
import type { Token } from './token.js';
import type { Repair } from './trouble.js';

/** Neither wrong words by the dozen nor every way to correct them are tried. */
const MOST_WORDS = 3;
const MOST_WAYS = 16;
const MOST_CARDS_NAMED = 6;
const LONGEST_UNCLEAR = 80;
const LIKE_A_CARD = /^[a-z]{1,3}\d{1,3}$/;

/** Words that are not known: never left out silently, corrected only by the person. */
export function unknownWords(state: LineState, unknown: readonly Token[]): Finding {
  const typed = typedAt(state.draft, unknown);
  const cards = [...state.draft.names.cards.values()];
  const asCard = unknown.length === 1 && LIKE_A_CARD.test(unknown[0]?.text ?? '') && cards.length > 0 && takesCard(state);
  return {
    unclear: typed.length > LONGEST_UNCLEAR ? `${Array.from(typed).slice(0, LONGEST_UNCLEAR).join('')}…` : typed,
    problem: asCard ? `a known card: ${cards.slice(0, MOST_CARDS_NAMED).join(', ')}` : unknown.length === 1 ? 'a known word' : 'known words',
    repairs: () => [...corrected(state, unknown), ...(asCard ? withCards(state, unknown, cards) : []), ...shortened(state, unknown)],
  };
}

const takesCard = ({ spoken }: LineState): boolean => spoken === null || spoken.declaration.takes.includes('card') || spoken.declaration.kind === 'lamp';

/** One word corrected and the rest as typed; then all of them corrected. */
function corrected({ draft }: LineState, unknown: readonly Token[]): readonly Repair[] {
  const slips = unknown.slice(0, MOST_WORDS).map((token) => ({ token, meant: oneSlipAway(token.text, draft.names) }));
  const one = slips.flatMap(({ token, meant }) => meant.map((word) => ({ line: replaced(draft, token, word), label: word })));
  if (unknown.length === 1 || unknown.length > MOST_WORDS) return one;
  const all = slips.reduce<readonly (readonly (readonly [Token, string])[])[]>((ways, { token, meant }) => ways.flatMap((way) => meant.map((word) => [...way, [token, word] as const])).slice(0, MOST_WAYS), [[]]);
  return [...one, ...all.map((way) => ({ line: written(draft, new Map(way.flatMap(([token, word]) => [...replacing(token, word)]))), label: way.map(([, word]) => word).join(' ') }))];
}

const withCards = ({ draft }: LineState, unknown: readonly Token[], cards: readonly string[]): readonly Repair[] =>
  unknown.flatMap((token) => cards.slice(0, MOST_WAYS).map((card) => ({ line: replaced(draft, token, card), label: null })));

/** Only to show a form that would be valid: corrected where possible, else left out. */
function shortened({ draft }: LineState, unknown: readonly Token[]): readonly Repair[] {
  const changes = unknown.slice(0, MOST_WAYS).flatMap((token) => [...replacing(token, oneSlipAway(token.text, draft.names)[0] ?? '')]);
  const others = unknown.slice(MOST_WAYS).flatMap((token) => [...replacing(token, '')]);
  return [
    { line: written(draft, new Map([...changes, ...others])), label: null },
    { line: without(draft, unknown), label: null },
  ];
}
