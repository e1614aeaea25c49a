import type { AirStep } from './air.js';
import type { MaterialCard, RateLaw, SheetRow, TableRow } from './card.js';
import type { JointHistory, JointStep } from './history.js';
import { jointSteps } from './joint-temperature.js';
import { lampStretches } from './lamp-stretches.js';
import { frontMinutes, vapourShare } from './moisture-front.js';
import { progressOf, type Piece, type Progress } from './progress.js';
import { recipePieces, runRecipe } from './recipe.js';
import { minutesAt } from './rows.js';
import { later, minutes, plus, type Instant, type Minutes } from './units.js';

/** One law of a card against one joint's history. */
export function progressBy(law: RateLaw, card: MaterialCard, history: JointHistory): Progress {
  switch (law.law) {
    case 'credit':
      return creditProgress(law.rows, jointSteps(history, card.maxPanel), card.marginPercent);
    case 'recipe':
      return recipeProgress(law.stages, history);
    case 'above':
      return progressOf('above', stepPieces(jointSteps(history, card.maxPanel), (step) => whileAtLeast(step, law.temperature, law.minutes)));
    case 'dwell':
      return dwellProgress(law, jointSteps(history, card.maxPanel, 'previous'), history.start);
    case 'depth-root':
      return depthProgress(law, history);
    case 'table':
      return tableProgress(law.rows, history.air, history.start);
    case 'elapsed':
      return progressOf('elapsed', [{ from: history.start, to: null, temperature: null, source: 'clock', wholeMinutes: law.minutes }]);
  }
}

/** Share at each step = minutes / row minutes at the temperature that counts (rule R2), with the card's margin on the row minutes. */
function creditProgress(rows: readonly SheetRow[], steps: readonly JointStep[], marginPercent: number): Progress {
  const longer = 1 + marginPercent / 100;
  return progressOf('credit', stepPieces(steps, (step) => {
    const whole = step.temperature === null ? null : minutesAt(rows, step.temperature);
    return whole === null ? null : minutes(whole * longer);
  }));
}

function recipeProgress(stages: Extract<RateLaw, { law: 'recipe' }>['stages'], history: JointHistory): Progress {
  const runs = runRecipe(stages, lampStretches(history.heat), history.start);
  const pieces = recipePieces(runs);
  return { law: 'recipe', pieces, due: runs.at(-1)?.ended ?? null };
}

/** Real minutes in which the object itself is warm enough; what is warm before the flash-off is over has no part in it. */
function dwellProgress(law: Extract<RateLaw, { law: 'dwell' }>, steps: readonly JointStep[], start: Instant): Progress {
  const pieces = stepPieces(measuredOnly(steps), (step) => whileAtLeast(step, law.temperature, law.minutes));
  if (law.after <= 0) return progressOf('dwell', pieces);
  const over = plus(start, law.after);
  const counting = pieces.flatMap((piece) => (piece.to !== null && piece.to <= over ? [] : [{ ...piece, from: later(piece.from, over) }]));
  return progressOf('dwell', [{ from: start, to: over, temperature: null, source: 'flash-off', wholeMinutes: null }, ...counting]);
}

/**
 * Moisture comes from the air: the rate scales with water-vapour pressure and a lamp gives nothing.
 * Unknown humidity counts nothing, and of a bead of unknown depth nothing is known; damper than the reference gives no bonus.
 */
function depthProgress(law: Extract<RateLaw, { law: 'depth-root' }>, { air, start, depthMillimetres: depth }: JointHistory): Progress {
  if (depth === null || depth <= 0) return progressOf('depth-root', [{ from: start, to: null, temperature: null, source: 'depth not known', wholeMinutes: null }]);
  const pieces = airPieces(air, start, (step) => {
    if (step.temperature === null || step.vapour === null) return null;
    const rate = Math.min(1, vapourShare(step.vapour, law.reference));
    return rate > 0 ? frontMinutes(law, depth, rate) : null;
  });
  return progressOf('depth-root', pieces);
}

/** Worse row, no interpolation (rule R4): the coldest and driest air between the start and the end chooses the row. */
function tableProgress(rows: readonly TableRow[], air: readonly AirStep[], start: Instant): Progress {
  let whole: Minutes | null = null;
  for (const step of since(air, start)) {
    if (whole !== null && step.from >= plus(start, whole)) break;
    const row = tableRowAt(rows, step);
    if (row === null) return progressOf('table', [{ from: start, to: null, temperature: step.temperature, source: step.source, wholeMinutes: null }]);
    whole = minutes(Math.max(whole ?? 0, row));
  }
  return progressOf('table', [{ from: start, to: null, temperature: null, source: 'clock', wholeMinutes: whole }]);
}

function tableRowAt(rows: readonly TableRow[], step: AirStep): Minutes | null {
  const temperature = step.temperature;
  if (temperature === null) return null;
  const fitting = rows.filter((row) => temperature >= row.atLeast && (step.humidity ?? 0) >= row.humidity);
  return fitting.length === 0 ? null : minutes(Math.min(...fitting.map((row) => row.minutes)));
}

const whileAtLeast = (step: JointStep, temperature: number, whole: Minutes): Minutes | null =>
  step.temperature !== null && step.temperature >= temperature ? whole : null;

/** A dwell runs on the object's own temperature: air never stands in for it. */
const measuredOnly = (steps: readonly JointStep[]): JointStep[] =>
  steps.map((step) => (step.source === 'reading' ? step : { ...step, temperature: null }));

function stepPieces(steps: readonly JointStep[], whole: (step: JointStep) => Minutes | null): Piece[] {
  return steps.map((step, index) => ({ from: step.from, to: steps[index + 1]?.from ?? null, temperature: step.temperature, source: step.source, wholeMinutes: whole(step) }));
}

function airPieces(air: readonly AirStep[], start: Instant, whole: (step: AirStep) => Minutes | null): Piece[] {
  return since(air, start).map((step, index, steps) => ({ from: step.from, to: steps[index + 1]?.from ?? null, temperature: step.temperature, source: step.source, wholeMinutes: whole(step) }));
}

/** The air from the start on: what it was between paste and closing says nothing about the strength. */
const since = (air: readonly AirStep[], start: Instant): AirStep[] =>
  air.flatMap((step, index) => ((air[index + 1]?.from ?? Infinity) <= start ? [] : [{ ...step, from: later(step.from, start) }]));
