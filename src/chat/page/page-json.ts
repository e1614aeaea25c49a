import type { Post } from '../../clerk/message.js';
import type { Instant } from '../../cure/units.js';
import type { Answer } from '../../reply/answer.js';
import type { PersonId } from '../../repair/ids.js';
import { toText } from '../../reply/to-text.js';
import type { Desk, JobSheet, MilestoneSheet, WaitingCar } from '../../clerk/desk.js';

/** ISO 8601 in UTC with milliseconds. */
export const isoOf = (at: Instant): string => new Date(at).toISOString();
const isoOrNull = (at: Instant | null): string | null => (at === null ? null : isoOf(at));

interface ReplyJson {
  readonly id: string;
  readonly text: string;
  /** `asks`: the id is only the front of a line, to be typed on. */
  readonly buttons: readonly { readonly id: string; readonly label: string; readonly asks?: 'reason' }[];
}

/** A button's id is the line it stands for. */
export const replyJson = (id: string, answer: Answer): ReplyJson => ({
  id,
  text: toText(answer),
  buttons: answer.buttons.map(({ line, label, asks }) => ({ id: line, label, ...(asks === undefined ? {} : { asks }) })),
});

export const postJson = ({ seq, key, at, dueAt, to, about, answer }: Post): object => ({
  seq,
  at: isoOf(at),
  dueAt: isoOf(dueAt),
  to,
  about: { job: about.job, joint: about.joint, card: about.card, kind: about.kind },
  reply: replyJson(key, answer),
});

export const waitingJson = ({ job, joint, card, waitsFor, state, dueAt, owner, heat }: WaitingCar): object => ({
  job,
  joint,
  card,
  waitsFor,
  state,
  dueAt: isoOrNull(dueAt),
  owner,
  heat,
});

export const jobJson = (sheet: JobSheet): object => ({
  job: sheet.job,
  cures: sheet.cures.map(({ joint, card, milestones }) => ({ joint, card, milestones: milestones.map(milestoneJson) })),
});

const milestoneJson = ({ kind, dueAt, state, share }: MilestoneSheet): object => ({ kind, dueAt: isoOrNull(dueAt), state, share });

/** The waiting cars with the share of the wait that the page draws; null where there is none to draw. */
export const boardJson = (desk: Desk, reader?: PersonId): object[] => desk.waiting(reader).map((car) => ({ ...waitingJson(car), share: shareOf(desk, car) }));

function shareOf(desk: Desk, car: WaitingCar): number | null {
  const cure = desk.jobSheet(car.job)?.cures.find((one) => one.joint === car.joint && one.card === car.card);
  const open = cure?.milestones.filter((one) => one.kind !== 'open-limit' && one.state !== 'confirmed') ?? [];
  const waited = cure?.milestones.find((one) => one.kind === car.waitsFor) ?? (car.waitsFor === 'decision' ? open[0] : undefined);
  return waited?.share ?? null;
}
