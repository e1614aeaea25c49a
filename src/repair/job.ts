import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import type { Heater, HeatEvent } from '../cure/history.js';
import { earlier, later, minus, minutes, type Celsius, type Instant } from '../cure/units.js';
import type { BuildUp } from '../cure/warm-up.js';
import type { CartridgeSaid } from './cartridge.js';
import type { CheckResult, ReadingMethod } from './commands.js';
import { correctedReadings, type ReadingCorrection } from './corrected-readings.js';
import { withCorrectCards } from './correct-cards.js';
import { sameCure, type CureRef } from './cure-ref.js';
import type { FactRecord, JobFact } from './facts.js';
import { goingOn, hotWorkIn, type HotWork } from './hot-work.js';
import { holdSpans, type HeldSpan } from './job-hold.js';
import type { EntryNo, JobNo, JointNo, LampName, PersonId, StepId } from './ids.js';
import { isBegunBy, strictest } from './opened-days.js';
import type { ProcedureStep } from './procedure.js';
import type { ReminderKind } from './reminder.js';
import { hottestAllowed } from './hottest-allowed.js';
import { colderInOneMinute } from './one-minute.js';
import { isFireWatch } from './watch-card.js';
import { withoutMoved } from './without-moved.js';

/** One job as the book knows it: every fact, and those that still count in order of happening. */
export interface Job {
  readonly no: JobNo;
  readonly all: readonly FactRecord[];
  readonly live: readonly FactRecord[];
}

export interface Check {
  readonly milestone: MilestoneKind;
  readonly result: CheckResult;
  readonly at: Instant;
  readonly by: PersonId;
  readonly foreman: boolean;
  /** An apprentice's: hard is a first check, and somebody else has to say it too. */
  readonly apprentice: boolean;
}

export interface Raised {
  readonly kind: ReminderKind;
  readonly round: number;
  readonly step: number;
  readonly dueAt: Instant;
  readonly at: Instant;
  readonly to: PersonId | 'channel';
}

export interface Attendance {
  readonly at: Instant;
  readonly by: PersonId;
}

export interface JointReading {
  readonly at: Instant;
  readonly value: Celsius;
  readonly method: ReadingMethod;
  readonly by: PersonId;
  readonly entry: EntryNo;
  readonly enteredAt: Instant;
}

/** One card running on one joint. */
export interface Cure {
  readonly job: JobNo;
  readonly ref: CureRef;
  readonly card: MaterialCard;
  readonly owner: PersonId;
  readonly openedAt: Instant;
  /** First paste out of the mixer, the earliest it can have been. */
  readonly pasted: Instant | null;
  /** The last paste that was laid: another one where a second cartridge followed. */
  readonly lastPasted: Instant | null;
  readonly closed: Instant | null;
  readonly moved: readonly Instant[];
  /** Strength clock zero (rule R1): closed, or last moved. */
  readonly start: Instant | null;
  /** When that start was told to the clerk; null: not closed yet. */
  readonly startEnteredAt: Instant | null;
  readonly heat: readonly HeatEvent[];
  readonly readings: readonly JointReading[];
  /** Readings of it that were mistyped and put right. */
  readonly corrected: readonly ReadingCorrection[];
  /** The metal shortly before the cure began: it was cleaned, read, and then the bead was laid. */
  readonly readBefore: readonly JointReading[];
  readonly lamp: LampName | null;
  /** What `lamp` names, and what was set last. */
  readonly heater: Heater;
  /** It burns, over only a part of the joint: nothing counts for its heat, and it must not be forgotten. */
  readonly partLit: boolean;
  /** How deep the bead is, in millimetres; null: nobody said. */
  readonly depthMillimetres: number | null;
  /** Null: nobody said; the forecast takes what warms slowest. */
  readonly buildUp: BuildUp | null;
  /** Who stays with the lamp past closing, and since when that is known. */
  readonly attended: readonly Attendance[];
  readonly checks: readonly Check[];
  readonly raised: readonly Raised[];
  readonly putOff: readonly { readonly kind: ReminderKind; readonly at: Instant }[];
  readonly releasedAt: Instant | null;
  /** When a step here was overridden past its dew margin; null: never. */
  readonly dampAllowedAt: Instant | null;
  /** What was said about the cartridge, in order of happening. */
  readonly cartridges: readonly CartridgeSaid[];
  /** How many days an opened one may be used, by card and procedure; null: neither says so. */
  readonly openedDays: number | null;
  /** When a step here was overridden past its label; null: never. */
  readonly labelAllowedAt: Instant | null;
  readonly scrapped: boolean;
  /** Hot work on this car, wherever. */
  readonly hotWork: readonly HotWork[];
  /** When the whole job stood still. */
  readonly jobHolds: readonly HeldSpan[];
  /** The job on which it was entered by mistake; null: it was entered here. */
  readonly cameFrom: JobNo | null;
  /** Last moment at which somebody entered something about it. */
  readonly touchedAt: Instant;
}

/** Folds the journal of one job: undone entries stay in the book and no longer count. */
export function foldJob(no: JobNo, records: readonly FactRecord[]): Job {
  const undone = new Set(records.flatMap((record) => (record.fact.type === 'undone' ? [record.fact.entry] : [])));
  const live = records.filter((record) => !undone.has(record.entry) && record.fact.type !== 'undone');
  return { no, all: records, live: withoutMoved(withCorrectCards([...live].sort((a, b) => a.happenedAt - b.happenedAt), records)) };
}

/** All cures of a job in the order in which they were opened, scrapped ones included; what went to another job is not there. */
export function curesOf(job: Job): Cure[] {
  const hotWork = hotWorkIn(job);
  const jobHolds = holdSpans(job);
  return job.live.flatMap((record) => (record.fact.type === 'cure-opened' ? [{ ...readCure(job, record, record.fact, hotWork), jobHolds }] : []));
}

function readCure(job: Job, opened: FactRecord, fact: Extract<JobFact, { type: 'cure-opened' }>, hotWork: readonly HotWork[]): Omit<Cure, 'jobHolds'> {
  const mine = job.live.filter((record) => 'cure' in record.fact && sameCure(record.fact.cure, fact.cure));
  const there = job.live.filter((record) => onJoint(record, fact.cure.joint) && isAbout(record, opened.happenedAt));
  // A fire watch has no heat and no metal of its own: of what is entered about its place, only who stays is about it.
  const joint = isFireWatch(fact.card) ? there.filter((record) => record.fact.type === 'attended') : there;
  // While hot work goes on no fire watch runs, whatever began one before.
  const isHot = isFireWatch(fact.card) && goingOn({ ref: fact.cure, hotWork }).length > 0;
  const closed = isHot ? null : lastTime(mine, 'closed');
  // A panel that was closed only later, by a late entry, was not moved before: that was part of setting it.
  const moved = mine.flatMap((record) => (record.fact.type === 'moved' && closed !== null && record.happenedAt >= closed ? [record.happenedAt] : []));
  const readings = joint.flatMap((record) => readingOf(record));
  return {
    job: job.no,
    ref: fact.cure,
    card: fact.card,
    owner: ownerOf(job, opened, fact.owner),
    openedAt: opened.happenedAt,
    ...pastedIn(mine),
    closed,
    moved,
    start: closed === null ? null : moved.reduce((one, other) => later(one, other), closed),
    startEnteredAt: closed === null ? null : (mine.findLast((record) => (record.fact.type === 'closed' || record.fact.type === 'moved') && record.happenedAt === (moved.at(-1) ?? closed))?.enteredAt ?? opened.enteredAt),
    heat: colderInOneMinute(joint.flatMap((record) => heatOf(record)), hottestAllowed(fact.card)),
    readings,
    corrected: isFireWatch(fact.card) ? [] : correctedReadings(job.all, fact.cure.joint, opened.happenedAt),
    readBefore: job.live.filter((record) => onJoint(record, fact.cure.joint) && isShortlyBefore(record.happenedAt, opened.happenedAt)).flatMap((record) => readingOf(record)),
    ...heatedBy(joint),
    partLit: isPartLit(joint),
    depthMillimetres: mine.flatMap((record) => (record.fact.type === 'depth' ? [record.fact.millimetres] : [])).at(-1) ?? null,
    buildUp: joint.flatMap((record) => (record.fact.type === 'build-up' ? [record.fact.buildUp] : [])).at(-1) ?? null,
    attended: joint.flatMap(({ fact: said, happenedAt: at, by }) => (said.type === 'attended' && said.here !== true ? [{ at, by: said.person ?? by }] : [])),
    checks: mine.flatMap((record) => checkOf(record)),
    raised: mine.flatMap((record) => raisedOf(record)),
    putOff: mine.flatMap((record) => (record.fact.type === 'put-off' ? [{ kind: record.fact.kind, at: record.happenedAt }] : [])),
    releasedAt: lastTime(mine, 'released'),
    dampAllowedAt: allowed(job, fact.cure.joint, 'pastDew'),
    cartridges: mine.flatMap((record) => cartridgeSaid(record)),
    openedDays: strictest(fact.card.openedDays, ...stepsIn(job).filter((step) => isBegunBy(step, fact.cure.joint)).map((step) => step.openedDays)),
    labelAllowedAt: allowed(job, fact.cure.joint, 'pastLabel'),
    scrapped: mine.some((record) => record.fact.type === 'scrapped'),
    hotWork,
    cameFrom: mine.flatMap((record) => (record.fact.type === 'moved-here' ? [record.fact.fromJob] : [])).at(-1) ?? null,
    touchedAt: [...mine, ...joint].filter((record) => record.fact.type !== 'reminder-raised').reduce((at, record) => later(at, record.enteredAt), opened.enteredAt),
  };
}

/** Whoever opened it, until the job was handed on: what had been handed before this cure was entered is not about it. */
const ownerOf = ({ live }: Job, opened: FactRecord, owner: PersonId): PersonId =>
  live.filter((record) => record.entry > opened.entry).flatMap(({ entry, fact }) => (fact.type === 'handed' ? [{ entry, to: fact.to }] : [])).sort((a, b) => a.entry - b.entry).at(-1)?.to ?? owner;

const onJoint = ({ fact }: FactRecord, joint: JointNo): boolean => 'joint' in fact && fact.joint === joint;

/** From cleaning to the bead. Common practice, no source. */
const SHORTLY = minutes(30);

const isShortlyBefore = (at: Instant, begun: Instant): boolean => at < begun && at >= minus(begun, SHORTLY);

/** What was read before this cure began belongs to another one on the same joint. A lamp that was on before may be on still. */
const isAbout = ({ fact, happenedAt }: FactRecord, begun: Instant): boolean => fact.type !== 'reading' || happenedAt >= begun;

const lastTime = (records: readonly FactRecord[], type: JobFact['type']): Instant | null =>
  records.filter((record) => record.fact.type === type).at(-1)?.happenedAt ?? null;

/** The steps of the procedure that was begun last. */
const stepsIn = ({ live }: Job): readonly ProcedureStep[] => live.flatMap(({ fact }) => (fact.type === 'procedure-begun' ? [fact.procedure.steps] : [])).at(-1) ?? [];

/** A step that was overridden past its dew margin, or past its label, is the same decision as the one on the bead laid in it. */
function allowed({ live }: Job, joint: JointNo, past: 'pastDew' | 'pastLabel'): Instant | null {
  let there: readonly StepId[] = [];
  let last: Instant | null = null;
  for (const { fact, happenedAt } of live) {
    if (fact.type === 'procedure-begun') there = fact.procedure.steps.filter((step) => (step.joint ?? joint) === joint).map(({ id }) => id);
    if (fact.type === 'step-overridden' && fact[past] === true && there.includes(fact.step)) last = happenedAt;
  }
  return last;
}

/** Of two cartridges on one joint the earlier rules the open time; nothing is closed before the later one. */
function pastedIn(mine: readonly FactRecord[]): Pick<Cure, 'pasted' | 'lastPasted'> {
  const earliest = mine.flatMap(({ fact }) => (fact.type === 'pasted' ? [fact.earliest] : []));
  return { pasted: earliest.length === 0 ? null : earliest.reduce((one, other) => earlier(one, other)), lastPasted: lastTime(mine, 'pasted') };
}

function heatOf({ fact, happenedAt: at }: FactRecord): HeatEvent[] {
  if (fact.type === 'lamp-set') return [{ kind: 'lamp-set', at, setting: fact.setting, heater: fact.heater }];
  if (fact.type === 'lamp-on' || fact.type === 'lamp-off' || fact.type === 'lamp-found-off') return [{ kind: fact.type, at }];
  // A reading on bare shiny metal is kept and not counted.
  return fact.type === 'reading' && fact.method !== 'bare' ? [{ kind: 'reading', at, value: fact.value }] : [];
}

function cartridgeSaid({ fact, happenedAt: at, enteredAt }: FactRecord): CartridgeSaid[] {
  return fact.type === 'cartridge' ? [{ at, enteredAt, batch: fact.batch, expiry: fact.expiry, opened: fact.opened }] : [];
}

function readingOf({ fact, happenedAt: at, enteredAt, by, entry }: FactRecord): JointReading[] {
  return fact.type === 'reading' ? [{ at, value: fact.value, method: fact.method, by, entry, enteredAt }] : [];
}

/** The last word about the lamp was that it leaves a part out. */
function isPartLit(records: readonly FactRecord[]): boolean {
  const last = records.findLast(({ fact }) => fact.type === 'lamp-set' || fact.type === 'lamp-on' || fact.type === 'lamp-off' || fact.type === 'lamp-found-off');
  return last?.fact.type === 'lamp-off' && last.fact.part === true;
}

function heatedBy(records: readonly FactRecord[]): { readonly lamp: LampName | null; readonly heater: Heater } {
  return records.flatMap(({ fact }) => (fact.type === 'lamp-set' ? [{ lamp: fact.lamp, heater: fact.heater }] : [])).at(-1) ?? { lamp: null, heater: 'lamp' };
}

function checkOf({ fact, happenedAt: at, by }: FactRecord): Check[] {
  return fact.type === 'checked' ? [{ milestone: fact.milestone, result: fact.result, at, by, foreman: fact.role === 'foreman', apprentice: fact.role === 'apprentice' }] : [];
}

function raisedOf({ fact, happenedAt: at }: FactRecord): Raised[] {
  return fact.type === 'reminder-raised' ? [{ kind: fact.kind, round: fact.round, step: fact.step, dueAt: fact.dueAt, at, to: fact.to }] : [];
}
