import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import type { Instant } from '../cure/units.js';
import type { FactRecord } from './facts.js';
import { stepId, type PersonId, type StepId } from './ids.js';
import type { Job } from './job.js';
import type { Outlook } from './outlook.js';
import type { Procedure, ProcedureStep } from './procedure.js';
import type { StepOverride } from './step-doings.js';
import { marksOf } from './step-marks.js';
import { confirmedAt, runningWatches, unfinished, unfinishedOf, type Unfinished } from './unfinished.js';

/** Work that can spoil or burn something on the same car. */
export type BannedDeed = 'weld' | 'bake' | 'fill' | 'sand';

/** One thing that stands against it, whatever the procedure says. */
export type CarBan =
  /** STOP: wax or the like is in the car. `material`: the card, or what the step says. Nobody's word lifts it here. */
  | { readonly deed: 'weld' | 'bake'; readonly grade: 'stop'; readonly material: string; readonly since: Instant; readonly by: PersonId }
  /** HOLD: not confirmed by a person; `override`: the foreman let it go on, with a reason. */
  | { readonly deed: 'bake' | 'fill' | 'sand'; readonly grade: 'hold'; readonly waits: Unfinished; readonly override: StepOverride | null };

/** What the book has against welding, baking, filling and sanding on this car. */
export function carBans(job: Job, outlooks: readonly Outlook[]): CarBan[] {
  const standing = outlooks.filter(({ cure }) => !cure.scrapped);
  return [
    ...heatBans(job, outlooks),
    ...unfinished(standing, null).map((waits): CarBan => ({ deed: 'bake', grade: 'hold', waits, override: overrideOf('bake', waits, job) })),
    // Heat hides what smoulders: a watch ends by looking, and by nobody's word.
    ...runningWatches(standing, null).map((waits): CarBan => ({ deed: 'bake', grade: 'hold', waits, override: null })),
    ...notConfirmed(standing, 'full').map((waits): CarBan => ({ deed: 'fill', grade: 'hold', waits, override: overrideOf('fill', waits, job) })),
    ...notConfirmed(standing, 'sand').map((waits): CarBan => ({ deed: 'sand', grade: 'hold', waits, override: overrideOf('sand', waits, job) })),
  ];
}

/** It is sanded, and bears nothing. */
export const isFiller = ({ milestones }: MaterialCard): boolean => milestones.some(({ kind }) => kind === 'sand') && !milestones.some(({ kind }) => kind === 'full');

/** Those that nobody lifted. */
export const bansOn = (deed: BannedDeed, bans: readonly CarBan[]): CarBan[] => bans.filter((ban) => ban.deed === deed && (ban.grade === 'stop' || ban.override === null));

const notConfirmed = (outlooks: readonly Outlook[], milestone: MilestoneKind): Unfinished[] =>
  outlooks.filter((outlook) => outlook.cure.card.milestones.some((rule) => rule.kind === milestone) && confirmedAt(outlook, milestone) === null).map((outlook) => unfinishedOf(outlook, milestone));

/** Foreman's word about this kind of work on this car, for what was under way by then. */
function overrideOf(deed: Exclude<BannedDeed, 'weld'>, { outlook }: Unfinished, { live }: Job): StepOverride | null {
  const said = live.findLast(({ fact, happenedAt }) => fact.type === 'step-overridden' && fact.step === deedStep(deed) && happenedAt >= outlook.cure.openedAt);
  return said?.fact.type === 'step-overridden' ? { entry: said.entry, at: said.happenedAt, by: said.by, reason: said.fact.reason } : null;
}

/** The name under which the book keeps that the foreman lifted a hold across the car; no step can be called that. */
export const deedStep = (deed: BannedDeed): StepId => stepId(`${deed} on this car`);

function heatBans(job: Job, outlooks: readonly Outlook[]): CarBan[] {
  const cards = outlooks.filter(({ cure }) => cure.card.noHeatAfter && !cure.scrapped).map(({ cure }) => ({ material: cure.card.name, since: cure.pasted ?? cure.closed ?? cure.openedAt, by: cure.owner }));
  return [...cards, ...banningSteps(job, outlooks)].flatMap((ban): CarBan[] => [{ deed: 'weld', grade: 'stop', ...ban }, { deed: 'bake', grade: 'stop', ...ban }]);
}

/** What was sprayed is in the car, whether it was its turn or not. */
function banningSteps(job: Job, outlooks: readonly Outlook[]): { readonly material: string; readonly since: Instant; readonly by: PersonId }[] {
  return begunIn(job).flatMap(({ procedure, records }) =>
    procedure.steps.filter(({ starts }) => starts.includes('heat-ban')).flatMap((step: ProcedureStep) => {
      const first = marksOf(step, job, records, outlooks).find((mark) => mark.stands);
      return first === undefined ? [] : [{ material: step.act, since: first.at, by: first.by }];
    }),
  );
}

function begunIn({ live }: Job): { readonly procedure: Procedure; readonly records: readonly FactRecord[] }[] {
  const begun = live.flatMap(({ fact, entry }) => (fact.type === 'procedure-begun' ? [{ entry, procedure: fact.procedure }] : [])).sort((one, other) => one.entry - other.entry);
  return begun.map(({ entry, procedure }, index) => ({ procedure, records: live.filter((record) => record.entry > entry && record.entry < (begun[index + 1]?.entry ?? Infinity)) }));
}
