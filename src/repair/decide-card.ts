import type { MaterialCard } from '../cure/card.js';
import { celsius, type Celsius } from '../cure/units.js';
import { outlooksOf } from './book.js';
import { lookupCard } from './cards.js';
import type { EntryCommand } from './commands.js';
import { begunIn, runsOf } from './correct-cards.js';
import { sameCure, type CureRef } from './cure-ref.js';
import { refuse, type Decision, type Note, type Situation } from './decision.js';
import { recipeNotes } from './decide-lamp.js';
import type { FactRecord } from './facts.js';
import { lineOf } from './line-of.js';
import { cureWhere } from './cure-where.js';
import { hottestAllowed } from './hottest-allowed.js';
import { hottestSetting, isOver, type Outlook } from './outlook.js';
import { isFireWatch } from './watch-card.js';

type WrongCard = Extract<EntryCommand, { readonly kind: 'wrong-card' }>;

/** It was another material all along: the whole course of the joint is worked out anew from the right card. */
export function decideWrongCard(command: WrongCard, situation: Situation): Decision {
  const card = lookupCard(situation.cards, command.card);
  const found = cureWhere((outlook) => card !== null && mayBe(card, outlook), command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { cure } = found.outlook;
  const { job, ref } = cure;
  if (card === null) return refuse({ code: 'which-card', job, choices: situation.cards.filter((one) => one.name !== cure.card.name).map((one) => ({ card: one.name, line: lineOf({ ...command, job, joint: ref.joint, card: one.name }) })) });
  if (cure.card.name === card.name) return refuse({ code: 'same-card', job, card: card.name });
  const there = onThatJoint(found.outlook, situation);
  const running = there.find((outlook) => outlook.cure.card.name === card.name && !isOver(outlook));
  if (running !== undefined) return refuse({ code: 'card-runs-there', job, joint: ref.joint, card: card.name, since: running.cure.start ?? running.cure.openedAt });
  const alike = there.filter((outlook) => mayBe(card, outlook) && !isOver(outlook));
  if (alike.length > 1) return refuse({ code: 'two-cures-there', job, joint: ref.joint, cards: alike.map((outlook) => outlook.cure.card.name) });
  const all = situation.book.job(job)?.all ?? [];
  const right = frozenBefore(ref, card, all) ?? card;
  const as: CureRef = { joint: ref.joint, card: card.name, run: runsOf({ joint: ref.joint, card: card.name }, all) + 1 };
  return { ok: true, facts: [{ job, happenedAt: situation.now, fact: { type: 'card-corrected', cure: ref, as, card: right } }], about: { job, cure: as }, notes: [{ note: 'card-changed', before: found.outlook }, ...heatNotes(right, found.outlook)] };
}

/** Back to a card that this cure had already: as it was frozen then, whatever the file says today (rule R14). */
function frozenBefore(cure: CureRef, { name }: MaterialCard, all: readonly FactRecord[]): MaterialCard | undefined {
  const cards = all.flatMap(({ fact }) => (fact.type === 'cure-opened' ? [{ of: fact.cure, card: fact.card }] : fact.type === 'card-corrected' ? [{ of: fact.as, card: fact.card }] : []));
  return cards.find(({ of, card }) => card.name === name && sameCure(begunIn(of, all), begunIn(cure, all)))?.card;
}

/** A material that carries is mixed up with another that carries, a coat with a coat. */
const mayBe = (card: MaterialCard, { cure }: Outlook): boolean => cure.card.name !== card.name && !isFireWatch(cure.card) && isAdhesive(cure.card) === isAdhesive(card);

/** A card that carries the car: two of them on one car are two joints, or a slip of the thumb. */
export const isAdhesive = (card: MaterialCard): boolean => card.milestones.some((rule) => rule.kind === 'handling');

function onThatJoint({ cure }: Outlook, { book, shop }: Situation): Outlook[] {
  const job = book.job(cure.job);
  const all = job === null ? [] : outlooksOf(job, shop, book.air);
  return all.filter((other) => other.cure.ref.joint === cure.ref.joint && !other.cure.scrapped);
}

/** The heat that the joint had may be more than the right card allows, and the heat it has may count nothing. */
function heatNotes(card: MaterialCard, { cure, heat }: Outlook): Note[] {
  const maximum = hottestAllowed(card);
  const read = cure.readings.filter((one) => one.method !== 'bare').reduce<Celsius | null>((hottest, one) => celsius(Math.max(hottest ?? one.value, one.value)), null);
  if (maximum !== null && read !== null && read > maximum) return [{ note: 'over-maximum', value: read, maximum }];
  if (heat.lamp !== 'on' || heat.setting === null) return [];
  const most = hottestSetting(card, cure.heater);
  return most !== null && heat.setting > most ? [{ note: 'lamp-over-maximum', setting: heat.setting, maximum: most }] : recipeNotes(card, heat.setting, cure.heater);
}
