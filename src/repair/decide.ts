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
import { withCautions } from './step-cautions.js';
import { sameCure, type CureRef } from './cure-ref.js';
import { refuse, type Decision, type Situation } from './decision.js';
import type { Fact, FactRecord } from './facts.js';
import type { EntryNo } from './ids.js';
import type { Refusal } from './refusal.js';

/** Rule R20: one's own last entry, within ten minutes. */
const UNDO_WITHIN = 10;

/** What a command means for the book: facts to be stored, or a refusal that changes nothing. Pure. */
export const decide = (command: EntryCommand, situation: Situation): Decision => withCautions(decideAlone(command, situation), situation);

function decideAlone(command: EntryCommand, situation: Situation): Decision {
  const refusal = mayEnter(command, situation);
  if (refusal !== null) return refuse(refusal);
  if (isJobCommand(command)) return decideJob(command, situation);
  switch (command.kind) {
    case 'paste':
      return withAir(command, decidePaste(command, situation), situation);
    case 'closed':
      return withAir(command, decideClosed(command, situation), situation);
    case 'moved':
      return decideMoved(command, situation);
    case 'cure':
      return withAir(command, decideCure(command, situation), situation);
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

/** `paste 31 P1 air 19`: one entry, taken back as one; a doubt about either keeps both out of the book. */
function withAir({ air, when }: Extract<EntryCommand, { readonly kind: 'paste' | 'closed' | 'cure' }>, decision: Decision, situation: Situation): Decision {
  if (air === undefined || !decision.ok) return decision;
  const read = decideAir({ kind: 'air', ...air, when }, situation);
  return read.ok ? { ...decision, facts: [...decision.facts, ...read.facts] } : read;
}

/** Takes back one's last entry; the book keeps both. The foreman may take back anybody's, at any time. A number (from a button) takes back exactly that entry, once. */
function decideUndo(command: Extract<EntryCommand, { readonly kind: 'undo' }>, situation: Situation): Decision {
  const last = command.entry === null ? situation.lastEntry() : { entry: command.entry, facts: situation.entry(command.entry) };
  const first = last?.facts[0];
  if (last === null || first === undefined || isClerks(first.fact)) return refuse({ code: 'nothing-to-undo' });
  const foreman = isForeman(situation.shop, situation.by);
  if (first.by !== situation.by && !foreman) return refuse({ code: 'not-yours', by: first.by });
  if (!foreman && minutesBetween(first.enteredAt, situation.now) > UNDO_WITHIN) return refuse({ code: 'undo-too-late', enteredAt: first.enteredAt });
  const gone = first.by === situation.by ? wentAlong(last, situation) : null;
  if (gone !== null) return refuse(gone);
  // Air that was said along with a start is not what the entry was about.
  const main = last.facts.findLast(({ fact, job }) => fact.type !== 'cautioned' && fact.type !== 'cartridge' && job === first.job) ?? first;
  return {
    ok: true,
    // An entry about several jobs, such as a lamp taken from another one, is taken back in each of their books.
    facts: [...new Set(last.facts.map(({ job }) => job))].map((job) => ({ job, happenedAt: situation.now, fact: { type: 'undone', entry: last.entry } })),
    about: null,
    notes: [{ note: 'undone', what: main }],
  };
}

interface Entry {
  readonly entry: EntryNo;
  readonly facts: readonly FactRecord[];
}

/** Told anew on another job, it counts there, and only the move as a whole can be taken back. */
function wentAlong({ entry, facts }: Entry, { book }: Situation): Refusal | null {
  for (const { job, fact } of facts) {
    const live = job === null ? [] : book.job(job)?.live ?? [];
    for (const { entry: later, fact: away, happenedAt, by } of live) {
      if (away.type === 'moved-away' && later > entry && isAbout(fact, away.cure)) return { code: 'went-along', job: away.toJob, at: happenedAt, by };
    }
  }
  return null;
}

const isAbout = (fact: Fact, cure: CureRef): boolean => ('cure' in fact && sameCure(fact.cure, cure)) || ('joint' in fact && fact.joint === cure.joint);

/** What the bot wrote by itself. */
const isClerks = ({ type }: Fact): boolean => type === 'reminder-raised' || type === 'bell' || type === 'adoption-asked';
