import type { MaterialCard } from '../cure/card.js';
import type { HeatEvent } from '../cure/history.js';
import type { Instant } from '../cure/units.js';
import type { JobNo, JointNo, PersonId } from './ids.js';
import type { Cure } from './job.js';

/** A cure that nobody has begun. */
export interface Planned {
  readonly job: JobNo;
  readonly joint: JointNo;
  readonly card: MaterialCard;
  readonly by: PersonId;
  readonly depthMillimetres: number | null;
}

/** It as it would stand in the book, closed at that moment with this heat. */
export const plannedCure = ({ job, joint, card, by, depthMillimetres }: Planned, closed: Instant, heat: readonly HeatEvent[]): Cure => ({
  job,
  ref: { joint, card: card.name, run: 1 },
  card,
  owner: by,
  openedAt: closed,
  pasted: null,
  lastPasted: null, partLit: false,
  closed,
  startEnteredAt: closed,
  moved: [],
  start: closed,
  heat,
  readings: [], corrected: [], readBefore: [],
  lamp: null,
  heater: 'lamp',
  depthMillimetres,
  buildUp: null,
  attended: [],
  checks: [],
  raised: [],
  putOff: [],
  releasedAt: null,
  dampAllowedAt: null,
  cartridges: [],
  openedDays: card.openedDays,
  labelAllowedAt: null,
  scrapped: false,
  hotWork: [],
  cameFrom: null,
  jobHolds: [],
  touchedAt: closed,
});
