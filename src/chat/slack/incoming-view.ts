import { z } from 'zod';
import { FIELDS, FORM_CALLBACK } from './form-fields.js';
import type { FormValues } from './form-fields.js';
import { askedAt, REASON_CALLBACK, REASON_FIELD, type AskedAt } from './reason-view.js';

const id = z.string().min(1);
const user = z.object({ id, name: z.string().optional(), username: z.string().optional() });

const shortcutBody = z.object({ type: z.literal('shortcut'), callback_id: id, trigger_id: id, user });

const filledIn = z.record(z.string(), z.record(z.string(), z.object({ value: z.string().nullish(), selected_option: z.object({ value: z.string() }).nullish() })));
const modalView = z.object({ id, hash: z.string().default(''), callback_id: z.string(), private_metadata: z.string().default(''), state: z.object({ values: filledIn }) });

const submissionBody = z.object({ type: z.literal('view_submission'), user, view: modalView });
const choiceBody = z.object({ user, view: modalView });
const homePressBody = z.object({ user, view: z.object({ id }), actions: z.array(z.object({ action_ts: id, value: id })).min(1) });
const viewKind = z.object({ view: z.object({ type: z.string() }) });

/** Somebody wants the form for a new cure; `triggerId` opens one view, within three seconds. */
export interface FormWanted {
  readonly triggerId: string;
  readonly user: string;
}

/** Something was chosen in the open form; `viewId` and `hash` name it as it stands. */
export interface FormTouched {
  readonly user: string;
  readonly viewId: string;
  readonly hash: string;
  readonly values: FormValues;
}

export interface FormSubmitted {
  readonly user: string;
  readonly userName: string | null;
  readonly viewId: string;
  readonly values: FormValues;
}

/** Why, for the button that was pressed; null: nothing was written. */
export interface ReasonGiven {
  readonly user: string;
  readonly userName: string | null;
  readonly viewId: string;
  readonly asked: AskedAt;
  readonly reason: string | null;
}

/** A button on somebody's home tab; its value is the line. */
export interface HomePressed {
  readonly user: string;
  readonly userName: string | null;
  readonly viewId: string;
  readonly actionTs: string;
  readonly line: string;
}

export type IncomingView =
  | { readonly kind: 'form-wanted'; readonly wanted: FormWanted }
  | { readonly kind: 'form-touched'; readonly touched: FormTouched }
  | { readonly kind: 'form-submitted'; readonly submitted: FormSubmitted }
  | { readonly kind: 'reason-given'; readonly given: ReasonGiven }
  | { readonly kind: 'home-pressed'; readonly pressed: HomePressed }
  | { readonly kind: 'not-for-us'; readonly what: string }
  | { readonly kind: 'malformed'; readonly problem: string };

const malformed = (error: z.ZodError): IncomingView => ({ kind: 'malformed', problem: z.prettifyError(error) });

/** A global shortcut. */
export function readShortcut(body: unknown): IncomingView {
  const read = shortcutBody.safeParse(body);
  if (!read.success) return malformed(read.error);
  const { callback_id, trigger_id, user: who } = read.data;
  return callback_id === FORM_CALLBACK ? { kind: 'form-wanted', wanted: { triggerId: trigger_id, user: who.id } } : { kind: 'not-for-us', what: `shortcut ${callback_id}` };
}

/** A form that was sent off. */
export function readSubmission(body: unknown): IncomingView {
  const read = submissionBody.safeParse(body);
  if (!read.success) return malformed(read.error);
  const { user: who, view } = read.data;
  if (view.callback_id === REASON_CALLBACK) return reasonIn(read.data);
  if (view.callback_id !== FORM_CALLBACK) return { kind: 'not-for-us', what: `form ${view.callback_id}` };
  return { kind: 'form-submitted', submitted: { user: who.id, userName: who.name ?? who.username ?? null, viewId: view.id, values: valuesOf(view.state.values) } };
}

function reasonIn({ user: who, view }: z.infer<typeof submissionBody>): IncomingView {
  const asked = askedAt(view.private_metadata);
  if (asked === null) return { kind: 'malformed', problem: 'a reason for no button' };
  const reason = textIn(view.state.values, REASON_FIELD);
  return { kind: 'reason-given', given: { user: who.id, userName: who.name ?? who.username ?? null, viewId: view.id, asked, reason } };
}

/** Whether a press stands in a view (form or home tab) and not in a message. */
export const isInView = (body: Readonly<Record<string, unknown>>): boolean => viewKind.safeParse(body).success;

/** A press or a choice inside a view. */
export function readViewAction(body: unknown): IncomingView {
  const read = viewKind.safeParse(body);
  return read.success && read.data.view.type === 'home' ? readHomePress(body) : readChoice(body);
}

function readHomePress(body: unknown): IncomingView {
  const read = homePressBody.safeParse(body);
  if (!read.success) return malformed(read.error);
  const { user: who, view, actions } = read.data;
  const [action] = actions;
  if (action === undefined) return { kind: 'malformed', problem: 'a press without a button' };
  return { kind: 'home-pressed', pressed: { user: who.id, userName: who.name ?? who.username ?? null, viewId: view.id, actionTs: action.action_ts, line: action.value } };
}

function readChoice(body: unknown): IncomingView {
  const read = choiceBody.safeParse(body);
  if (!read.success) return malformed(read.error);
  const { user: who, view } = read.data;
  if (view.callback_id !== FORM_CALLBACK) return { kind: 'not-for-us', what: `form ${view.callback_id}` };
  return { kind: 'form-touched', touched: { user: who.id, viewId: view.id, hash: view.hash, values: valuesOf(view.state.values) } };
}

function valuesOf(state: z.infer<typeof filledIn>): FormValues {
  const [job, joint, card, depth, heat, setting, when, time] = FIELDS.map((field) => textIn(state, field));
  return { job: job ?? null, joint: joint ?? null, card: card ?? null, depth: depth ?? null, heat: heat ?? null, setting: setting ?? null, when: when ?? null, time: time ?? null };
}

/** On one line; null: nothing was written or chosen. */
function textIn(state: z.infer<typeof filledIn>, field: string): string | null {
  const filled = state[field]?.[field];
  const text = (filled?.selected_option?.value ?? filled?.value ?? '').replaceAll(/\s+/g, ' ').trim();
  return text === '' ? null : text;
}
