import type { webApi } from '@slack/bolt';
import type { Desk, Fault, Reply } from '../../clerk/desk.js';
import { messageId } from '../../clerk/message.js';
import type { Message, Speaker } from '../../clerk/message.js';
import type { Log } from '../../outbox/log.js';
import type { PersonId } from '../../repair/ids.js';
import { sayForm } from '../../reply/catalogue/form.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import { toText } from '../../reply/to-text.js';
import { clip } from './clip.js';
import { cureFormView, needsDepth } from './cure-form-view.js';
import type { Field, FieldErrors, FormValues } from './form-fields.js';
import { formLine } from './form-line.js';
import type { FormSubmitted, FormTouched, FormWanted } from './incoming-view.js';

export interface FormPorts {
  readonly desk: Pick<Desk, 'say' | 'knows' | 'understands' | 'cureForm'>;
  /** With a short time limit: a form can be opened for three seconds only. */
  readonly client: webApi.WebClient;
  /** Who this is, without asking anybody. */
  readonly personOf: (chatId: string) => PersonId;
  /** In which language somebody reads. */
  readonly readerOf: (chatId: string) => Reader;
  /** Who speaks; may ask the platform for a name, for two seconds at most. */
  readonly speaker: (chatId: string, handle: string | null) => Promise<Speaker>;
  /** Tells somebody in their direct messages; never rejects. */
  readonly tell: (user: string, text: string) => Promise<void>;
  readonly log: Log;
}

const ERROR_LIMIT = 400;

/** Where a refusal is shown; everything else stands at the job. */
const FIELD_OF: Readonly<Partial<Record<Fault, Field>>> = {
  'already-running': 'joint',
  'second-cure': 'joint',
  'which-joint': 'joint',
  'which-card': 'card',
  'unknown-lamp': 'heat',
  'lamp-elsewhere': 'heat',
  'which-lamp': 'heat',
  'which-unit': 'setting',
  'over-lamp-maximum': 'setting',
  'lamp-too-cold': 'setting',
  'check-first': 'setting',
  'odd-depth': 'depth',
  'no-depth': 'depth',
  future: 'time',
  'long-ago': 'time',
  'before-step': 'time',
  'lamp-not-on-then': 'time',
};

/** The form for a new cure: a way of typing one line, which goes to the desk like any other. */
export class CureForms {
  readonly #ports: FormPorts;

  constructor(ports: FormPorts) {
    this.#ports = ports;
  }

  /** Opens the form; never rejects. */
  async open({ triggerId, user }: FormWanted): Promise<void> {
    const { desk, client, personOf, readerOf, tell, log } = this.#ports;
    try {
      await client.views.open({ trigger_id: triggerId, view: cureFormView(desk.cureForm(personOf(user)), readerOf(user)) });
    } catch (error) {
      log.warn({ error }, 'The form for a new cure could not be opened.');
      await tell(user, sayForm(readerOf(user), 'not-opened'));
    }
  }

  /** Another card was chosen: the depth is asked for where the card needs it. Never rejects. */
  async touched({ user, viewId, hash, values }: FormTouched): Promise<void> {
    const { desk, client, personOf, readerOf, log } = this.#ports;
    try {
      const form = desk.cureForm(personOf(user));
      await client.views.update({ view_id: viewId, hash, view: cureFormView(form, readerOf(user), values.card) });
    } catch (error) {
      log.warn({ error }, 'The form for a new cure could not be changed.');
    }
  }

  /** Puts the line to the desk. Null when it is stored (now or before); otherwise what stands under which field. Never rejects. */
  async submit(submitted: FormSubmitted): Promise<FieldErrors | null> {
    const { desk, personOf, readerOf, log } = this.#ports;
    const { user, values } = submitted;
    const reader = readerOf(user);
    try {
      if (values.depth === null && needsDepth(desk.cureForm(personOf(user)), values.card)) return shown(values, 'depth', sayForm(reader, 'how-deep', { job: values.job ?? '501', card: values.card ?? '' }));
      const written = formLine(values, reader);
      if (!written.ok) return written.errors;
      const message = await this.#message(submitted, written.line);
      const reply = desk.say(message);
      return desk.knows(message.id) ? null : this.#errors(reply, values, reader);
    } catch (error) {
      log.error({ error }, 'A form could not be handled; nothing was written down.');
      return { job: sayForm(reader, 'not-written') };
    }
  }

  /** The same form sent off twice with the same words is the same message; a corrected one is another. */
  async #message({ user, userName, viewId }: FormSubmitted, text: string): Promise<Message> {
    const from = await this.#ports.speaker(user, userName);
    return { id: messageId(`slack:form:${viewId}:${text}`), from, text, thread: null, returnPath: { chat: 'slack-direct', user, from: 'form' } };
  }

  #errors({ answer, fault }: Reply, values: FormValues, reader: Reader): FieldErrors {
    const ways = answer.buttons.map(({ label, line }) => `${label}: ${line}`);
    const said = toText({ ...answer, lines: answer.lines.slice(0, 2) }).replaceAll('\n', ' ');
    const text = ways.length === 0 ? said : sayForm(reader, 'or-type', { said, ways: ways.join('; ') });
    return shown(values, fault === 'misread' ? this.#unreadable(values) : (fault === undefined ? undefined : FIELD_OF[fault]) ?? 'job', text);
  }

  /** The field whose words cannot be read by themselves. */
  #unreadable({ job, setting, depth, time }: FormValues): Field {
    const { desk } = this.#ports;
    if (job === null || !desk.understands(`when ${job}`)) return 'job';
    if (time !== null && !desk.understands(`closed ${job} ${time}`)) return 'time';
    if (setting !== null && !desk.understands(`lamp ${job} ${setting}`)) return 'setting';
    return depth !== null && !desk.understands(`depth ${job} ${depth} mm`) ? 'depth' : 'job';
  }
}

/** The platform takes errors only for fields that stand in the form. */
function shown(values: FormValues, field: Field, text: string): FieldErrors {
  const stands = field !== 'depth' || values.depth !== null;
  return { [stands ? field : 'card']: clip(text, ERROR_LIMIT) };
}
