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
  const valid = trouble.repairs().filter(({ line }) => mayBeMeant(line, names));
  const nearest = valid[0]?.line ?? keptLine(trouble, names) ?? examples(trouble, names).find((line) => interpretLine(line, names).ok) ?? ALWAYS_VALID;
  return { understood: trouble.understood, unclear: trouble.unclear, problem: trouble.problem, nearest, choices: choicesOf(valid, names) };
}

function mayBeMeant(line: string, names: KnownNames): boolean {
  const read = interpretLine(line, names);
  return read.ok && names.allows(read.command);
}

/** Nobody is shown how to say that something is done, or that a lamp is on or off, who may have said something else. */
const NEVER_SAID_FOR: ReadonlySet<CommandKind> = new Set(['done', 'sign', 'off', 'on']);

/** Everything that was understood and nothing else. */
const keptLine = ({ kept, command }: Trouble, names: KnownNames): string | null => (kept !== undefined && command !== null && !NEVER_SAID_FOR.has(command) && command !== 'check' && interpretLine(kept, names).ok ? kept : null);

function examples({ command, job, understood }: Trouble, names: KnownNames): readonly string[] {
  const jobs = [...(job === null ? [] : [[job]]), [...names.openJobs]];
  const said = understood.flatMap((one) => (one.is === 'card' ? [one.card] : []));
  const cards = said.length > 0 || job !== null ? said : [...names.cards.values()];
  // "Hard" is never put into anybody's mouth.
  if (command === 'check') return jobs.map(([known]) => (known === undefined ? 'soft' : `soft ${known}`));
  const own = command === null || NEVER_SAID_FOR.has(command) ? [] : jobs.map((known) => withLamp(exampleLine(COMMANDS[command], known, cards), understood));
  return job === null ? own : [...own, `when ${job}`];
}

/** The lamp or pad that was named stays in the example. */
function withLamp(line: string, understood: Trouble['understood']): string {
  const heater = understood.find((one) => one.is === 'heater');
  return heater?.is !== 'heater' ? line : line.replace(/\blamp (?=\d)/u, `${heater.heater} ${heater.name} `);
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
