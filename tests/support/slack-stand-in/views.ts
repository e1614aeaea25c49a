import { readHome, readModal } from './check-view.js';
import type { HomeView, ModalView } from './check-view.js';

type Args = Readonly<Record<string, string>>;
type ApiAnswer = Readonly<Record<string, unknown>>;

/** A form as it stands on somebody's screen. */
export interface OpenView {
  readonly id: string;
  readonly hash: string;
  readonly view: ModalView;
}

const TRIGGER_MS = 3_000;
const no = (error: string): ApiAnswer => ({ ok: false, error });
const parsed = (text: string | undefined): unknown => JSON.parse(text ?? 'null');

/** Forms and home tabs of the stand-in. A trigger opens one view, within three seconds of its making. */
export class Views {
  /** Every form that was opened, by its id, as it stands now. */
  readonly forms = new Map<string, OpenView>();
  /** Home tabs by person, every publication in order. */
  readonly homes = new Map<string, HomeView[]>();
  readonly #used = new Set<string>();
  #count = 0;

  answer(method: string, args: Args): ApiAnswer | null {
    switch (method) {
      case 'views.open':
        return this.#open(args);
      case 'views.update':
        return this.#update(args);
      case 'views.publish':
        return this.#publish(args);
      default:
        return null;
    }
  }

  /** The newest form. */
  get newest(): OpenView | null {
    return [...this.forms.values()].at(-1) ?? null;
  }

  homeOf(user: string): HomeView | null {
    return this.homes.get(user)?.at(-1) ?? null;
  }

  #open(args: Args): ApiAnswer {
    const trigger = args['trigger_id'] ?? '';
    const made = Number(/^trigger-(\d+)-/.exec(trigger)?.[1] ?? '0');
    if (this.#used.has(trigger)) return no('exchanged_trigger_id');
    if (Date.now() - made > TRIGGER_MS) return no('expired_trigger_id');
    this.#used.add(trigger);
    const view = readModal(parsed(args['view']));
    if (view === null) return no('invalid_arguments');
    return this.#keep(`V${(this.#count += 1)}`, view);
  }

  #update(args: Args): ApiAnswer {
    const before = this.forms.get(args['view_id'] ?? '');
    if (before === undefined) return no('not_found');
    if (args['hash'] !== undefined && args['hash'] !== before.hash) return no('hash_conflict');
    const view = readModal(parsed(args['view']));
    return view === null ? no('invalid_arguments') : this.#keep(before.id, view);
  }

  #keep(id: string, view: ModalView): ApiAnswer {
    const hash = `${(this.#count += 1)}.hash`;
    this.forms.set(id, { id, hash, view });
    return { ok: true, view: { ...view, id, hash } };
  }

  #publish(args: Args): ApiAnswer {
    const view = readHome(parsed(args['view']));
    if (view === null) return no('invalid_arguments');
    const user = args['user_id'] ?? '';
    this.homes.set(user, [...(this.homes.get(user) ?? []), view]);
    return { ok: true, view: { ...view, id: `H${user}`, hash: `${(this.#count += 1)}.hash` } };
  }
}
