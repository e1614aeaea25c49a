import { minutesBetween } from '../cure/units.js';
import { isJobCommand, type EntryCommand } from './commands.js';
import { decideWrongCard } from './decide-card.js';
import { decideCheck, decideLater, decideRelease, decideScrap } from './decide-check.js';
import { decideBuildUp, decideDepth } from './decide-depth.js';
import { decideAir, decideOff, decideOn, decideRead, decideStay } from './decide-heat.js';
import { decideLamp } from './decide-lamp.js';
import { decideClosed, decideCure, decideMoved, decidePaste } from './decide-start.js';
import { decideJob } from './decide-job.js';
import { mayEnter } from './may-enter.js';
import { isForeman } from './people.js';
import { refuse, type Decision, type Situation } from './decision.js';
import type { Fact } from './facts.js';

/** Rule R20: one's own last entry, within ten minutes. */
const UNDO_WITHIN = 10;

/** What a command means for the book: facts to be stored, or a refusal that changes nothing. Pure. */
export function decide(command: EntryCommand, situation: Situation): Decision {
  const refusal = mayEnter(command, situation);
  if (refusal !== null) return refuse(refusal);
  if (isJobCommand(command)) return decideJob(command, situation);
  switch (command.kind) {
    case 'paste':
      return decidePaste(command, situation);
    case 'closed':
      return decideClosed(command, situation);
    case 'moved':
      return decideMoved(command, situation);
    case 'cure':
      return decideCure(command, situation);
    case 'lamp':
      return decideLamp(command, situation);
    case 'off':
      return decideOff(command, situation);
    case 'on':
      return decideOn(command, situation);
    case 'read':
      return decideRead(command, situation);
    case 'air':
      return decideAir(command, situation);
    case 'check':
      return decideCheck(command, situation);
    case 'later':
      return decideLater(command, situation);
    case 'depth':
      return decideDepth(command, situation);
    case 'build-up':
      return decideBuildUp(command, situation);
    case 'wrong-card':
      return decideWrongCard(command, situation);
    case 'stay':
      return decideStay(command, situation);
    case 'release':
      return decideRelease(command, situation);
    case 'scrap':
      return decideScrap(command, situation);
    case 'undo':
      return decideUndo(command, situation);
  }
}

/** Takes back one's last entry; the book keeps both. The foreman may take back anybody's, at any time. A number (from a button) takes back exactly that entry, once. */
function decideUndo(command: Extract<EntryCommand, { readonly kind: 'undo' }>, situation: Situation): Decision {
  const last = command.entry === null ? situation.lastEntry() : { entry: command.entry, facts: situation.entry(command.entry) };
  const first = last?.facts[0];
  if (last === null || first === undefined || isClerks(first.fact)) return refuse({ code: 'nothing-to-undo' });
  const foreman = isForeman(situation.shop, situation.by);
  if (first.by !== situation.by && !foreman) return refuse({ code: 'not-yours', by: first.by });
  if (!foreman && minutesBetween(first.enteredAt, situation.now) > UNDO_WITHIN) return refuse({ code: 'undo-too-late', enteredAt: first.enteredAt });
  const main = last.facts.at(-1) ?? first;
  return {
    ok: true,
    // An entry about several jobs, such as a lamp taken from another one, is taken back in each of their books.
    facts: [...new Set(last.facts.map(({ job }) => job))].map((job) => ({ job, happenedAt: situation.now, fact: { type: 'undone', entry: last.entry } })),
    about: null,
    notes: [{ note: 'undone', what: main }],
  };
}

/** What the bot wrote by itself. */
const isClerks = ({ type }: Fact): boolean => type === 'reminder-raised' || type === 'bell' || type === 'adoption-asked';
