import { z } from 'zod';
import { MILESTONE_KINDS, type MilestoneKind } from '../cure/card.js';
import { expects } from '../cure/closed-object.js';
import { JOINT_PATTERN, jointNo, stepId, type JointNo } from './ids.js';
import type { DoneBy } from './procedure.js';

const NAME = /^[a-z][a-z0-9-]*$/;
const LONGEST_NAME = 24;
const LONGEST_ACT = 120;
const LONGEST_TAP = 60;
const NOT_EMPTY = { error: 'must not be empty' };

/** What people type for a procedure or a step: `dry-fit`, and nothing that reads like a joint (`j1`). */
const nameField = z
  .string({ error: expects('a short name such as dry-fit') })
  .regex(NAME, { error: 'must begin with a small letter and hold small letters, digits and hyphens only, such as dry-fit' })
  .max(LONGEST_NAME, { error: `must have at most ${LONGEST_NAME} characters: people type it with gloves on` })
  .refine((name) => !JOINT_PATTERN.test(name), { error: 'reads like the number of a joint (j1, j2): choose another name' });

export const procedureNameField = nameField;
export const stepNameField = nameField.transform(stepId);

export const jointField = z
  .string({ error: expects('a joint such as j1') })
  .regex(JOINT_PATTERN, { error: 'must be a joint such as j1' })
  .transform(jointNo);

const oneLine = (what: string, longest: number) =>
  z
    .string({ error: expects(what) })
    .trim()
    .min(1, NOT_EMPTY)
    .max(longest, { error: `must have at most ${longest} characters: it is read on a phone` })
    .refine((text) => !text.includes('\n'), { error: 'must stand on one line' });

export const actField = oneLine('what to do, in one line', LONGEST_ACT);
export const tapsField = listOf(oneLine('what somebody has to tap, in one line', LONGEST_TAP), '[both components flow]');

/** One of a few words; the issue carries them, and the one that was typed (`params.known`, `params.typed`). */
export function wordField<const Word extends string>(known: readonly Word[], what: string) {
  return z.string({ error: expects(`one of ${known.join(', ')}`) }).transform((typed, context): Word => {
    const found = known.find((word) => word === typed);
    if (found !== undefined) return found;
    context.addIssue({ code: 'custom', message: `${typed} is no ${what}`, params: { known: [...known], typed } });
    return z.NEVER;
  });
}

export function listOf<Item extends z.ZodType>(item: Item, example: string) {
  return z.array(item, { error: expects(`a list such as ${example}`) });
}

const milestoneField = wordField(MILESTONE_KINDS, 'milestone');

/** A milestone of one joint, confirmed by a person: `j1 handling`. */
export interface Confirmed {
  readonly joint: JointNo;
  readonly milestone: MilestoneKind;
}

const oneConfirmed = z
  .string({ error: expects('a joint and its milestone such as j1 handling') })
  .transform((text, context): Confirmed => {
    const [joint = '', milestone = '', ...more] = text.trim().split(/\s+/);
    const kind = milestoneField.safeParse(milestone);
    if (JOINT_PATTERN.test(joint) && kind.success && more.length === 0) return { joint: jointNo(joint), milestone: kind.data };
    const mistyped = JOINT_PATTERN.test(joint) && milestone !== '' && more.length === 0;
    if (mistyped) context.addIssue({ code: 'custom', message: `${milestone} is no milestone`, params: { known: [...MILESTONE_KINDS], typed: milestone } });
    else context.addIssue({ code: 'custom', message: 'must be a joint and its milestone such as j1 handling' });
    return z.NEVER;
  });

/** One, or a list where several have to be confirmed. */
export const confirmedField = z.unknown().transform((value, context): readonly Confirmed[] => {
  const list = z.array(oneConfirmed).safeParse(Array.isArray(value) ? value : [value]);
  if (list.success) return list.data;
  for (const issue of list.error.issues) {
    const path = Array.isArray(value) ? issue.path : [];
    context.addIssue(issue.code === 'custom' ? { code: 'custom', path, message: issue.message, params: issue.params } : { code: 'custom', path, message: issue.message });
  }
  return z.NEVER;
});

const ENTRIES: ReadonlyMap<string, DoneBy> = new Map([
  ['paste', { by: 'entry', entry: 'pasted' }],
  ['closed', { by: 'entry', entry: 'closed' }],
  ['lamp', { by: 'entry', entry: 'lamp-set' }],
]);
const DONE_WORDS = 'paste, closed, lamp or a check such as check handling; leave it out where somebody says that it is done';

export const doneField = z.string({ error: expects(DONE_WORDS) }).transform((text, context): DoneBy => {
  const [word = '', milestone = '', ...more] = text.trim().split(/\s+/);
  const entry = ENTRIES.get(text.trim());
  if (entry !== undefined) return entry;
  const kind = milestoneField.safeParse(milestone);
  if (word === 'check' && kind.success && more.length === 0) return { by: 'check', milestone: kind.data };
  if (word === 'check' && milestone !== '') context.addIssue({ code: 'custom', message: `${milestone} is no milestone`, params: { known: [...MILESTONE_KINDS], typed: milestone } });
  else context.addIssue({ code: 'custom', message: `must be ${DONE_WORDS}` });
  return z.NEVER;
});
