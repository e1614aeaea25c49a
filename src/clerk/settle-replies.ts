import type { Instant } from '../cure/units.js';
import { minutesBetween } from '../cure/units.js';
import type { Command, EntryCommand } from '../repair/commands.js';
import type { NewFact } from '../repair/decision.js';
import type { JobNo, PersonId } from '../repair/ids.js';
import { composeAnswered, type Ending } from '../reply/compose/answered.js';
import { settingFor } from '../reply/compose/setting-for.js';
import type { DeskState } from './desk-ports.js';
import type { DeliveryTarget, Message } from './message.js';
import type { AskedReply, BookTransaction } from './ports.js';
import { readAtDesk } from './read-at-desk.js';

/** What somebody has just entered, with the line it came from. */
export interface Done {
  readonly line: string;
  readonly command: EntryCommand;
  readonly facts: readonly NewFact[];
  readonly by: PersonId;
  readonly now: Instant;
}

/** So many of one job's answers are looked at. */
const LOOKED_AT = 50;
/** For so long other words for the same deed count as an answer; afterwards only the very line of a button does. */
const SAME_DEED_MINUTES = 24 * 60;
/** Deeds that are the same in other words; where a figure is part of the deed, another figure is another deed. */
const SAME_IN_OTHER_WORDS: ReadonlySet<Command['kind']> = new Set(['check', 'closed', 'moved', 'on', 'off', 'stay', 'release', 'scrap']);

/** What an answer offered and somebody has done, by a press or a typed line alike: the answer is edited, in the caller's transaction. */
export function settleReplies(tx: BookTransaction, desk: DeskState, done: Done): void {
  const { shop } = desk;
  const { facts, by, now } = done;
  for (const job of new Set<JobNo | null>([null, ...facts.map((fact) => fact.job)])) {
    for (const reply of tx.askedInReplies(job, LOOKED_AT)) {
      const met = metBy(tx, desk, reply, done);
      if (met === null) continue;
      tx.replySettled(reply.key);
      const ending: Ending = { end: met.kind === 'undo' ? 'undone' : 'done', by, said: met.kind === 'check' ? saidIn(facts) : null };
      tx.queue(desk.addressing.replied(reply, composeAnswered(reply.answer, ending, settingFor(reply.reader, { shop, now })), now));
    }
  }
}

/** Remembers an answer whose buttons shall go; one that only its reader sees can never be edited. */
export function rememberReply(tx: BookTransaction, { from }: Message, job: JobNo | null, deliveries: ReturnType<DeskState['addressing']['reply']>): void {
  for (const { key, target, answer, createdAt } of deliveries) if (answer.buttons.length > 0 && staysEditable(target)) tx.askInReply({ key, job, reader: from.id, at: createdAt, answer });
}

const staysEditable = ({ kind }: DeliveryTarget): boolean => kind === 'channel' || kind === 'job-thread' || kind === 'home-channel' || kind === 'direct';

/** The offered command that was done; null: none of them. */
function metBy(tx: BookTransaction, desk: DeskState, { at, answer: { buttons } }: AskedReply, { line, command, facts, now }: Done): Command | null {
  const fresh = minutesBetween(at, now) <= SAME_DEED_MINUTES;
  for (const { line: offered } of buttons) {
    const read = readAtDesk(tx, desk, offered, now);
    if (read.ok && (plainly(offered) === plainly(line) || isUndoing(read.command, facts) || (fresh && isSameDeed(read.command, command, facts)))) return read.command;
  }
  return null;
}

const plainly = (line: string): string => line.trim().toLowerCase().replaceAll(/\s+/g, ' ');

const isUndoing = (offered: Command, facts: readonly NewFact[]): boolean => offered.kind === 'undo' && facts.some(({ fact }) => fact.type === 'undone' && fact.entry === offered.entry);

/** The same kind of entry about the same job and joint: `soft 501` answers what offered Hard and Soft. */
function isSameDeed(offered: Command, done: EntryCommand, facts: readonly NewFact[]): boolean {
  if (!SAME_IN_OTHER_WORDS.has(done.kind) || offered.kind !== done.kind || !('joint' in offered) || offered.job === null) return false;
  const joints = facts.flatMap(({ job, fact }) => (job !== offered.job ? [] : 'cure' in fact ? [fact.cure.joint] : 'joint' in fact ? [fact.joint] : [null]));
  return joints.some((joint) => offered.joint === null || joint === null || joint === offered.joint);
}

const saidIn = (facts: readonly NewFact[]): Ending['said'] => facts.flatMap(({ fact }) => (fact.type === 'checked' ? [fact.result] : []))[0] ?? null;
