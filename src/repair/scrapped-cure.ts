import type { EntryCommand } from './commands.js';
import { outlooksOf } from './book.js';
import { cureWhere } from './cure-where.js';
import type { Situation } from './decision.js';
import { lineOf } from './line-of.js';
import { isOver, type Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import { cureFor } from './subject.js';

type Scrap = Extract<EntryCommand, { readonly kind: 'scrap' }>;
type Found = ReturnType<typeof cureFor>;

/**
 * The cure to scrap. A card that leads the reason (`scrap 501 P1 mixed badly`) says which one is meant; where it does not run,
 * nothing else is scrapped in its place.
 */
export function scrappedCure(command: Scrap, situation: Situation): Found {
  const named = cardNamed(command, situation);
  if (named === null) return cureFor(command, situation);
  const found = cureWhere((outlook) => isRunning(outlook) && outlook.cure.card.name === named, command, situation);
  if (!found.ok || found.outlook.cure.card.name === named) return found;
  return { ok: false, refusal: whichCure(command, named, found.outlook, situation) };
}

/** The first word of the reason, if it is a card of the shelf or of a cure that was begun with a card which is no longer on it. */
function cardNamed({ reason, job }: Scrap, { cards, book, thread }: Situation): string | null {
  const [first = ''] = reason.split(/\s/);
  const word = first.replace(/[,.:;!]+$/, '').toLowerCase();
  const no = job ?? thread;
  const begun = no === null ? [] : (book.job(no)?.all ?? []).flatMap(({ fact }) => (fact.type === 'cure-opened' ? [fact.card] : []));
  return [...cards, ...begun].find((card) => card.name.toLowerCase() === word)?.name ?? null;
}

function whichCure(command: Scrap, named: string, { cure: { job } }: Outlook, { book, shop }: Situation): Refusal {
  const known = book.job(job);
  const running = known === null ? [] : outlooksOf(known, shop, book.air).filter(isRunning);
  const [, ...rest] = command.reason.split(/\s/);
  const choices = running.map(({ cure: { ref, card } }) => ({ joint: ref.joint, card: card.name, line: lineOf({ ...command, job, joint: ref.joint, reason: [card.name, ...rest].join(' ') }) }));
  return { code: 'which-cure', job, named, choices };
}

const isRunning = (outlook: Outlook): boolean => !outlook.cure.scrapped && (!isOver(outlook) || outlook.overMaximum !== null);
