import { openJobsIn, outlooksOf } from './book.js';
import type { CommandKind, EntryCommand } from './commands.js';
import { walkOf } from './course-for.js';
import type { Situation } from './decision.js';
import type { JobNo } from './ids.js';
import { jobHoldOf } from './job-hold.js';
import type { Job } from './job.js';
import { mayEnter, WHO_MAY } from './may-enter.js';
import { depthMissing, heatAt, heldBead, holdOf, isOver, needsReading, stateOf, undecidedLimit, type Outlook } from './outlook.js';

/** What helps this person now: about the job touched last, most pressing first. */
export interface HelpNow {
  /** Null: they have not touched any open job. */
  readonly job: JobNo | null;
  readonly kinds: readonly CommandKind[];
  /** Whatever else they may say. */
  readonly others: readonly CommandKind[];
}

/** What everybody needs every day, whatever the job stands at. */
const EVERY_DAY: readonly CommandKind[] = ['who-waits', 'when', 'cure', 'paste', 'what-if', 'latest-start', 'why', 'lamps', 'air', 'undo'];

/** `most`: as many as the answer has room for; `all`: every command there is, in the order of a working day. */
export function helpNow(situation: Situation, all: readonly CommandKind[], most: number): HelpNow {
  const job = lastTouched(situation);
  const fitting = job === null ? [] : fittingNow(job, situation);
  const may = all.filter((kind) => maySay(kind, situation));
  const first = [...new Set([...fitting, ...EVERY_DAY])].filter((kind) => may.includes(kind)).slice(0, most);
  return { job: job?.no ?? null, kinds: first, others: may.filter((kind) => !first.includes(kind) && kind !== 'help') };
}

const isEntry = (kind: CommandKind): kind is EntryCommand['kind'] => kind in WHO_MAY;

const maySay = (kind: CommandKind, situation: Situation): boolean => !isEntry(kind) || mayEnter({ kind }, situation) === null;

/** The thread's job, else the open one in which this person entered something last. */
function lastTouched({ book, by, thread }: Situation): Job | null {
  const own = thread === null ? null : book.job(thread);
  if (own !== null) return own;
  const touched = openJobsIn(book).map((job) => ({ job, entry: Math.max(0, ...job.all.filter((record) => record.by === by).map(({ entry }) => entry)) }));
  return touched.filter(({ entry }) => entry > 0).sort((one, other) => other.entry - one.entry)[0]?.job ?? null;
}

function fittingNow(job: Job, situation: Situation): CommandKind[] {
  const running = outlooksOf(job, situation.shop, situation.book.air).filter((outlook) => !isOver(outlook));
  const steps: CommandKind[] = walkOf(job.no, situation) === null ? [] : ['next', 'done'];
  const held: CommandKind[] = jobHoldOf(job) !== null || running.some((outlook) => isHeld(outlook)) ? ['release', 'override'] : [];
  return [...held, ...running.flatMap((outlook) => fittingCure(outlook, situation)), ...steps];
}

const isHeld = (outlook: Outlook): boolean => undecidedLimit(outlook) !== null || heldBead(outlook) !== null || outlook.milestones.some((one) => holdOf(outlook, one) !== null);

function fittingCure(outlook: Outlook, { now }: Situation): CommandKind[] {
  if (outlook.cure.closed === null) return ['closed', 'scrap'];
  const due: CommandKind[] = outlook.milestones.some((one) => stateOf(outlook, one, now) === 'due') ? ['check', 'later'] : [];
  const lit: CommandKind[] = heatAt(outlook, now).lamp === 'on' ? ['read', 'lamp', 'off', 'stay'] : ['lamp', ...(needsReading(outlook.cure) ? ['read' as const] : [])];
  return [...due, ...(depthMissing(outlook) ? ['depth' as const] : []), ...lit];
}
