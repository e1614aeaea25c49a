import type { MilestoneKind } from '../cure/card.js';
import { dewMargin, type DewMargin } from '../cure/dew-margin.js';
import type { AirReading } from '../cure/air.js';
import { later, minus, minutes, plus, roundDownToMinute, roundUpToMinute, type Celsius, type Instant } from '../cure/units.js';
import type { JointNo, PersonId, StepId } from './ids.js';
import type { Job } from './job.js';
import { isJointBelow } from './joint-below.js';
import type { Outlook } from './outlook.js';
import type { Need, ProcedureStep } from './procedure.js';
import type { Shop } from './shop.js';
import type { Doing, Pass } from './step-doings.js';
import { openedUntil, readLabelDate } from './label-date.js';
import { readClimate } from './step-figures.js';
import { confirmedAt, confirmedOn, runningWatches, unfinished } from './unfinished.js';

/** Why a step may not be done; `opensAt` is the earliest moment at which this may be over, where one is known. */
export type Block = { readonly opensAt: Instant | null } & (
  | { readonly why: 'step'; readonly step: StepId }
  | { readonly why: 'confirmed'; readonly joint: JointNo; readonly milestone: MilestoneKind }
  | { readonly why: 'too-hot'; readonly joint: JointNo; readonly temperature: Celsius }
  | { readonly why: 'dew-unknown' }
  | { readonly why: 'dew'; readonly margin: DewMargin }
  /** The other step is too long ago and has to be done again. */
  | { readonly why: 'again'; readonly step: StepId; readonly limit: Instant }
  /** The other step was done, and after it one that it rests on was done again: `renewed`. */
  | { readonly why: 'outdated'; readonly step: StepId; readonly renewed: StepId }
  | { readonly why: 'not-before'; readonly step: StepId }
  | { readonly why: 'cures'; readonly joints: readonly JointNo[] }
  /** After hot work, or during it. */
  | { readonly why: 'fire-watch' }
  | { readonly why: 'expired'; readonly text: string }
  /** Longer ago than the procedure lets a cartridge be open. */
  | { readonly why: 'opened'; readonly text: string; readonly days: number }
  /** The book shows that it was done all the same, at that moment, when `first` stood against it. */
  | { readonly why: 'out-of-turn'; readonly at: Instant; readonly by: PersonId; readonly first: Block }
);

/** A block and the condition it comes from. */
export interface KeyedBlock {
  readonly key: string;
  readonly block: Block;
}

/** What a condition is looked up in. */
export interface Ground {
  readonly job: Job;
  readonly outlooks: readonly Outlook[];
  readonly shop: Shop;
  readonly air: readonly AirReading[];
  readonly passes: ReadonlyMap<StepId, readonly Pass[]>;
  readonly steps: readonly ProcedureStep[];
}

/** A reading of air or metal longer ago says nothing about now (as for the paste itself). */
const READING_LASTS = minutes(180);

/** What stood against a step at a moment, as the book knows it now. */
export function blocksAt(step: ProcedureStep, doing: Doing, at: Instant, ground: Ground): readonly KeyedBlock[] {
  const needs = step.needs.flatMap((need, index) => unmet(need, step, at, ground).map((block) => ({ key: `need ${index} ${block.why}`, block })));
  return [...needs, ...[...expired(doing, at, ground), ...openedTooLong(step, doing, at, ground)].map((block) => ({ key: block.why, block }))];
}

function unmet(need: Need, step: ProcedureStep, at: Instant, ground: Ground): Block[] {
  switch (need.need) {
    case 'step':
      return passAt(need.step, at, ground) === null ? [{ why: 'step', step: need.step, opensAt: null }] : [];
    case 'within':
      return tooLongAgo(need, at, ground);
    case 'not-before':
      return tooEarly(need, at, ground);
    case 'confirmed':
      return unconfirmed(need, at, ground);
    case 'joint-below':
      return isJointBelow(ground.job, need, at) ? [] : [{ why: 'too-hot', joint: need.joint, temperature: need.temperature, opensAt: null }];
    case 'dew-margin':
      return tooDamp(step, at, ground);
    case 'cures-done':
      return stillCuring(at, ground);
  }
}

/** The last doing of a step that was through by then. */
export const passAt = (step: StepId, at: Instant, { passes }: Pick<Ground, 'passes'>): Pass | null =>
  (passes.get(step) ?? []).filter((pass) => pass.freeAt <= at).reduce<Pass | null>((last, pass) => (last === null || pass.mark.at >= last.mark.at ? pass : last), null);

/** Of the steps that this one rests on, the one that was done once more after it by then; null: none. */
export function renewedSince(step: StepId, pass: Pass, at: Instant, ground: Pick<Ground, 'passes' | 'steps'>, seen: readonly StepId[] = []): StepId | null {
  const needed = ground.steps.find(({ id }) => id === step)?.needs.flatMap((need) => ('step' in need ? [need.step] : [])) ?? [];
  for (const other of needed.filter((one) => !seen.includes(one))) {
    const done = (ground.passes.get(other) ?? []).filter((one) => one.freeAt <= at);
    const rested = done.findLast((one) => one.mark.at <= pass.mark.at);
    if (rested === undefined) continue;
    if (done.some((one) => one.mark.at > pass.mark.at)) return other;
    const deeper = renewedSince(other, rested, at, ground, [...seen, step]);
    if (deeper !== null) return deeper;
  }
  return null;
}

/** What must follow soon errs early: from the earliest that it can have been, rounded down. */
export const withinLimit = (pass: Pass, { minutes: length }: Extract<Need, { need: 'within' }>): Instant => roundDownToMinute(plus(pass.mark.earliest, length));

function tooLongAgo(need: Extract<Need, { need: 'within' }>, at: Instant, ground: Ground): Block[] {
  const pass = passAt(need.step, at, ground);
  if (pass === null) return [{ why: 'step', step: need.step, opensAt: null }];
  const limit = withinLimit(pass, need);
  if (at > limit) return [{ why: 'again', step: need.step, limit, opensAt: null }];
  const renewed = renewedSince(need.step, pass, at, ground);
  return renewed === null ? [] : [{ why: 'outdated', step: need.step, renewed, opensAt: null }];
}

/** A wait errs late: rounded up. */
function tooEarly(need: Extract<Need, { need: 'not-before' }>, at: Instant, ground: Ground): Block[] {
  const pass = passAt(need.step, at, ground);
  if (pass === null) return [{ why: 'step', step: need.step, opensAt: null }];
  const opensAt = later(pass.freeAt, roundUpToMinute(plus(pass.mark.at, need.minutes)));
  return at >= opensAt ? [] : [{ why: 'not-before', step: need.step, opensAt }];
}

function unconfirmed({ joint, milestone }: Extract<Need, { need: 'confirmed' }>, at: Instant, { outlooks }: Ground): Block[] {
  const there = outlooks.filter(({ cure }) => !cure.scrapped && cure.ref.joint === joint && cure.openedAt <= at);
  const confirmed = confirmedOn(there, milestone);
  if (confirmed !== null && confirmed <= at) return [];
  const dues = there.flatMap((outlook) => outlook.milestones.filter((one) => one.kind === milestone && confirmedAt(outlook, milestone) === null).map((one) => one.check.dueAt));
  return [{ why: 'confirmed', joint, milestone, opensAt: latest(dues) }];
}

function stillCuring(at: Instant, { outlooks }: Ground): Block[] {
  const waiting = unfinished(outlooks, at);
  const watches = runningWatches(outlooks, at);
  const joints = [...new Set(waiting.map(({ outlook }) => outlook.cure.ref.joint))];
  return [
    ...(waiting.length === 0 ? [] : [{ why: 'cures' as const, joints, opensAt: latest(waiting.map(({ dueAt }) => dueAt)) }]),
    ...(watches.length === 0 ? [] : [{ why: 'fire-watch' as const, opensAt: latest(watches.map(({ dueAt }) => dueAt)) }]),
  ];
}

/** Null as soon as one of them has no time. */
function latest(dues: readonly (Instant | null)[]): Instant | null {
  const [first, ...others] = dues.flatMap((due) => due ?? []);
  return first === undefined || others.length + 1 < dues.length ? null : others.reduce(later, first);
}

function tooDamp({ joint }: ProcedureStep, at: Instant, ground: Ground): Block[] {
  const metal = newest(metalReadings(joint, ground), at);
  const air = newest(airReadings(ground).filter(({ humidity }) => humidity !== null), at);
  const margin = metal === null || air?.humidity == null ? null : dewMargin(metal.value, air.value, air.humidity);
  if (margin === null) return [{ why: 'dew-unknown', opensAt: null }];
  return margin.verdict === 'enough' ? [] : [{ why: 'dew', margin, opensAt: null }];
}

interface Reading {
  readonly at: Instant;
  readonly value: Celsius;
  readonly humidity: number | null;
}

const newest = (readings: readonly Reading[], at: Instant): Reading | null =>
  readings.filter((one) => one.at <= at && one.at >= minus(at, READING_LASTS)).reduce<Reading | null>((last, one) => (last === null || one.at >= last.at ? one : last), null);

/** On that joint, or anywhere on the car; bare shiny metal lies to an infrared meter. */
function metalReadings(joint: JointNo | null, { job, shop }: Ground): Reading[] {
  return job.live.flatMap(({ fact, happenedAt: at }): Reading[] => {
    if (fact.type === 'reading') return fact.method !== 'bare' && (joint === null || fact.joint === joint) ? [{ at, value: fact.value, humidity: null }] : [];
    const figure = fact.type === 'step-entered' && fact.what === 'metal' && isAbout(job, fact.step, joint) ? readClimate(fact.text, shop.unit) : null;
    return figure === null ? [] : [{ at, ...figure }];
  });
}

function airReadings({ job, shop, air }: Ground): Reading[] {
  const entered = job.live.flatMap(({ fact, happenedAt: at }) => {
    const figure = fact.type === 'step-entered' && fact.what === 'air' ? readClimate(fact.text, shop.unit) : null;
    return figure === null ? [] : [{ at, ...figure }];
  });
  return [...air, ...entered];
}

/** Metal that was entered with a step was read on the joint of that step. */
function isAbout(job: Job, step: StepId, joint: JointNo | null): boolean {
  if (joint === null) return true;
  const steps = job.live.flatMap(({ fact }) => (fact.type === 'procedure-begun' ? fact.procedure.steps : []));
  return steps.some((one) => one.id === step && (one.joint === null || one.joint === joint));
}

/** What the book read itself within the last hours needs not to be entered again. */
export function isReadAnyway(what: 'air' | 'metal', { joint }: ProcedureStep, at: Instant, ground: Ground): boolean {
  return newest(what === 'air' ? airReadings(ground) : metalReadings(joint, ground), at) !== null;
}

/** A label is good to the end of its day, or of its month. */
function expired({ figures }: Doing, at: Instant, { shop }: Ground): Block[] {
  const expiry = figures.get('expiry');
  const date = expiry === undefined ? null : readLabelDate(expiry.text, shop.zone);
  return expiry === undefined || (date !== null && at < date.ends) ? [] : [{ why: 'expired', text: expiry.text, opensAt: null }];
}

/** Of a month that stands alone its first day is meant: what may be open for so long errs early. */
function openedTooLong({ openedDays: days }: ProcedureStep, { figures }: Doing, at: Instant, { shop }: Ground): Block[] {
  const opened = figures.get('opened');
  if (opened === undefined || days === null) return [];
  const date = readLabelDate(opened.text, shop.zone);
  return date !== null && at < openedUntil(date, days, shop.zone) ? [] : [{ why: 'opened', text: opened.text, days, opensAt: null }];
}
