import { milestoneShare, type MilestoneForecast } from '../cure/forecast.js';
import type { Piece } from '../cure/progress.js';
import { later, minutes, plus, roundDownToMinute, type Instant, type Minutes } from '../cure/units.js';
import type { Check } from './job.js';

/** Where the check of one milestone stands. Due is not confirmed: only a named person's check confirms (rule R10). */
export interface CheckState {
  readonly phase: 'open' | 'confirmed' | 'held';
  /** 1, and 2 after a `soft` re-armed it (rule R15). */
  readonly round: number;
  /** Due time of this round; null: not in sight. */
  readonly dueAt: Instant | null;
  /** Two people said different things; the one that holds the car longer counts until the foreman settles it (rule R11). */
  readonly conflict: boolean;
  /** Last answer that counts. */
  readonly answer: Check | null;
  /** An apprentice's hard in this round: it is still due until a technician or the foreman says so too. */
  readonly first: Check | null;
}

const RECHECK_SHARE = 0.25;
const RECHECK_LEAST = 15;
const RECHECK_MOST = 120;

/** Folds the answers to one milestone's check. Answers from before the due time do not count. */
export function checkState(forecast: MilestoneForecast, checks: readonly Check[]): CheckState {
  let state: CheckState = { phase: 'open', round: 1, dueAt: forecast.dueAt, conflict: false, answer: null, first: null };
  const due = forecast.dueAt;
  if (due === null) return state;
  for (const check of checks) {
    if (check.milestone === forecast.kind && check.at >= due) state = afterCheck(state, check, forecast);
  }
  return state;
}

function afterCheck(state: CheckState, check: Check, forecast: MilestoneForecast): CheckState {
  if (check.result === 'hard') return afterHard(state, check);
  if (state.phase === 'held') return state;
  const waits = state.phase === 'open' && state.answer?.result === 'soft' && state.dueAt !== null && check.at < state.dueAt;
  // The same answer again is one answer; the foreman's settles a conflict.
  if (waits) return check.foreman ? { ...state, ...recheckOf(forecast, check), conflict: false } : state;
  const said = state.phase === 'confirmed' || (state.first !== null && state.first.by !== check.by);
  const opposed = said && !check.foreman;
  if (state.round >= 2) return { ...state, phase: 'held', conflict: opposed, answer: check, first: null };
  return { phase: 'open', round: state.round + 1, ...recheckOf(forecast, check), conflict: opposed, first: null };
}

function recheckOf(forecast: MilestoneForecast, check: Check): Pick<CheckState, 'dueAt' | 'answer'> {
  const recheck = plus(roundDownToMinute(check.at), recheckAfter(forecast, check.at));
  return { dueAt: later(recheck, forecast.dueAt ?? recheck), answer: check };
}

function afterHard(state: CheckState, check: Check): CheckState {
  if (state.phase === 'confirmed') return state;
  if (check.foreman) return { ...state, phase: 'confirmed', conflict: false, answer: check };
  if (state.phase === 'held') return state;
  const tooSoon = state.dueAt !== null && check.at < state.dueAt;
  // Of two answers that differ, only whoever said soft can say hard at the recheck; else the foreman settles it.
  if (state.conflict && check.by !== state.answer?.by && (check.apprentice || state.first === null)) return state;
  if (check.apprentice) return tooSoon ? state : { ...state, first: state.first ?? check };
  return tooSoon ? { ...state, conflict: true } : { ...state, phase: 'confirmed', conflict: false, answer: check };
}

/** Rule R15: a quarter of the milestone's whole time at the present temperature, at least 15, at most 120 min. */
export function recheckAfter(forecast: MilestoneForecast, at: Instant): Minutes {
  const counting = forecast.progress.pieces.filter((piece) => piece.from <= at && piece.wholeMinutes !== null);
  const whole = wholeOf(counting.at(-1));
  return minutes(Math.ceil(Math.min(RECHECK_MOST, Math.max(RECHECK_LEAST, whole * RECHECK_SHARE))));
}

const wholeOf = (piece: Piece | undefined): number => piece?.wholeMinutes ?? RECHECK_MOST / RECHECK_SHARE;

/** Share of the wait that is done; a re-armed check has its wait behind it. */
export const shareOfWait = (forecast: MilestoneForecast, state: CheckState, at: Instant): number =>
  state.phase === 'confirmed' ? 1 : milestoneShare(forecast, at);
