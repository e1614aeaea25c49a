import { ask, type Outcome } from './ask.js';
import { part } from './element.js';
import type { Phrases } from './phrases.js';
import { isFields, readReplyBody, type ReplyNote } from './read.js';
import { UnsentLine, type Unsent } from './unsent.js';
import type { Writer } from './writer.js';

export interface SayEars {
  said(message: Unsent, reply: ReplyNote): void;
  unreachable(): void;
  /** The shop's time as the page shows it. */
  time(): string;
}

const readKnown = (value: unknown): boolean => isFields(value) && value['known'] === true;

/** The line at the foot of the page. What was typed stays in it until the clerk has answered. */
export class SayForm {
  readonly #line = part('line', HTMLInputElement);
  readonly #send = part('send', HTMLButtonElement);
  readonly #notice = part('notice', HTMLElement);
  readonly #unsent = new UnsentLine();
  #busy = false;

  constructor(
    readonly writer: Writer,
    readonly phrases: Phrases,
    readonly ears: SayEars,
  ) {
    part('say', HTMLFormElement).addEventListener('submit', (event) => {
      event.preventDefault();
      void this.#submit();
    });
    const before = this.#unsent.get();
    if (before === null) return;
    this.#line.value = before.text;
    this.#showUnsent(this.phrases.say('maybe-arrived'));
  }

  /** Writes a line as if it had been typed, and sends it. */
  fill(line: string): void {
    if (this.#busy) return;
    this.#line.value = line;
    void this.#submit();
  }

  /** Writes the front of a line; whoever pressed for it writes the rest and sends it. */
  begin(front: string, hint: string): void {
    if (this.#busy) return;
    this.#line.value = front;
    this.#line.focus();
    this.#line.setSelectionRange(front.length, front.length);
    this.tell(hint);
  }

  tell(words: string): void {
    this.#notice.textContent = words;
  }

  askForName(): void {
    this.tell(this.phrases.say('name-first'));
    this.writer.insist();
  }

  async #submit(): Promise<void> {
    const text = this.#line.value.trim();
    const from = this.writer.name;
    if (this.#busy || text === '') return;
    if (from === null) {
      this.askForName();
      return;
    }
    this.#hold(true);
    if (await this.#mayBegin(from, text)) await this.#post(this.#unsent.of(from, text));
    this.#hold(false);
  }

  /** A changed line is a new message; first it must be known that the old one did not arrive after all. */
  async #mayBegin(from: string, text: string): Promise<boolean> {
    const before = this.#unsent.get();
    if (before === null || (before.text === text && before.from === from)) return true;
    const known = await ask(`/api/messages/${before.key}`, readKnown);
    if (known.kind === 'unreachable') this.#lost();
    if (known.kind !== 'done') return false;
    if (!known.value) return true;
    const outcome = await this.#ask(before);
    if (outcome.kind !== 'done') return false;
    this.#unsent.clear();
    this.ears.said(before, outcome.value);
    this.#showSent(this.phrases.say('had-arrived'));
    return false;
  }

  async #post(message: Unsent): Promise<void> {
    const outcome = await this.#ask(message);
    if (outcome.kind === 'unreachable') {
      this.#lost();
      return;
    }
    this.#unsent.clear();
    this.#showSent(outcome.kind === 'refused' ? outcome.detail ?? this.phrases.say('was-refused') : '');
    if (outcome.kind === 'refused') return;
    this.#line.value = '';
    this.ears.said(message, outcome.value);
  }

  #ask(message: Unsent): Promise<Outcome<ReplyNote>> {
    return ask('/api/messages', readReplyBody, { body: { from: message.from, text: message.text }, key: message.key });
  }

  #lost(): void {
    this.#showUnsent(this.phrases.say('not-sent', { time: this.ears.time() }));
    this.ears.unreachable();
  }

  #showUnsent(words: string): void {
    this.tell(words);
    this.phrases.put(this.#send, 'send-again');
  }

  #showSent(words: string): void {
    this.tell(words);
    this.phrases.put(this.#send, 'send');
  }

  #hold(busy: boolean): void {
    this.#busy = busy;
    this.#line.readOnly = busy;
    this.#send.setAttribute('aria-disabled', String(busy));
  }
}
