import type { RecipeStage } from './card.js';
import type { LampStretch } from './history.js';
import type { Piece } from './progress.js';
import { earlier, later, minutes, minutesBetween, plus, type Instant, type Minutes } from './units.js';

/** Rule R5: after an interruption the joint has to warm up again. */
export const REWARM = minutes(20);

/** One stage as it went: when it began (again), how many minutes it needs in all, when it ended. */
export interface StageRun {
  readonly stage: RecipeStage;
  /** Null while the lamp has not been switched to this stage. */
  readonly began: Instant | null;
  /** Printed minutes plus re-warm minutes of each interruption. */
  readonly needed: Minutes;
  readonly ended: Instant | null;
  /** Stretches in which the lamp was on for this stage, since it last began. */
  readonly on: readonly { readonly from: Instant; readonly to: Instant | null }[];
}

/**
 * Runs a recipe against the lamp's stretches (rule R5): printed minutes from switch-on, stage by stage, warm-up inside.
 * A lamp (never a pad) at or above a stage's setting works for that stage. Missing minutes are added plus 20 min re-warm;
 * more than half a stage missing begins it again. So does an interruption that would cost more than the whole stage:
 * heat that came first never makes a joint later than one that had none.
 */
export function runRecipe(stages: readonly RecipeStage[], lamp: readonly LampStretch[], start: Instant): StageRun[] {
  const runs: StageRun[] = [];
  let from: Instant | null = start;
  for (const stage of stages) {
    const run: StageRun = from === null ? notBegun(stage) : runStage(stage, lamp, from);
    runs.push(run);
    from = run.ended;
  }
  return runs;
}

const notBegun = (stage: RecipeStage): StageRun => ({ stage, began: null, needed: stage.minutes, ended: null, on: [] });

/** Of the runs from each switch-on, the one that ends first. */
function runStage(stage: RecipeStage, lamp: readonly LampStretch[], from: Instant): StageRun {
  const working = lamp.filter((one) => one.heater === 'lamp' && one.setting !== null && one.setting >= stage.lamp && (one.to === null || one.to > from));
  let best: StageRun | null = null;
  for (const [index, stretch] of working.entries()) {
    if (best?.ended != null && best.ended <= stretch.from) break;
    if (working[index - 1]?.to === stretch.from) continue;
    const run = runFromSwitchOn(stage, working.slice(index), from);
    if (run !== null && (best === null || endsSooner(run, best))) best = run;
  }
  return best ?? notBegun(stage);
}

/** With the lamp off now in both, the one with less left to do. */
const endsSooner = (one: StageRun, other: StageRun): boolean =>
  one.ended === null && other.ended === null ? leftToDo(one) < leftToDo(other) : (one.ended ?? Infinity) < (other.ended ?? Infinity);

const leftToDo = (run: StageRun): number => run.on.reduce<number>((left, { from, to }) => left - (to === null ? 0 : minutesBetween(from, to)), run.needed);

/** Null once more than half the stage is missing: it has begun again at a later switch-on. */
function runFromSwitchOn(stage: RecipeStage, working: readonly LampStretch[], from: Instant): StageRun | null {
  let began: Instant | null = null;
  let needed = stage.minutes;
  let done = 0;
  let missing = 0;
  const on: { from: Instant; to: Instant | null }[] = [];
  for (const stretch of working) {
    const begins = later(stretch.from, from);
    const last = on.at(-1);
    const gap = last?.to == null ? 0 : minutesBetween(last.to, begins);
    if (gap > 0) {
      missing += gap;
      needed = minutes(needed + REWARM);
    }
    if (missing > stage.minutes / 2) return null;
    began ??= begins;
    const end = plus(begins, minutes(needed - done));
    on.push({ from: begins, to: stretch.to === null ? null : earlier(stretch.to, end) });
    if (stretch.to === null || end <= stretch.to) return { stage, began, needed, ended: end, on };
    done += minutesBetween(begins, stretch.to);
  }
  return { stage, began, needed, ended: null, on };
}

/** The recipe as pieces of one wait, so that its sum can be redone like any other. */
export function recipePieces(runs: readonly StageRun[]): Piece[] {
  const whole = minutes(runs.reduce((sum, run) => sum + run.needed, 0));
  const pieces: Piece[] = [];
  for (const run of runs) {
    for (const [index, stretch] of run.on.entries()) {
      const last = pieces.at(-1);
      const source = index === 0 ? 'between stages' : 'lamp off';
      if (last?.to != null && last.to < stretch.from) pieces.push({ from: last.to, to: stretch.from, temperature: null, source, wholeMinutes: null });
      const to = stretch.to ?? run.ended;
      pieces.push({ from: stretch.from, to, temperature: run.stage.lamp, source: 'lamp', wholeMinutes: whole });
    }
  }
  return pieces;
}
