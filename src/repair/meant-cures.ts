import { isOver, type Outlook } from './outlook.js';
import { undecidedSmoke } from './smoke.js';
import { isFireWatch } from './watch-card.js';

interface Meaning {
  readonly kind: string;
  readonly milestone?: string | null;
}

/**
 * The cures that a command can be about. A fire watch is nothing that anybody reads, heats, moves or puts off: only words
 * about it reach it: `hard` is a word about a joint, and never says that nothing smoulders.
 */
export function meantCures(command: Meaning, outlooks: readonly Outlook[]): readonly Outlook[] {
  const watches = outlooks.filter(({ cure }) => isFireWatch(cure.card));
  if (watches.length === 0) return outlooks;
  const others = outlooks.filter((outlook) => !watches.includes(outlook));
  switch (command.kind) {
    case 'check':
      return command.milestone === 'fire-watch' ? firstOf(watches.filter((watch) => !isOver(watch)), watches).slice(-1) : others;
    case 'when':
    case 'why':
      return others.length > 0 ? others : watches;
    case 'stay':
      return firstOf(others.filter(hasHeat), watches);
    case 'release':
      return firstOf(watches.filter(({ cure }) => undecidedSmoke(cure) !== null), others);
    default:
      return others;
  }
}

const firstOf = (first: readonly Outlook[], second: readonly Outlook[]): readonly Outlook[] => (first.length > 0 ? first : second);

const hasHeat = ({ heat }: Outlook): boolean => heat.lamp === 'on' || heat.counted !== null;
