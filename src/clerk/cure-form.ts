import type { TypedTemperature } from '../repair/commands.js';
import type { PersonId } from '../repair/ids.js';
import { hardensByDepth } from '../repair/outlook.js';
import type { CureForm } from './desk.js';
import type { DeskState } from './desk-ports.js';
import type { BookTransaction } from './ports.js';

/** Far enough back for anybody's last cure and last lamp. */
const LOOKED_AT = 200;

/** What a form for a new cure offers this person: the shop's cards, lamps and pads, and what they entered last. */
export function cureFormOf(tx: BookTransaction, { cards, shop }: Pick<DeskState, 'cards' | 'shop'>, person: PersonId): CureForm {
  const facts = tx.factsBy(person, LOOKED_AT).map(({ fact }) => fact);
  const opened = facts.find((fact) => fact.type === 'cure-opened');
  const heated = facts.find((fact) => fact.type === 'lamp-set');
  return {
    cards: cards.map((card) => ({ name: card.name, title: card.title, needsDepth: hardensByDepth(card) })),
    lamps: shop.lamps,
    pads: shop.pads,
    last: {
      card: opened?.type === 'cure-opened' && cards.some((card) => card.name === opened.card.name) ? opened.card.name : null,
      heat: heated?.type === 'lamp-set' ? { heater: heated.heater, name: heated.lamp, setting: asTyped(heated.typed) } : null,
    },
  };
}

const asTyped = ({ value, unit }: TypedTemperature): string => `${value}${unit ?? ''}`;
