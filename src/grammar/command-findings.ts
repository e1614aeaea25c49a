import { isBeadDepth } from './bead-depth.js';
import { COMMANDS, commandWord, shownWords } from './command-table.js';
import type { Gap } from './declaration.js';
import { inserted, replaced, typedAt, without, written } from './draft.js';
import { jobTyped, type Finding, type LineState } from './line-state.js';
import type { Problem, Thing } from './problem.js';
import { ago, asChoice, asTyped, type ShownWord } from './said.js';
import { isNegation } from './small-words.js';
import type { Token, TokenOf } from './token.js';
import type { Repair } from './trouble.js';

/** What a line without a command word most likely wants to be, harmless questions first. */
const LIKELY = ['when', 'read', 'depth', 'closed', 'cure', 'lamp', 'air'] as const;
const THINGS: Readonly<Partial<Record<Token['kind'], Thing>>> = {
  degrees: 'temperature',
  card: 'card',
  joint: 'joint',
  method: 'method',
  milestone: 'milestone',
  depth: 'depth',
  humidity: 'humidity',
};
const NO_WORD: ShownWord = { en: '', de: '', es: '' };
/** What is missing goes behind these, before times and remarks. */
const STEM: ReadonlySet<Token['kind']> = new Set(['form', 'number', 'joint', 'card', 'depth', 'lamp', 'milestone']);
/** A number that stands alone may be minutes, up to this many. */
const MOST_MINUTES_MEANT = 120;
/** Or the depth of a bead, up to this many millimetres. Common practice, no source. */
const DEEPEST_MEANT = 10;

export const noCommand = ({ draft }: LineState): Finding => ({
  unclear: null,
  problem: 'command-word',
  repairs: () => LIKELY.map((kind) => ({ line: inserted(draft, 0, commandWord(COMMANDS[kind])), label: null })),
});

/** `paste 501 P1 air 19`: each part may be sent as a line of its own. */
export const severalCommands = (state: LineState): Finding => ({
  unclear: null,
  problem: 'one-thing',
  repairs: () => (state.tokens.some((token) => token.kind !== 'form' && isNegation(token.text)) ? [] : [...questionAlone(state), ...segments(state).flatMap((segment) => linesOf(state, segment))]),
});

/** `when start 501 lamp 65 ready fri 16:00`: the question as it can be asked. */
function questionAlone({ tokens, draft }: LineState): readonly Repair[] {
  if (!tokens.some((token) => token.kind === 'form' && token.command === 'latest-start')) return [];
  const job = tokens.find((token) => token.kind === 'number' && token.whole);
  const others = tokens.filter((token) => token !== job && (token.kind === 'number' || token.kind === 'degrees' || token.kind === 'lamp' || (token.kind === 'form' && token.command !== 'latest-start')));
  return [{ line: without(draft, others), label: null }];
}

/** The line cut before each word of another command; the first part keeps what stands in front. */
function segments({ tokens, draft }: LineState): readonly { readonly form: TokenOf<'form'>; readonly from: number; readonly to: number }[] {
  const forms = tokens.filter((token) => token.kind === 'form');
  const heads = forms.filter((form, index) => form.command !== forms[index - 1]?.command);
  return heads.map((form, index) => ({ form, from: index === 0 ? 0 : form.first, to: heads[index + 1]?.first ?? draft.pieces.length }));
}

function linesOf(state: LineState, { form, from, to }: ReturnType<typeof segments>[number]): readonly Repair[] {
  const { draft, tokens } = state;
  const label = asTyped(form.text);
  const alone = { line: written(draft, undefined, from, to), label };
  const job = tokens.find((token) => token.kind === 'number' && token.whole);
  if (job === undefined || (job.first >= from && job.first < to) || !COMMANDS[form.command].takes.includes('job')) return [alone];
  return [{ line: `${written(draft, undefined, from, form.last + 1)} ${job.text} ${written(draft, undefined, form.last + 1, to)}`.trim(), label }, alone];
}

/** Something the command has no place for. */
export function extra(state: LineState, token: Token): Finding {
  const { draft, spoken } = state;
  const word = spoken === null ? NO_WORD : shownWords(spoken.declaration);
  return {
    unclear: typedAt(draft, [token]),
    problem: token.kind === 'number' ? numberProblem(state, token, word) : { is: 'takes-none', thing: thing(token), word },
    repairs: () => [...asHumidity(state, token), ...asLamp(state, token), ...asMinutes(state, token), ...asDepth(state, token), { line: without(draft, [token]), label: null }],
  };
}

const thing = (token: Token): Thing => (token.kind === 'lamp' ? `${token.heater}-name` : (THINGS[token.kind] ?? 'word'));

function numberProblem({ draft, spoken }: LineState, token: TokenOf<'number'>, word: ShownWord): Problem {
  const takes = spoken?.declaration.takes ?? [];
  if (takes.length === 0) return { is: 'takes-none', thing: 'number', word };
  return takes.includes('job') && draft.names.openJobs.has(token.text) ? 'one-job' : 'what-number-is';
}

/** `air 19 55`. */
function asHumidity({ draft, spoken, tokens }: LineState, token: Token): readonly Repair[] {
  const fits = token.kind === 'number' && spoken?.declaration.takes.includes('humidity') === true && !tokens.some((one) => one.kind === 'humidity');
  return fits ? [{ line: replaced(draft, token, `rh ${token.text}`), label: asTyped(`rh ${token.text}`) }] : [];
}

function asMinutes({ draft, spoken, times }: LineState, token: Token): readonly Repair[] {
  const fits = token.kind === 'number' && token.whole && token.value <= MOST_MINUTES_MEANT && times.length === 0;
  return fits && spoken?.declaration.takes.includes('time') === true ? [{ line: replaced(draft, token, `${token.text} min ago`), label: ago(`${token.text} min`) }] : [];
}

/** `paste 501 P1 5`. */
function asDepth({ draft, spoken, tokens }: LineState, token: Token): readonly Repair[] {
  const fits = token.kind === 'number' && isBeadDepth(token.value) && token.value <= DEEPEST_MEANT && !tokens.some((one) => one.kind === 'depth');
  return fits && spoken?.declaration.takes.includes('depth') === true ? [{ line: replaced(draft, token, `${token.text} mm`), label: asTyped(`${token.text} mm`) }] : [];
}

/** `lamp on 501 65` sets a lamp. */
function asLamp({ draft, spoken, tokens }: LineState, token: Token): readonly Repair[] {
  const form = tokens.find((one) => one.kind === 'form');
  const sets = spoken?.declaration.kind === 'on' && (token.kind === 'number' || token.kind === 'degrees') && form !== undefined;
  return sets ? [{ line: replaced(draft, form, 'lamp'), label: [{ is: 'heater', heater: 'lamp', name: `${token.value}` }] }] : [];
}

export const secondOf = ({ draft }: LineState, first: Token, second: Token): Finding => ({
  unclear: typedAt(draft, [second]),
  problem: { is: 'only-one', thing: thing(second) },
  repairs: () => [first, second].map((token) => ({ line: without(draft, [token]), label: null })).reverse(),
});

export function gapFinding(state: LineState, gap: Gap): Finding {
  const { draft, tokens, assigned } = state;
  const end = Math.max(-1, ...tokens.filter((token) => STEM.has(token.kind)).map((token) => token.last)) + 1;
  const place = gap.place === 'start' ? 0 : gap.place === 'end' ? end : (assigned?.temperature?.first ?? end);
  const said = tokens.filter((token) => token.kind === 'form');
  const add = gap.add === 'each card' ? [...draft.names.cards.values()] : gap.add;
  // Soft is offered first: `no está duro` is no hard.
  const contradicting = gap.choose && gap.add.length === 0 ? [...said].sort((one, other) => saysHard(other) - saysHard(one)) : [];
  return {
    unclear: null,
    problem: gap.problem,
    repairs: () => [
      ...add.map((words) => ({ line: inserted(draft, place, words), label: gap.choose ? asChoice(words) : null })),
      ...contradicting.map((token) => ({ line: without(draft, [token]), label: asTyped(said.filter((other) => other !== token).map((other) => other.text).join(' ')) })),
    ],
  };
}

const saysHard = (token: TokenOf<'form'>): number => (token.command === 'check' && token.form !== 'soft' ? 1 : 0);

/** A question is answered, never written down as a fact. */
export function asked(state: LineState): Finding {
  const job = jobTyped(state);
  return {
    unclear: '?',
    problem: 'no-question',
    repairs: () => [
      { line: job === null ? 'when' : `when ${job}`, label: null },
      { line: 'who waits', label: null },
    ],
  };
}
