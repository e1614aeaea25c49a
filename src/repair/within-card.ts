import { celsius, celsiusFromFahrenheit, type Celsius } from '../cure/units.js';
import type { MaterialCard } from '../cure/card.js';
import { outlooksOf } from './book.js';
import { lookupCard } from './cards.js';
import type { Command, TypedTemperature } from './commands.js';
import { HOTTEST_AIR } from './decide-heat.js';
import type { Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { hottestAllowed } from './hottest-allowed.js';
import { hottestSetting, isOver } from './outlook.js';

type Shelf = Pick<Situation, 'book' | 'cards' | 'shop'>;

/** Whether the temperature of a line lies within what its card allows: nobody is offered a figure that would end in a hold. */
export function isWithinCard(command: Command, shelf: Shelf): boolean {
  switch (command.kind) {
    case 'read':
      return isBelow(command.value, cardsOn(command.job, null, shelf).map(hottestAllowed), shelf);
    case 'lamp':
    case 'cure':
    case 'what-if': {
      const { setting } = command;
      if (command.kind === 'cure' && !isAir(command.air?.value, shelf)) return false;
      if (setting === null) return command.kind !== 'what-if' || command.air === null || isAir(command.air, shelf);
      const heater = command.heater;
      return isBelow(setting, cardsOn(command.job, command.kind === 'cure' ? command.card : null, shelf).map((card) => hottestSetting(card, heater)), shelf);
    }
    case 'air':
      return isAir(command.value, shelf);
    case 'paste':
    case 'closed':
      return isAir(command.air?.value, shelf);
    default:
      return true;
  }
}

const isAir = (typed: TypedTemperature | undefined, shelf: Shelf): boolean => typed === undefined || isBelow(typed, [celsius(HOTTEST_AIR)], shelf);

/** The card that was named, else what runs on the job, else every card of the shop. */
function cardsOn(no: JobNo | null, named: string | null, { book, cards, shop }: Shelf): readonly MaterialCard[] {
  const card = named === null ? null : lookupCard(cards, named);
  if (card !== null) return [card];
  const job = no === null ? null : book.job(no);
  const running = job === null ? [] : outlooksOf(job, shop, book.air).filter((outlook) => !isOver(outlook)).map(({ cure }) => cure.card);
  return running.length > 0 ? running : cards;
}

/** Below the highest of the limits; a card without one sets none. */
function isBelow(typed: TypedTemperature, limits: readonly (Celsius | null)[], { shop }: Shelf): boolean {
  const value = (typed.unit ?? shop.unit) === 'F' ? celsiusFromFahrenheit(typed.value) : celsius(typed.value);
  return limits.some((limit) => limit === null || value <= limit);
}
