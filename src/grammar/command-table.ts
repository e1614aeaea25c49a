import type { CommandKind } from '../repair/commands.js';
import { accept } from './commands/accept.js';
import { adopt } from './commands/adopt.js';
import { air } from './commands/air.js';
import { begin } from './commands/begin.js';
import { buildUp } from './commands/build-up.js';
import { busy } from './commands/busy.js';
import { check } from './commands/check.js';
import { closed } from './commands/closed.js';
import { cure } from './commands/cure.js';
import { depth } from './commands/depth.js';
import { done } from './commands/done.js';
import { enter } from './commands/enter.js';
import { hand } from './commands/hand.js';
import { handover } from './commands/handover.js';
import { help } from './commands/help.js';
import { hold } from './commands/hold.js';
import { lamp } from './commands/lamp.js';
import { lamps } from './commands/lamps.js';
import { later } from './commands/later.js';
import { latestStart } from './commands/latest-start.js';
import { may } from './commands/may.js';
import { move } from './commands/move.js';
import { moved } from './commands/moved.js';
import { next } from './commands/next.js';
import { off } from './commands/off.js';
import { on } from './commands/on.js';
import { override } from './commands/override.js';
import { paste } from './commands/paste.js';
import { read } from './commands/read.js';
import { release } from './commands/release.js';
import { scrap } from './commands/scrap.js';
import { sign } from './commands/sign.js';
import { smoke } from './commands/smoke.js';
import { stay } from './commands/stay.js';
import { tap } from './commands/tap.js';
import { turnAway } from './commands/turn-away.js';
import { undo } from './commands/undo.js';
import { weld } from './commands/weld.js';
import { whatIf } from './commands/what-if.js';
import { when } from './commands/when.js';
import { whoWaits } from './commands/who-waits.js';
import { why } from './commands/why.js';
import { wrongCard } from './commands/wrong-card.js';
import type { Declaration, Parameter } from './declaration.js';
import { shownWord, wordsOfAll } from './language.js';
import type { ShownWord } from './said.js';

/** Every command, by its kind. */
export const COMMANDS: Readonly<Record<CommandKind, Declaration>> = {
  paste,
  closed,
  moved,
  cure,
  lamp,
  off,
  on,
  read,
  air,
  check,
  depth,
  'build-up': buildUp,
  'wrong-card': wrongCard,
  later,
  stay,
  release,
  scrap,
  undo,
  begin,
  next,
  done,
  tap,
  enter,
  sign,
  hold,
  override,
  weld,
  smoke,
  may,
  move,
  hand,
  handover,
  accept,
  busy,
  adopt,
  'turn-away': turnAway,
  'who-waits': whoWaits,
  lamps,
  when,
  why,
  'what-if': whatIf,
  'latest-start': latestStart,
  help,
};

/** In the order of a working day, as help shows them. */
export const COMMAND_TABLE: readonly Declaration[] = Object.values(COMMANDS);

/** One command as help shows it. */
export interface CommandHelp {
  readonly kind: CommandKind;
  readonly words: readonly string[];
  readonly shown: ShownWord;
  readonly parameters: readonly Parameter[];
  readonly usage: string;
  readonly example: string;
}

const EXAMPLE_JOB = '501';
const EXAMPLE_CARD = 'P1';

/** The word a command is known by. */
export function commandWord(declaration: Declaration): string {
  const [first] = Object.values(declaration.forms);
  return first === undefined ? declaration.kind : shownWord(first);
}

/** The same in every language. */
export function shownWords({ kind, forms }: Declaration): ShownWord {
  const [words = { en: [kind], de: [], es: [] }] = Object.values(forms);
  const [english = kind] = words.en;
  return { en: english, de: words.de[0] ?? english, es: words.es[0] ?? english };
}

/** An example that reads well in a shop with these open jobs and cards; without any, the usual invented ones. */
export function exampleLine(declaration: Declaration, jobs: Iterable<string>, cards: Iterable<string>): string {
  const [job = EXAMPLE_JOB] = jobs;
  const [card = ''] = cards;
  return declaration.example({ job, card }).replace(/ +/g, ' ').trim();
}

/** `job` and `cards` make the examples lines of this shop; without them the usual invented ones. */
export const commandHelp = (job: string | null = null, cards: readonly string[] = [EXAMPLE_CARD]): readonly CommandHelp[] =>
  COMMAND_TABLE.map((declaration) => ({
    kind: declaration.kind,
    words: Object.values(declaration.forms).flatMap(wordsOfAll),
    shown: shownWords(declaration),
    parameters: declaration.takes,
    usage: declaration.usage,
    example: exampleLine(declaration, [job ?? EXAMPLE_JOB], cards),
  }));
