import type { Instant } from '../cure/units.js';
import type { Job } from './job.js';
import type { Need } from './procedure.js';

type Below = Extract<Need, { need: 'joint-below' }>;

/**
 * The joint was known to be colder than that by a moment: it was read so since the last heat, or had none and nobody read
 * it hotter. A lamp that may still be on keeps it closed, unless its setting is colder and the joint was read under it.
 */
export function isJointBelow({ live }: Job, { joint, temperature }: Below, at: Instant): boolean {
  const there = live.flatMap(({ fact, happenedAt }) => ('joint' in fact && fact.joint === joint && happenedAt <= at ? [fact] : []));
  const heat = there.findLastIndex(({ type }) => type === 'lamp-set' || type === 'lamp-on');
  const reading = there.findLastIndex((fact) => fact.type === 'reading' && fact.method !== 'bare');
  const read = there[reading];
  const isCold = read?.type === 'reading' && read.value < temperature;
  if (heat < 0) return read === undefined || isCold;
  const setting = there.findLast((fact) => fact.type === 'lamp-set');
  const isColdHeat = setting?.type === 'lamp-set' && setting.setting < temperature;
  const off = there.findLastIndex(({ type }) => type === 'lamp-off');
  return isCold && reading > heat && (isColdHeat || (off > heat && reading > off));
}
