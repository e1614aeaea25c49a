import type { Instant } from '../cure/units.js';
import type { CommandKind, When } from '../repair/commands.js';
import { assignNumbers, isPossible } from './assign-numbers.js';
import { isBeadDepth } from './bead-depth.js';
import { asked, extra, gapFinding, noCommand, secondOf, severalCommands } from './command-findings.js';
import { shownWords } from './command-table.js';
import type { Parameter } from './declaration.js';
import type { Draft } from './draft.js';
import { findTimes, type FoundTime } from './find-time.js';
import { gatherSlots } from './gather-slots.js';
import { troubled, type LineState } from './line-state.js';
import { looseWords } from './loose-words.js';
import { matchCorrection } from './match-correction.js';
import { mergeDepths, mergeValues } from './merge-values.js';
import { matchPhrases } from './phrases.js';
import { momentOf, resolveAhead } from './resolve-ahead.js';
import { resolveTime } from './resolve-time.js';
import { isArticle, isAttendedWord, isConfirmWord } from './small-words.js';
import { spokenPlainly } from './spoken-plainly.js';
import { noTimeHere, readyByHere, readyWithoutTime, secondTime, wrongTime } from './time-findings.js';
import { isReadyWord } from './time-words.js';
import type { Token } from './token.js';
import type { Parsed } from './trouble.js';
import { unknownWords } from './unknown-words.js';
import { impossibleDepth, impossibleHumidity, impossibleTemperature, padNumber, temperatureOrTime } from './value-findings.js';
import { withoutRemarks } from './without-remarks.js';
import { isPadWord, whichCommand, type Spoken } from './which-command.js';

const QUESTIONS: ReadonlySet<string> = new Set<CommandKind>(['who-waits', 'lamps', 'next', 'may', 'when', 'why', 'what-if', 'latest-start', 'help']);
const PARAMETER_OF: Readonly<Partial<Record<Token['kind'], Parameter>>> = { joint: 'joint', card: 'card', lamp: 'lamp', depth: 'depth', method: 'method', milestone: 'milestone', humidity: 'humidity' };

/** What was answered to a question about the time: yes, or that somebody stays. */
type Sure = Pick<When, 'confirmed' | 'attended'>;

/** One way to take the pieces of a line, to a command or to the first thing that is wrong with it. */
export function parseTokens(all: readonly Token[], draft: Draft, asks: boolean): Parsed {
  const spoken = mergeDepths(all.filter((token) => token.kind !== 'filler'));
  const { times, rest: left } = findTimes(spoken, draft.names);
  const rest = left.filter((token) => !(token.kind === 'word' && isArticle(token.text)));
  const last = rest.at(-1);
  const end = times.some(({ expression }) => expression.is !== 'now') && last?.kind === 'word' && last === spoken.at(-1) ? last.text : '';
  const sure: Sure = isAttendedWord(end) ? { confirmed: true, attended: true } : { confirmed: isConfirmWord(end) };
  const tokens = withoutRemarks(spokenPlainly(matchCorrection(mergeValues(matchPhrases(sure.confirmed ? rest.slice(0, -1) : rest))), times));
  return withCommand({ draft, tokens, times, spoken: null, assigned: null, asks }, sure);
}

function withCommand(state: LineState, sure: Sure): Parsed {
  const which = whichCommand(state.tokens, state.times);
  // `when start ready 501 by fri 16:00`: what is asked for is said by the command itself.
  const ready = which.is === 'one' && which.spoken.declaration.takes.includes('ready') ? state.tokens.filter(isReadyWord) : [];
  // `402 soft. lamp 2h`: until when is asked along with which lamp.
  const lengths: readonly Token[] = which.is === 'one' && which.spoken.declaration.kind === 'check' && which.spoken.heaterWord ? state.tokens.filter((token) => token.kind === 'amount') : [];
  const known = which.is === 'one' ? { ...state, tokens: state.tokens.filter((token) => !ready.includes(token) && !lengths.includes(token)), spoken: which.spoken } : state;
  const unknown = known.tokens.filter((token) => token.kind === 'unknown');
  if (unknown.length > 0) return troubled(known, unknownWords(known, unknown));
  if (which.is === 'several') return troubled(known, severalCommands(known));
  const loose = known.tokens.filter((token) => token.kind === 'word' || token.kind === 'amount' || token.kind === 'range' || token.kind === 'clock' || token.kind === 'stamp' || token.kind === 'percent');
  if (loose.length > 0) return troubled(known, looseWords(known, loose));
  if (which.is === 'none') return troubled(known, noCommand(known));
  const [readyWord] = ready;
  if (readyWord !== undefined && known.times.length === 0) return troubled(known, readyWithoutTime(known, readyWord));
  return withNumbers(known, which.spoken, sure);
}

function withNumbers(state: LineState, spoken: Spoken, sure: Sure): Parsed {
  const takes = spoken.declaration.takes;
  const unsure = takes.includes('figure') ? undefined : state.tokens.find((token) => token.kind === 'number' && token.clock !== null);
  if (unsure?.kind === 'number') {
    const time = pointTime(unsure, state.times, takes);
    if (time === null) return troubled(state, temperatureOrTime(state, unsure, takes.includes('temperature')), [unsure]);
    return withNumbers({ ...state, tokens: state.tokens.filter((token) => token !== unsure), times: [time] }, spoken, sure);
  }
  const assigned = assignNumbers(state.tokens, spoken, state.draft.names);
  return withValues({ ...state, assigned }, spoken, sure);
}

/** `closed 501 13.40`: with a point, in a command without a temperature, nothing but a time can be meant. */
function pointTime(token: Extract<Token, { readonly kind: 'number' }>, times: readonly FoundTime[], takes: readonly Parameter[]): FoundTime | null {
  if (token.clock === null || token.comma || times.length > 0 || takes.includes('temperature') || !takes.includes('time')) return null;
  return { expression: { is: 'clock', clock: token.clock, day: null }, tokens: [token], by: false };
}

function withValues(state: LineState, spoken: Spoken, sure: Sure): Parsed {
  const { tokens, assigned } = state;
  const takes = spoken.declaration.takes;
  const stray = assigned?.extra[0] ?? tokens.find((token) => notTaken(token, takes));
  if (stray !== undefined) return troubled(state, extra(state, stray), [stray]);
  for (const token of tokens) {
    const first = tokens.find((one) => one.kind === token.kind);
    if (first !== undefined && first !== token && PARAMETER_OF[token.kind] !== undefined) return troubled(state, secondOf(state, first, token), [token]);
    if (token.kind === 'humidity' && (token.percent < 0 || token.percent > 100)) return troubled(state, impossibleHumidity(state, token), [token]);
  }
  for (const temperature of [assigned?.temperature ?? null, assigned?.air ?? null]) {
    if (temperature?.kind === 'number' && state.draft.names.pads.has(temperature.text) && tokens.some(isPadWord)) return troubled(state, padNumber(state, temperature), [temperature]);
    if (temperature !== null && !isPossible(temperature.value, temperature.kind === 'degrees' ? temperature.unit : null)) return troubled(state, impossibleTemperature(state, temperature), [temperature]);
  }
  const depth = tokens.find((token) => token.kind === 'depth') ?? assigned?.depth ?? null;
  if (depth !== null && !isBeadDepth(depth.kind === 'depth' ? depth.millimetres : depth.value)) return troubled(state, impossibleDepth(state, depth), [depth]);
  return withTime(state, spoken, sure);
}

function notTaken(token: Token, takes: readonly Parameter[]): boolean {
  const parameter = PARAMETER_OF[token.kind];
  return parameter !== undefined && !takes.includes(parameter);
}

function withTime(state: LineState, spoken: Spoken, sure: Sure): Parsed {
  const { draft, times } = state;
  const { now } = draft.names;
  const takes = spoken.declaration.takes;
  const ahead = takes.find((parameter) => parameter === 'from' || parameter === 'ready') ?? null;
  const takesTime = takes.includes('time') || ahead !== null;
  const [time, second] = times;
  const untimed: LineState = { ...state, times: [] };
  const unstated: When = { earliest: now, latest: now, stated: false, confirmed: false };
  if (time === undefined || (time.expression.is === 'now' && !takesTime)) return toCommand(untimed, spoken, { when: unstated, ahead: null });
  if (second !== undefined) return troubled(state, secondTime(draft, time, second));
  if (time.by && ahead !== 'ready') return troubled(untimed, readyByHere(untimed, time));
  if (!takesTime) return troubled(untimed, noTimeHere(draft, time, shownWords(spoken.declaration)));
  const resolved = ahead === null ? resolveTime(time.expression, draft.names) : resolveAhead(time.expression, ahead, draft.names);
  if (!resolved.ok) return troubled(untimed, wrongTime(draft, time, resolved));
  return toCommand(state, spoken, ahead === null ? { when: { ...resolved.span, stated: true, ...sure }, ahead: null } : { when: unstated, ahead: momentOf(resolved.span, ahead) });
}

function toCommand(state: LineState, spoken: Spoken, time: { readonly when: When; readonly ahead: Instant | null }): Parsed {
  const { assigned } = state;
  if (assigned === null) return troubled(state, noCommand(state));
  const built = spoken.declaration.build(gatherSlots(state.tokens, spoken, assigned, time));
  if (!built.ok) return troubled(state, gapFinding(state, built.gap));
  if (state.asks && !QUESTIONS.has(built.command.kind)) return troubled(state, asked(state));
  return built;
}
