import type { Config } from '../config.js';
import type { MaterialCard } from '../cure/card.js';
import { impliedEnergy, isUsualEnergy, USUAL_ENERGY } from '../cure/plausible-energy.js';
import type { Shop } from '../repair/shop.js';
import { readCards } from './cards-file.js';
import { describeProblem } from './file-problem.js';
import { readShop } from './shop-file.js';

/** What a look at the shop's files found. */
export interface ShopCheck {
  readonly ok: boolean;
  /** For the person at the screen, one finding each. */
  readonly lines: readonly string[];
}

/** Reads shop.yaml and the material cards as a start would, and says what they say. Changes nothing. */
export function checkShop(config: Pick<Config, 'shop' | 'cards'>): ShopCheck {
  const shop = readShop(config.shop.path);
  const cards = readCards(config.cards.path);
  const problems = [...(shop.ok ? [] : shop.problems), ...(cards.ok ? [] : cards.problems)].map(describeProblem);
  if (!shop.ok || !cards.ok) return { ok: false, lines: [...problems, `${problems.length} to mend. Nothing was loaded.`] };
  return { ok: true, lines: [shopLine(shop.shop), ...cards.cards.flatMap(cardLines)] };
}

function shopLine({ name, zone, people, lamps, pads, air, night, closedDays, holidays, unit }: Shop): string {
  const degrees = (value: number | null): string => (value === null ? 'unknown' : `${value} °C`);
  const list = (names: readonly string[]): string => names.join(', ') || 'none';
  const closed = closedDays === null ? 'as night' : degrees(closedDays);
  return `${name}: ${zone}, ${people.length} people, lamps ${list(lamps)}, pads ${list(pads)}, air ${degrees(air)}, night ${degrees(night)}, closed days ${closed}, holidays ${list(holidays)}, unit ${unit}.`;
}

function cardLines(card: MaterialCard): string[] {
  const example = card.example ? ', an example: not your data sheet' : '';
  const energies = card.milestones.flatMap((rule) => {
    const energy = impliedEnergy(rule);
    return energy === null ? [] : [energyLine(rule.kind, energy)];
  });
  return [`Card ${card.name} (${card.title}, ${card.version}${example}): ${card.milestones.map((rule) => rule.kind).join(', ')}.`, ...marginLine(card), ...energies];
}

const marginLine = ({ marginPercent }: MaterialCard): string[] => (marginPercent === 0 ? [] : [`  margin: every wait by rows is taken ${marginPercent} % longer than printed.`]);

function energyLine(kind: string, energy: number): string {
  const kilojoules = (value: number): string => `${Math.round(value / 1000)}`;
  const said = `  ${kind}: the figures imply an activation energy of ${kilojoules(energy)} kJ/mol`;
  return isUsualEnergy(energy) ? `${said}.` : `${said}, outside the usual ${kilojoules(USUAL_ENERGY.least)} to ${kilojoules(USUAL_ENERGY.most)} of two-part epoxies: another chemistry, or a mistyped row.`;
}
