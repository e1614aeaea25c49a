import type { InputBlock } from './check-view.js';
import { newTrigger } from './payloads.js';
import type { OpenView } from './views.js';

type Fields = Readonly<Record<string, string | null>>;

/** Who does something in a view. */
export interface ViewPerson {
  readonly user: string;
  readonly userName?: string;
}

const TEAM = { id: 'T0SHOP', domain: 'shop' };
const person = ({ user, userName }: ViewPerson) => ({ id: user, username: userName ?? 'anna', name: userName ?? 'anna', team_id: TEAM.id });
let presses = 0;
const actionTs = (): string => `1700000100.${String((presses += 1)).padStart(6, '0')}`;

/** Somebody chose a global shortcut. */
export const shortcutPayload = (who: ViewPerson, callbackId = 'start-cure', triggerId = newTrigger()): Record<string, unknown> => ({
  type: 'shortcut', token: 'unused', action_ts: actionTs(), team: TEAM, user: person(who), is_enterprise_install: false, enterprise: null, callback_id: callbackId, trigger_id: triggerId,
});

/** The form was sent off with these fields changed; what stands in it untouched goes along, as on the platform. */
export const submissionPayload = (who: ViewPerson, open: OpenView, fields: Fields): Record<string, unknown> => ({
  type: 'view_submission', team: TEAM, user: person(who), api_app_id: 'A0CLERK', token: 'unused', trigger_id: newTrigger(), response_urls: [], is_enterprise_install: false, enterprise: null,
  view: viewOf(open, fields),
});

/** A choice in the form, in a field that tells at once. */
export function choicePayload(who: ViewPerson, open: OpenView, field: string, value: string): Record<string, unknown> {
  const block = open.view.blocks.find((one) => one.block_id === field);
  if (block?.dispatch_action !== true) throw new Error(`The platform says nothing when ${field} is chosen.`);
  return {
    type: 'block_actions', team: TEAM, user: person(who), api_app_id: 'A0CLERK', token: 'unused', trigger_id: newTrigger(), container: { type: 'view', view_id: open.id }, is_enterprise_install: false, enterprise: null,
    view: viewOf(open, { [field]: value }),
    actions: [{ type: block.element.type, action_id: block.element.action_id, block_id: field, selected_option: optionOf(block, value), action_ts: actionTs() }],
  };
}

/** Somebody opened the app's home tab. */
export const homeOpenedPayload = (user: string, tab: 'home' | 'messages' = 'home'): Record<string, unknown> => ({
  type: 'event_callback', team_id: TEAM.id, api_app_id: 'A0CLERK', event_id: `EvHome${actionTs()}`, event_time: 1_700_000_000, authorizations: [{ team_id: TEAM.id, user_id: 'U0BOT', is_bot: true }],
  event: { type: 'app_home_opened', user, channel: `D${user.slice(1)}`, tab, event_ts: actionTs() },
});

/** A button on somebody's home tab. */
export const homePressPayload = (who: ViewPerson, line: string): Record<string, unknown> => ({
  type: 'block_actions', team: TEAM, user: person(who), api_app_id: 'A0CLERK', token: 'unused', trigger_id: newTrigger(), container: { type: 'view', view_id: `H${who.user}` }, is_enterprise_install: false, enterprise: null,
  view: { id: `H${who.user}`, team_id: TEAM.id, type: 'home', callback_id: '', hash: '1.hash', private_metadata: '', state: { values: {} }, blocks: [] },
  actions: [{ type: 'button', action_id: 'press-0', block_id: 'b1', value: line, action_ts: actionTs() }],
});

function viewOf({ id, hash, view }: OpenView, fields: Fields): Record<string, unknown> {
  const unknown = Object.keys(fields).filter((field) => !view.blocks.some((block) => block.block_id === field));
  if (unknown.length > 0) throw new Error(`The form has no field ${unknown.join(', ')}.`);
  const values = Object.fromEntries(view.blocks.map((block) => [block.block_id, { [block.element.action_id]: stateOf(block, fields) }]));
  return { ...view, id, hash, team_id: TEAM.id, private_metadata: view.private_metadata ?? '', state: { values }, root_view_id: id, previous_view_id: null, app_id: 'A0CLERK', external_id: '', bot_id: 'B0BOT' };
}

function stateOf(block: InputBlock, fields: Fields): Record<string, unknown> {
  const { element } = block;
  const typed = fields[block.block_id];
  if (element.type === 'plain_text_input') return { type: element.type, value: typed === undefined ? (element.initial_value ?? null) : typed };
  const chosen = typed == null ? (element.initial_option ?? null) : optionOf(block, typed);
  if (chosen === null && block.optional !== true) throw new Error(`The platform does not send the form: nothing is chosen in ${block.block_id}.`);
  return { type: element.type, selected_option: chosen };
}

function optionOf({ block_id, element }: InputBlock, value: string): unknown {
  const found = element.type === 'plain_text_input' ? undefined : element.options.find((option) => option.value === value);
  if (found === undefined) throw new Error(`No option ${value} in ${block_id}.`);
  return found;
}
