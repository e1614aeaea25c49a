/** Names and numbers people use, branded so that a job is never taken for a joint or a person. */

declare const id: unique symbol;

export type JobNo = string & { readonly [id]: 'job' };
export type JointNo = string & { readonly [id]: 'joint' };
export type PersonId = string & { readonly [id]: 'person' };
/** A step of a procedure, `dry-fit`. */
export type StepId = string & { readonly [id]: 'step' };
export type LampName = string & { readonly [id]: 'lamp' };
/** Number of one entry in the book: everything that one message wrote. */
export type EntryNo = number & { readonly [id]: 'entry' };

export const jobNo = (text: string): JobNo => text as JobNo;
export const jointNo = (text: string): JointNo => text as JointNo;
export const stepId = (text: string): StepId => text.toLowerCase() as StepId;
export const personId = (text: string): PersonId => text.toLowerCase() as PersonId;
export const lampName = (text: string): LampName => text.toUpperCase() as LampName;
export const entryNo = (value: number): EntryNo => value as EntryNo;

export const FIRST_JOINT = jointNo('j1');

/** A job number: one to seven digits, as written on the repair order. */
export const JOB_PATTERN = /^\d{1,7}$/;
/** A joint of a job: `j1`, `j2`, … */
export const JOINT_PATTERN = /^j[1-9]\d?$/;
