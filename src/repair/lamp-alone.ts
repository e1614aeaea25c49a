import type { Heater } from '../cure/history.js';
import type { Celsius, Instant } from '../cure/units.js';
import type { EntryCommand } from './commands.js';
import type { NewFact, Situation } from './decision.js';
import type { JointNo, JobNo } from './ids.js';
import type { Cure } from './job.js';
import { lineOf } from './line-of.js';
import { allOnShift } from './on-shift.js';
import { isAttended, needsReading, waitingMilestones } from './outlook.js';
import type { Refusal } from './refusal.js';
import type { Shop } from './shop.js';
import { isOpen, nextClosing } from './shop-hours.js';
import { supposeHeat } from './suppose.js';

type Heating = Extract<EntryCommand, { readonly kind: 'cure' | 'lamp' }>;

/**
 * A lamp that would still be needed when the shop closes is switched on only with a named person beside it (rule R17): asked before
 * anything is stored. Null: it ends in time, or somebody stays.
 */
export function lampAlone(command: Heating, cure: Cure, setting: Celsius, { shop, book, now, by }: Situation): Extract<Refusal, { readonly code: 'lamp-alone' }> | null {
  const { when, heater } = command;
  const closes = isOpen(shop, now) ? nextClosing(shop, now) : now;
  if (closes === null || when.attended === true || cure.closed === null || !works(heater, setting, cure) || isAttended(cure, shop, closes)) return null;
  const stayed: Cure = { ...cure, attended: [...cure.attended, { at: when.latest, by }] };
  const { outlook } = supposeHeat({ kind: 'heater', heater, setting }, { cure: stayed, shop, air: book.air, from: when.latest });
  const ends = waitingMilestones(outlook).flatMap((one) => one.check.dueAt ?? []).find((dueAt) => dueAt > when.latest) ?? null;
  // What cannot end today is no stage of today: the lamp goes off at closing, and the answer says so.
  if (ends === null || ends <= closes || isOpen(shop, ends) || isStaffed(shop, closes, ends)) return null;
  const stays = { ...command, job: cure.job, joint: cure.ref.joint, when: { ...when, stated: true, confirmed: true, attended: true as const } };
  const airOnly = command.kind === 'cure' ? lineOf({ ...command, job: cure.job, setting: null, lamp: null }) : null;
  return { code: 'lamp-alone', job: cure.job, heater, setting, ends, closes: isOpen(shop, now) ? closes : null, stayLine: lineOf(stays), airLine: airOnly };
}

/** Whoever was asked and stays is named in the book. */
export const staysWith = ({ when }: Heating, job: JobNo, joint: JointNo, { now }: Situation): NewFact[] =>
  when.attended === true ? [{ job, happenedAt: now, fact: { type: 'attended', joint } }] : [];

/** Where people work in shifts the lamp is not alone as long as one of them goes on. */
const isStaffed = (shop: Shop, from: Instant, to: Instant): boolean => allOnShift(shop, from).length > 0 && allOnShift(shop, to).length > 0;

/** Heat like this brings something on this card nearer. A pad runs no recipe. */
const works = (heater: Heater, setting: Celsius, cure: Cure): boolean =>
  needsReading(cure) || (heater === 'lamp' && cure.card.milestones.some(({ laws }) => laws.some((law) => law.law === 'recipe' && law.stages.some((stage) => stage.lamp <= setting))));
