import type { MaterialCard } from '../cure/card.js';
import type { Instant } from '../cure/units.js';
import type { EntryCommand } from './commands.js';
import type { CureRef } from './cure-ref.js';
import { cureWhere } from './cure-where.js';
import { refuse, type Decision, type NewFact, type Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { hardensByDepth } from './outlook.js';
import type { Refusal } from './refusal.js';
import { cureFor } from './subject.js';

type Of<K extends EntryCommand['kind']> = Extract<EntryCommand, { readonly kind: K }>;

/** A bead is not thinner or deeper than this, in millimetres; what is said beyond is a slip of the thumb. Common practice, no source. */
const THINNEST = 0.5;
const DEEPEST = 30;

/** How deep the bead is: without it a material that hardens from the outside has no time. */
export function decideDepth(command: Of<'depth'>, situation: Situation): Decision {
  const found = cureWhere(({ cure }) => hardensByDepth(cure.card), command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { cure } = found.outlook;
  const wrong = wrongDepth(command.millimetres, cure.card);
  if (wrong !== null) return refuse(wrong);
  const about = { job: cure.job, cure: cure.ref };
  if (cure.depthMillimetres === command.millimetres) return { ok: true, facts: [], about, notes: [{ note: 'already-so' }] };
  return { ok: true, facts: depthFacts(command.millimetres, about, situation.now), about, notes: [] };
}

/** A depth that this card can do nothing with, or that no bead has. */
export function wrongDepth(millimetres: number | null, card: MaterialCard): Refusal | null {
  if (millimetres === null) return null;
  if (!hardensByDepth(card)) return { code: 'no-depth', card: card.name };
  return millimetres >= THINNEST && millimetres <= DEEPEST ? null : { code: 'odd-depth', millimetres, least: THINNEST, most: DEEPEST };
}

export const depthFacts = (millimetres: number | null, { job, cure }: { readonly job: JobNo; readonly cure: CureRef }, happenedAt: Instant): NewFact[] =>
  millimetres === null ? [] : [{ job, happenedAt, fact: { type: 'depth', cure, millimetres } }];

/** How much metal the heat has to warm at a joint. */
export function decideBuildUp(command: Of<'build-up'>, situation: Situation): Decision {
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { cure } = found.outlook;
  const about = { job: cure.job, cure: cure.ref };
  if (cure.buildUp === command.buildUp) return { ok: true, facts: [], about, notes: [{ note: 'already-so' }] };
  return { ok: true, facts: [{ job: cure.job, happenedAt: situation.now, fact: { type: 'build-up', joint: cure.ref.joint, buildUp: command.buildUp } }], about, notes: [] };
}
