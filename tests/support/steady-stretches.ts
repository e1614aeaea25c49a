import type { SheetRow } from '../../src/cure/card.js';
import { progressBy } from '../../src/cure/laws.js';
import type { Progress } from '../../src/cure/progress.js';
import { instant, minutes, minutesBetween, plus, type Celsius, type Instant, type Minutes } from '../../src/cure/units.js';
import { cardNamed } from './card-shelf.js';

/** So many minutes at one temperature. */
export interface SteadyStretch {
  readonly temperature: Celsius;
  readonly minutes: Minutes;
}

export const STARTED: Instant = instant(0);

/** What the engine credits to a joint that had these temperatures one after the other; the last one goes on. */
export function credited(rows: readonly SheetRow[], stretches: readonly SteadyStretch[]): Progress {
  let from = STARTED;
  const air = stretches.map((stretch) => {
    const step = { from, temperature: stretch.temperature, humidity: null, vapour: null, source: 'air reading' } as const;
    from = plus(from, stretch.minutes);
    return step;
  });
  return progressBy({ law: 'credit', rows }, { ...cardNamed('P1'), maxPanel: null }, { start: STARTED, heat: [], air, depthMillimetres: null });
}

/** Minutes from the start to the moment the engine gives, before rounding. */
export function creditedMinutes(rows: readonly SheetRow[], stretches: readonly SteadyStretch[]): Minutes {
  const { due } = credited(rows, stretches);
  if (due === null) throw new Error('The engine gives no time.');
  return minutesBetween(STARTED, due);
}

export const lasting = (stretches: readonly SteadyStretch[]): Minutes => minutes(stretches.reduce((sum, stretch) => sum + stretch.minutes, 0));
