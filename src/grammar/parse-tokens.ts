import type { When } from '../repair/commands.js';
import { assignNumbers, isPossible } from './assign-numbers.js';
import { asked, extra, gapFinding, noCommand, secondOf, severalCommands } from './command-findings.js';
import { commandWord } from './command-table.js';
import type { Parameter } from './declaration.js';
import type { Draft } from './draft.js';
import { findTimes, type FoundTime } from './find-time.js';
import { gatherSlots } from './gather-slots.js';
import { troubled, type LineState } from './line-state.js';
import { looseWords } from './loose-words.js';
import { mergeValues } from './merge-values.js';
import { matchPhrases } from './phrases.js';
import { resolveTime } from './resolve-time.js';
import { isCardWord, isConfirmWord } from './small-words.js';
import { noTimeHere, secondTime, wrongTime } from './time-findings.js';
import type { Token } from './token.js';
import type { Parsed } from './trouble.js';
import { unknownWords } from './unknown-words.js';
import { impossibleHumidity, impossibleTemperature, temperatureOrTime } from './value-findings.js';
import { whichCommand, type Spoken } from './which-command.js';

const QUESTIONS: ReadonlySet<string> = new Set(['who-waits', 'when', 'why', 'help']);
const PARAMETER_OF: Readonly<Partial<Record<Token['kind'], Parameter>>> = { joint: 'joint', card: 'card', lamp: 'lamp', method: 'method', milestone: 'milestone', humidity: 'humidity' };

/** One way to take the pieces of a line, to a command or to the first thing that is wrong with it. */
export function parseTokens(all: readonly Token[], draft: Draft, asks: boolean): Parsed {
  const spoken = all.filter((token, index) => token.kind !== 'filler' && !(isCardWord(token.text) && all[index + 1]?.kind === 'card'));
  const { times, rest } = findTimes(spoken, draft.names);
  const last = rest.at(-1);
  const confirmed = times.some(({ expression }) => expression.is !== 'now') && last?.kind === 'word' && last === spoken.at(-1) && isConfirmWord(last.text);
  const tokens = mergeValues(matchPhrases(confirmed ? rest.slice(0, -1) : rest));
  return withCommand({ draft, tokens, times, spoken: null, assigned: null, asks }, confirmed);
}

function withCommand(state: LineState, confirmed: boolean): Parsed {
  const which = whichCommand(state.tokens);
  const known = which.is === 'one' ? { ...state, spoken: which.spoken } : state;
  const unknown = known.tokens.filter((token) => token.kind === 'unknown');
  if (unknown.length > 0) return troubled(known, unknownWords(known, unknown));
  if (which.is === 'several') return troubled(known, severalCommands(known));
  const loose = known.tokens.filter((token) => token.kind === 'word' || token.kind === 'amount' || token.kind === 'range' || token.kind === 'clock' || token.kind === 'stamp' || token.kind === 'percent');
  if (loose.length > 0) return troubled(known, looseWords(known, loose));
  if (which.is === 'none') return troubled(known, noCommand(known));
  return withNumbers(known, which.spoken, confirmed);
}

function withNumbers(state: LineState, spoken: Spoken, confirmed: boolean): Parsed {
  const takes = spoken.declaration.takes;
  const unsure = state.tokens.find((token) => token.kind === 'number' && token.clock !== null);
  if (unsure?.kind === 'number') {
    const time = pointTime(unsure, state.times, takes);
    if (time === null) return troubled(state, temperatureOrTime(state, unsure, takes.includes('temperature')), [unsure]);
    return withNumbers({ ...state, tokens: state.tokens.filter((token) => token !== unsure), times: [time] }, spoken, confirmed);
  }
  const assigned = assignNumbers(state.tokens, spoken, state.draft.names);
  return withValues({ ...state, assigned }, spoken, confirmed);
}

/** `closed 501 13.40`: with a point, in a command without a temperature, nothing but a time can be meant. */
function pointTime(token: Extract<Token, { readonly kind: 'number' }>, times: readonly FoundTime[], takes: readonly Parameter[]): FoundTime | null {
  if (token.clock === null || token.comma || times.length > 0 || takes.includes('temperature') || !takes.includes('time')) return null;
  return { expression: { is: 'clock', clock: token.clock, day: 'today' }, tokens: [token] };
}

function withValues(state: LineState, spoken: Spoken, confirmed: boolean): Parsed {
  const { tokens, assigned } = state;
  const takes = spoken.declaration.takes;
  const temperature = assigned?.temperature ?? null;
  const stray = assigned?.extra[0] ?? tokens.find((token) => notTaken(token, takes));
  if (stray !== undefined) return troubled(state, extra(state, stray), [stray]);
  for (const token of tokens) {
    const first = tokens.find((one) => one.kind === token.kind);
    if (first !== undefined && first !== token && PARAMETER_OF[token.kind] !== undefined) return troubled(state, secondOf(state, first, token), [token]);
    if (token.kind === 'humidity' && (token.percent < 0 || token.percent > 100)) return troubled(state, impossibleHumidity(state, token), [token]);
  }
  if (temperature !== null && !isPossible(temperature.value, temperature.kind === 'degrees' ? temperature.unit : null)) return troubled(state, impossibleTemperature(state, temperature), [temperature]);
  return withTime(state, spoken, confirmed);
}

function notTaken(token: Token, takes: readonly Parameter[]): boolean {
  const parameter = PARAMETER_OF[token.kind];
  return parameter !== undefined && !takes.includes(parameter);
}

function withTime(state: LineState, spoken: Spoken, confirmed: boolean): Parsed {
  const { draft, times } = state;
  const { now } = draft.names;
  const takesTime = spoken.declaration.takes.includes('time');
  const [time, second] = times;
  const untimed: LineState = { ...state, times: [] };
  if (time === undefined || (time.expression.is === 'now' && !takesTime)) return toCommand(untimed, spoken, { earliest: now, latest: now, stated: false, confirmed: false });
  if (second !== undefined) return troubled(state, secondTime(draft, time, second));
  if (!takesTime) return troubled(untimed, noTimeHere(draft, time, commandWord(spoken.declaration)));
  const resolved = resolveTime(time.expression, draft.names);
  return resolved.ok ? toCommand(state, spoken, { ...resolved.span, stated: true, confirmed }) : troubled(untimed, wrongTime(draft, time, resolved));
}

function toCommand(state: LineState, spoken: Spoken, when: When): Parsed {
  const { assigned } = state;
  if (assigned === null) return troubled(state, noCommand(state));
  const built = spoken.declaration.build(gatherSlots(state.tokens, spoken, assigned, when));
  if (!built.ok) return troubled(state, gapFinding(state, built.gap));
  if (state.asks && !QUESTIONS.has(built.command.kind)) return troubled(state, asked(state));
  return built;
}
