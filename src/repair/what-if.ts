import { hotter, later, type Celsius, type Instant } from '../cure/units.js';
import type { QuestionCommand } from './commands.js';
import { inCelsius } from './decide-lamp.js';
import type { Situation } from './decision.js';
import { recipeOf, settingsFor, spread, type Heat } from './heat-choices.js';
import { heatAt, isAttended, lookAt, waitingMilestones, type Outlook } from './outlook.js';
import { heatEnds, inAir, supposeAir, supposeHeat, type Ground, type Supposition } from './suppose.js';
import { cureFor } from './subject.js';
import { refusedSupposition, type WhatIfRefusal } from './what-if-refusal.js';
import { isOpen } from './shop-hours.js';

type WhatIfCommand = Extract<QuestionCommand, { readonly kind: 'what-if' }>;

/** One course the cure could take from a moment on. */
export interface Variant extends Supposition {
  /** The heat; null: as it stands, and only the air is another. */
  readonly supposed: Heat | null;
  /** The air; null: as it stands. */
  readonly air: Celsius | null;
}

/** What would come of other heat or other air, beside what the book says. Nothing of it is in the book. */
export interface WhatIf {
  readonly from: Instant;
  /** The panel is not closed yet: all of it holds if it is closed at this moment. */
  readonly closedAt: Instant | null;
  readonly standing: Outlook;
  readonly asked: Variant | null;
  /** Other heat that the card knows, hottest first; what changes nothing is left out. */
  readonly others: readonly Variant[];
  /** Without heat; null where that is how it stands, or what was asked for. */
  readonly air: Variant | null;
  /** From here on the heat shown counts only if somebody stays; null: nothing hangs on it. */
  readonly alone: Instant | null;
}

export type WhatIfResult = { readonly ok: true; readonly whatIf: WhatIf } | { readonly ok: false; readonly refusal: WhatIfRefusal };

const MOST_OTHERS = 2;

/** The milestones that still wait, as it stands and as they would be; pure, and nothing is stored. */
export function whatIf(command: WhatIfCommand, situation: Situation): WhatIfResult {
  const found = cureFor(command, situation);
  if (!found.ok) return found;
  const { shop, book, now } = situation;
  const known = found.outlook.cure;
  const wanted = command.from ?? now;
  if (known.closed === null && known.pasted !== null && wanted < known.pasted) return { ok: false, refusal: { code: 'before-step', at: wanted, step: 'pasted', stepAt: known.pasted } };
  const refusal = refusedSupposition(command, known, situation);
  if (refusal !== null) return { ok: false, refusal };
  const cure = known.start === null ? { ...known, closed: wanted, start: wanted } : known;
  const ground: Ground = { cure, shop, air: book.air, from: later(wanted, cure.start ?? wanted) };
  return { ok: true, whatIf: { ...variants(command, ground, situation), closedAt: known.start === null ? wanted : null } };
}

function variants(command: WhatIfCommand, ground: Ground, situation: Situation): Omit<WhatIf, 'closedAt'> {
  const { cure, shop, air, from } = ground;
  const standing = lookAt(cure, shop, air);
  const asked = askedFor(command, ground, situation);
  const alike = (one: Variant): boolean => sameTimes(one.outlook, standing) || (asked !== null && sameTimes(one.outlook, asked.outlook));
  const others = otherHeats(standing, asked, ground).map((heat) => heated(heat, ground)).filter((one) => !alike(one));
  const heat = heatAt(standing, from);
  const unheated = command.air === null && !command.unheated && (heat.lamp !== 'never' || heat.counted !== null) ? heated({ kind: 'air' }, ground) : null;
  const shown = [asked, ...others].some((one) => one !== null && one.supposed !== null && one.supposed.kind !== 'air' && !sameTimes(one.outlook, standing));
  return { from, standing, asked, others, air: unheated === null || sameTimes(unheated.outlook, standing) ? null : unheated, alone: shown ? leftAlone(ground) : null };
}

/** Closing time, or at once where the shop is closed; null where somebody said already that they stay. */
function leftAlone(ground: Ground): Instant | null {
  const { cure, shop, from } = ground;
  const at = isOpen(shop, from) ? heatEnds(ground) : from;
  return isAttended(cure, shop, from) ? null : at;
}

const heated = (heat: Heat, ground: Ground): Variant => ({ supposed: heat, air: null, ...supposeHeat(heat, ground) });

/** What was asked for, heat and air together. */
function askedFor(command: WhatIfCommand, ground: Ground, situation: Situation): Variant | null {
  const heat = heatAsked(command, situation);
  if (command.air === null) return heat === null ? null : heated(heat, ground);
  const air = inCelsius(command.air, situation);
  return heat === null ? { supposed: null, air, ...supposeAir(air, ground) } : { ...heated(heat, inAir(air, ground)), air };
}

function heatAsked({ setting, heater, unheated }: WhatIfCommand, situation: Situation): Heat | null {
  if (setting !== null) return { kind: 'heater', heater, setting: inCelsius(setting, situation) };
  return unheated ? { kind: 'air' } : null;
}

/** The recipe from its next stage, or the lamp settings that the sheet has rows for. */
function otherHeats(standing: Outlook, asked: Variant | null, { cure, shop, from }: Ground): Heat[] {
  const kinds = waitingMilestones(standing).map((one) => one.kind);
  const stages = recipeOf(cure.card, kinds);
  if (stages !== null) return [{ kind: 'recipe', stages }];
  const around = standing.air.filter((step) => step.from <= from).at(-1)?.temperature ?? shop.air;
  const warmest = around === null || shop.air === null ? around : hotter(around, shop.air);
  const settings = settingsFor(cure.card, kinds, warmest).filter((setting) => asked?.supposed?.kind !== 'heater' || asked.supposed.setting !== setting);
  return spread(settings, asked === null ? MOST_OTHERS + 1 : MOST_OTHERS).reverse().map((setting): Heat => ({ kind: 'heater', heater: 'lamp', setting }));
}

/** Nothing of what people see would be different. */
export const sameTimes = (one: Outlook, other: Outlook): boolean =>
  one.milestones.every(({ check }, index) => {
    const before = other.milestones[index]?.check;
    return before !== undefined && check.dueAt === before.dueAt && check.phase === before.phase;
  });
