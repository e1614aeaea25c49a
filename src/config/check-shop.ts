import type { Config } from '../config.js';
import type { MaterialCard } from '../cure/card.js';
import { impliedEnergy, isUsualEnergy, USUAL_ENERGY } from '../cure/plausible-energy.js';
import type { Procedure } from '../repair/procedure.js';
import type { Shop } from '../repair/shop.js';
import { readCards } from './cards-file.js';
import { describeProblem } from './file-problem.js';
import { readProcedures } from './procedures-file.js';
import { worksAtCars } from '../repair/people.js';
import { readShop } from './shop-file.js';
import { dayName, END_OF_DAY } from './shop-hours.js';

/** What a look at the shop's files found. */
export interface ShopCheck {
  readonly ok: boolean;
  /** For the person at the screen, one finding each. */
  readonly lines: readonly string[];
}

/** Reads shop.yaml, the material cards and the procedures as a start would, and says what they say. Changes nothing. */
export function checkShop(config: Pick<Config, 'shop' | 'cards' | 'procedures'>): ShopCheck {
  const shop = readShop(config.shop.path);
  const cards = readCards(config.cards.path);
  const procedures = readProcedures(config.procedures.path);
  const problems = [shop, cards, procedures].flatMap((read) => (read.ok ? [] : read.problems)).map(describeProblem);
  if (!shop.ok || !cards.ok || !procedures.ok) return { ok: false, lines: [...problems, `${problems.length} to mend. Nothing was loaded.`] };
  return { ok: true, lines: [shopLine(shop.shop), ...shiftLines(shop.shop), ...cards.cards.flatMap(cardLines), ...procedures.procedures.flatMap((one) => procedureLines(one, shop.shop))] };
}

function shopLine({ name, zone, people, lamps, pads, bays, air, night, closedDays, holidays, unit, language, fireWatch, batteryCaution, shifts }: Shop): string {
  const degrees = (value: number | null): string => (value === null ? 'unknown' : `${value} °C`);
  const list = (names: readonly string[]): string => names.join(', ') || 'none';
  const closed = closedDays === null ? 'as night' : degrees(closedDays);
  return `${name}: ${zone}, ${people.length} people, lamps ${list(lamps)}, pads ${list(pads)}, air ${degrees(air)}, night ${degrees(night)}, closed days ${closed}, holidays ${list(holidays)}, unit ${unit}, language ${language}, bays ${list(bays)}, fire watch ${fireWatch} min, battery caution above ${degrees(batteryCaution)}, shifts ${list(shifts.map((shift) => shift.name))}.`;
}

/** Who is told when. Without shifts everybody is taken to work while the shop is open. */
function shiftLines({ shifts, people }: Shop): string[] {
  const without = people.filter(({ id, role }) => worksAtCars(role) && !shifts.some((shift) => shift.people.includes(id)));
  if (shifts.length === 0) return [];
  return [...shifts.map((shift) => `  Shift ${shift.name}: ${shift.days.map(dayName).join(', ')} ${timeOfDay(shift.begins)}-${timeOfDay(shift.ends)}${shift.ends > END_OF_DAY ? ' next day' : ''}, ${shift.people.join(', ')}.`), ...without.map(({ name }) => `  ${name} is in no shift: what is theirs goes to the foreman on duty.`)];
}

const timeOfDay = (minutes: number): string => `${String(Math.floor(minutes / 60) % 24).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

function cardLines(card: MaterialCard): string[] {
  const example = card.example ? ', an example: not your data sheet' : '';
  const energies = card.milestones.flatMap((rule) => {
    const energy = impliedEnergy(rule);
    return energy === null ? [] : [energyLine(rule.kind, energy)];
  });
  return [`Card ${card.name} (${card.title}, ${card.version}${example}): ${card.milestones.map((rule) => rule.kind).join(', ')}.`, ...marginLine(card), ...energies];
}

function procedureLines({ name, title, version, example, steps }: Procedure, { people }: Shop): string[] {
  const marked = example ? ', an example: not your repair method' : '';
  const unsigned = steps.filter(({ sign }) => sign !== null && !people.some(({ role }) => sign.includes(role)));
  return [
    `Procedure ${name} (${title}, ${version}${marked}): ${steps.length} step${steps.length === 1 ? '' : 's'}, hold points ${steps.filter(({ sign }) => sign !== null).map(({ id }) => id).join(', ') || 'none'}.`,
    ...unsigned.map(({ id, sign }) => `  ${id}: nobody in this shop may sign it (${sign?.join(', ') ?? ''}): add a role to sign, or a person to shop.yaml.`),
  ];
}

const marginLine = ({ marginPercent }: MaterialCard): string[] => (marginPercent === 0 ? [] : [`  margin: every wait by rows is taken ${marginPercent} % longer than printed.`]);

function energyLine(kind: string, energy: number): string {
  const kilojoules = (value: number): string => `${Math.round(value / 1000)}`;
  const said = `  ${kind}: the figures imply an activation energy of ${kilojoules(energy)} kJ/mol`;
  return isUsualEnergy(energy) ? `${said}.` : `${said}, outside the usual ${kilojoules(USUAL_ENERGY.least)} to ${kilojoules(USUAL_ENERGY.most)} of two-part epoxies: another chemistry, or a mistyped row.`;
}
