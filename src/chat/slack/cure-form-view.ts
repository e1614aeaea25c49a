import type { types } from '@slack/bolt';
import type { CureForm } from '../../clerk/desk.js';
import { sayForm } from '../../reply/catalogue/form.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import { clip } from './clip.js';
import { AIR, FORM_CALLBACK, WHEN_OFFERED } from './form-fields.js';
import type { Field } from './form-fields.js';

const MOST_OPTIONS = 100;
const OPTION_LIMIT = 75;

/** The form for a new cure in the reader's words, filled in with what this person entered last. `card` is the one chosen meanwhile. */
export function cureFormView(form: CureForm, reader: Reader, card: string | null = form.last.card): types.ModalView {
  const say = (key: Parameters<typeof sayForm>[1]): string => sayForm(reader, key);
  return {
    type: 'modal',
    callback_id: FORM_CALLBACK,
    title: plain(say('title')),
    submit: plain(say('submit')),
    close: plain(say('cancel')),
    blocks: [
      textField('job', say('job'), { placeholder: '501' }),
      textField('joint', say('joint'), { optional: true, placeholder: 'j1', hint: say('joint-hint') }),
      { ...choice('card', say('card'), cardOptions(form), card), dispatch_action: true },
      ...(needsDepth(form, card) ? [textField('depth', say('depth'), { placeholder: '3' })] : []),
      choice('heat', say('heat'), heatOptions(form, reader), heatOf(form)),
      textField('setting', say('setting'), { optional: true, placeholder: '35', initial: form.last.heat?.setting ?? null }),
      whenField(reader),
      textField('time', say('time'), { optional: true, placeholder: say('time-example') }),
    ],
  };
}

export const needsDepth = (form: CureForm, card: string | null): boolean => form.cards.some((one) => one.name === card && one.needsDepth);

interface TextChoice {
  readonly placeholder: string;
  readonly optional?: boolean;
  readonly hint?: string;
  readonly initial?: string | null;
}

function textField(field: Field, label: string, { placeholder, optional, hint, initial }: TextChoice): types.InputBlock {
  return {
    type: 'input',
    block_id: field,
    label: plain(label),
    optional: optional ?? false,
    element: { type: 'plain_text_input', action_id: field, placeholder: plain(placeholder), ...(initial == null ? {} : { initial_value: initial }) },
    ...(hint === undefined ? {} : { hint: plain(hint) }),
  };
}

function choice(field: Field, label: string, options: types.PlainTextOption[], chosen: string | null): types.InputBlock {
  const initial = options.find((option) => option.value === chosen);
  return {
    type: 'input',
    block_id: field,
    label: plain(label),
    optional: false,
    element: { type: 'static_select', action_id: field, options, ...(initial === undefined ? {} : { initial_option: initial }) },
  };
}

function whenField(reader: Reader): types.InputBlock {
  const options = WHEN_OFFERED.map((minutes) => option(minutes === 0 ? sayForm(reader, 'now') : sayForm(reader, 'ago', { minutes: `${minutes}` }), String(minutes)));
  const [now] = options;
  return { type: 'input', block_id: 'when', label: plain(sayForm(reader, 'when')), optional: false, element: { type: 'radio_buttons', action_id: 'when', options, ...(now === undefined ? {} : { initial_option: now }) } };
}

const cardOptions = ({ cards }: CureForm): types.PlainTextOption[] => cards.slice(0, MOST_OPTIONS).map(({ name, title }) => option(title === '' ? name : `${name}: ${title}`, name));

/** A heater without a name comes last: for a shop that names none, or one that is not on the list. */
function heatOptions({ lamps, pads }: CureForm, reader: Reader): types.PlainTextOption[] {
  const named = [
    ...lamps.map((name) => option(sayForm(reader, 'lamp-named', { name }), `lamp ${name}`)),
    ...pads.map((name) => option(sayForm(reader, 'pad-named', { name }), `pad ${name}`)),
  ];
  const unnamed = (['lamp', 'pad'] as const).map((heater) => option(sayForm(reader, heater), heater));
  return [option(sayForm(reader, 'air-only'), AIR), ...[...named, ...unnamed].slice(0, MOST_OPTIONS - 1)];
}

/** The heater of last time, by name where it still is one of the shop's. */
function heatOf({ last: { heat }, lamps, pads }: CureForm): string {
  if (heat === null) return AIR;
  const { heater, name } = heat;
  return name !== null && (heater === 'lamp' ? lamps : pads).includes(name) ? `${heater} ${name}` : heater;
}

const plain = (text: string): types.PlainTextElement => ({ type: 'plain_text', text, emoji: false });

const option = (text: string, value: string): types.PlainTextOption => ({ text: plain(clip(text, OPTION_LIMIT)), value: clip(value, OPTION_LIMIT) });
