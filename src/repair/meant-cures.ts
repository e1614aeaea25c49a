import { isOver, type Outlook } from './outlook.js';
import { undecidedSmoke } from './smoke.js';
import type { ReminderKind } from './reminder.js';
import { isFireWatch } from './watch-card.js';

interface Meaning {
  readonly kind: string;
  readonly milestone?: string | null;
}

/**
 * The cures that a command can be about. A fire watch is nothing that anybody reads, heats, moves or puts off: only words
 * about it reach it. A bare `hard` is about the watch where that was this person's newest question, or where nothing else is there.
 */
export function meantCures(command: Meaning, outlooks: readonly Outlook[], askedAt: (outlook: Outlook, kind: ReminderKind) => number): readonly Outlook[] {
  const watches = outlooks.filter(({ cure }) => isFireWatch(cure.card));
  if (watches.length === 0) return outlooks;
  const others = outlooks.filter((outlook) => !watches.includes(outlook));
  switch (command.kind) {
    case 'check':
      return checked(command.milestone ?? null, watches, others, askedAt);
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

function checked(milestone: string | null, watches: readonly Outlook[], others: readonly Outlook[], askedAt: (outlook: Outlook, kind: ReminderKind) => number): readonly Outlook[] {
  const standing = firstOf(watches.filter((watch) => !isOver(watch)), watches);
  if (milestone === 'fire-watch') return standing.slice(-1);
  if (milestone !== null) return others;
  const watched = Math.max(...standing.map((outlook) => askedAt(outlook, 'fire-watch')));
  const asked = Math.max(0, ...others.flatMap((outlook) => outlook.milestones.map(({ kind }) => askedAt(outlook, kind))));
  return others.length === 0 || watched > asked ? standing.slice(-1) : others;
}
