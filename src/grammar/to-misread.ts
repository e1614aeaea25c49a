import type { CommandKind } from '../repair/commands.js';
import { COMMANDS, exampleLine } from './command-table.js';
import { interpretLine } from './interpret-line.js';
import type { KnownNames } from './known-names.js';
import type { Choice, Misread } from './reading.js';
import type { Repair, Trouble } from './trouble.js';

/** Beside a question a phone shows this many buttons. */
const MOST_CHOICES = 4;
const ALWAYS_VALID = 'help';

/** Trouble as it is shown: only lines that would be read are offered. */
export function toMisread(trouble: Trouble, names: KnownNames): Misread {
  const valid = trouble.repairs().filter(({ line }) => interpretLine(line, names).ok);
  const nearest = valid[0]?.line ?? examples(trouble, names).find((line) => interpretLine(line, names).ok) ?? ALWAYS_VALID;
  return { understood: trouble.understood, unclear: trouble.unclear, problem: trouble.problem, nearest, choices: choicesOf(valid, names) };
}

/** Nobody is shown how to say that something is done, or off, that they may have said is not. */
const NEVER_SAID_FOR: ReadonlySet<CommandKind> = new Set(['done', 'sign', 'off']);

function examples({ command, job }: Trouble, names: KnownNames): readonly string[] {
  const jobs = [...(job === null ? [] : [[job]]), [...names.openJobs]];
  // "Hard" is never put into anybody's mouth.
  if (command === 'check') return jobs.map(([known]) => (known === undefined ? 'soft' : `soft ${known}`));
  const own = command === null || NEVER_SAID_FOR.has(command) ? [] : jobs.map((known) => exampleLine(COMMANDS[command], known, names.cards.values()));
  return job === null ? own : [...own, `when ${job}`];
}

/** One button for each thing that may have been meant. */
function choicesOf(valid: readonly Repair[], names: KnownNames): readonly Choice[] {
  const choices = new Map<string, Choice>();
  for (const { line, label } of valid) {
    const read = interpretLine(line, names);
    if (label === null || !read.ok) continue;
    const meaning = JSON.stringify(read.command);
    if (!choices.has(meaning) && ![...choices.values()].some((choice) => JSON.stringify(choice.label) === JSON.stringify(label))) choices.set(meaning, { label, line });
  }
  return [...choices.values()].slice(0, MOST_CHOICES);
}
