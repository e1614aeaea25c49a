import { check } from './commands/check.js';
import { replaced, replacing, typedAt, without, written } from './draft.js';
import { wordsOfAll } from './language.js';
import type { Finding, LineState } from './line-state.js';
import type { PlainProblem } from './problem.js';
import { isNegation } from './small-words.js';
import { asTyped } from './said.js';
import { oneSlipAway } from './spelling.js';
import type { Token } from './token.js';
import type { Repair } from './trouble.js';

/** Neither wrong words by the dozen nor every way to correct them are tried. */
const MOST_WORDS = 3;
const MOST_WAYS = 16;
const MOST_CARDS_NAMED = 12;
/** Beside a question a phone shows this many. */
const MOST_BUTTONS = 4;
const LONGEST_UNCLEAR = 80;
const LIKE_A_CARD = /^(?!j\d)[a-z]{1,2}\d{1,2}$/;

/** What an unknown word would have been, if it were well formed. */
const LOOKS: readonly (readonly [RegExp, PlainProblem])[] = [
  [/^#?\d{8,}$/, 'job-figures'],
  [/^-?\d+[.,]\d{3,}°?[cf]?$/, 'two-decimals'],
  [/^\d+:\d*$/, 'such-time'],
  [/^j\d+$/, 'joint-range'],
];

const HARD: ReadonlySet<string> = new Set(wordsOfAll(check.forms['hard'] ?? { en: [], de: [], es: [] }));

/** Words that are not known: never left out silently, corrected only by the person. */
export function unknownWords(state: LineState, unknown: readonly Token[]): Finding {
  const typed = typedAt(state.draft, unknown);
  const cards = [...state.draft.names.cards.values()];
  const [only] = unknown.length === 1 ? unknown : [];
  const asCard = only !== undefined && LIKE_A_CARD.test(only.text) && cards.length > 0 && takesCard(state);
  return {
    unclear: typed.length > LONGEST_UNCLEAR ? `${Array.from(typed).slice(0, LONGEST_UNCLEAR).join('')}…` : typed,
    problem: asCard ? { is: 'known-card', cards: cards.slice(0, MOST_CARDS_NAMED) } : only === undefined ? 'known-words' : (LOOKS.find(([pattern]) => pattern.test(only.text))?.[1] ?? 'known-word'),
    repairs: () => {
      const near = corrected(state, unknown);
      return [...near, ...(asCard ? withCards(state, unknown, cards, near) : []), ...shortened(state, unknown)];
    },
  };
}

const takesCard = ({ spoken }: LineState): boolean => spoken === null || spoken.declaration.takes.includes('card') || spoken.declaration.kind === 'lamp';

/** One word corrected and the rest as typed; then all of them corrected. */
function corrected(state: LineState, unknown: readonly Token[]): readonly Repair[] {
  const { draft } = state;
  const slips = unknown.slice(0, MOST_WORDS).map((token) => ({ token, meant: meantBy(token, state) }));
  const one = slips.flatMap(({ token, meant }) => meant.map((word) => ({ line: replaced(draft, token, word), label: asTyped(word) })));
  if (unknown.length === 1 || unknown.length > MOST_WORDS) return one;
  const all = slips.reduce<readonly (readonly (readonly [Token, string])[])[]>((ways, { token, meant }) => ways.flatMap((way) => meant.map((word) => [...way, [token, word] as const])).slice(0, MOST_WAYS), [[]]);
  return [...one, ...all.map((way) => ({ line: written(draft, new Map(way.flatMap(([token, word]) => [...replacing(token, word)]))), label: asTyped(way.map(([, word]) => word).join(' ')) }))];
}

/** Beside a lamp a name is sooner another lamp than a card, which would make another command of the line. */
function meantBy(token: Token, { draft: { names }, spoken }: LineState): readonly string[] {
  const meant = oneSlipAway(token.text, names);
  const isLamp = (word: string): boolean => names.lamps.has(word.toLowerCase()) || names.pads.has(word.toLowerCase());
  const lampOnly = spoken?.declaration.kind === 'lamp' && meant.some(isLamp);
  return lampOnly ? meant.filter((word) => isLamp(word) || !names.cards.has(word.toLowerCase())) : meant;
}

/** Never one card chosen for somebody: a button for each where they are few, and the line without it, which asks. */
function withCards({ draft, spoken }: LineState, unknown: readonly Token[], cards: readonly string[], near: readonly Repair[]): readonly Repair[] {
  const buttons = near.length === 0 && cards.length <= MOST_BUTTONS;
  const bare = without(draft, unknown);
  const asking = spoken?.declaration.takes.includes('card') === true ? bare : `cure ${bare}`;
  const each = unknown.flatMap((token) => cards.slice(0, MOST_WAYS).map((card) => ({ line: replaced(draft, token, card), label: buttons ? asTyped(card) : null })));
  return [{ line: asking, label: null }, ...each];
}

/** Only to show a form that would be valid: corrected where possible, else left out. */
function shortened({ draft }: LineState, unknown: readonly Token[]): readonly Repair[] {
  if (unknown.some((token) => isNegation(token.text))) return [];
  const meant = unknown.slice(0, MOST_WAYS).map((token) => ({ token, word: oneSlipAway(token.text, draft.names)[0] ?? '' }));
  // Among words that are left out, "hard" is never put into anybody's mouth.
  const changes = meant.flatMap(({ token, word }) => [...replacing(token, HARD.has(word) ? '' : word)]);
  const others = unknown.slice(MOST_WAYS).flatMap((token) => [...replacing(token, '')]);
  return [
    { line: written(draft, new Map([...changes, ...others])), label: null },
    { line: without(draft, unknown), label: null },
  ];
}
