import type { MaterialCard } from '../../src/cure/card.js';
import { forecast } from '../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../src/cure/history.js';
import type { PackedPoints } from '../../src/cure/temperature-point.js';
import { celsius, instant } from '../../src/cure/units.js';
import { MILESTONES } from './history.js';

const KINDS = ['handling', 'sand', 'full'] as const;

/** The same figures as a card: what is announced comes from it. */
const CARD: MaterialCard = {
  name: 'bench',
  title: 'invented figures',
  version: '1',
  example: true,
  basis: 'panel-temperature',
  milestones: MILESTONES.map((rows, index) => ({ kind: KINDS[index] ?? 'dry', laws: [{ law: 'credit', rows }] })),
  openTime: null,
  maxPanel: celsius(85),
  maxLamp: null,
  recoatBy: null,
  marginPercent: 0,
  noHeatAfter: false,
  openedDays: null,
};

/** The sure side of a joint with these readings: the whole forecast, and the same with one reading more, computed anew. */
export function sureSide(points: PackedPoints): { readonly whole: () => number; readonly withOneMore: () => number } {
  const heat = Array.from({ length: points.length / 2 }, (_, index): HeatEvent => ({ kind: 'reading', at: instant(points[2 * index] ?? NaN), value: celsius(points[2 * index + 1] ?? NaN) }));
  const start = heat[0]?.at ?? instant(0);
  const history: JointHistory = { start, heat, air: [{ from: start, temperature: celsius(20), humidity: null, vapour: null, source: 'air reading' }], depthMillimetres: null };
  const next: HeatEvent = { kind: 'reading', at: instant((heat.at(-1)?.at ?? start) + 300_000), value: celsius(30) };
  const dues = (one: JointHistory): number => forecast(CARD, one).reduce((sum, milestone) => sum + (milestone.dueAt ?? 0), 0);
  return { whole: () => dues(history), withOneMore: () => dues({ ...history, heat: [...heat, next] }) };
}
