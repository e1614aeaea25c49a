import { part } from './element.js';
import type { Phrases } from './phrases.js';
import { Remembered } from './remembered.js';

const OTHER = '\u0000other';
const NAME = /^[\p{L}\p{M}\p{N} ._-]{1,40}$/u;

/** Who is writing: one of the shop's people or any other name, kept by this browser. */
export class Writer {
  readonly #select = part('writer', HTMLSelectElement);
  readonly #other = part('other', HTMLInputElement);
  readonly #kept = new Remembered('cureclerk.writer', 'localStorage');
  #people: readonly { readonly id: string; readonly name: string }[] = [];

  constructor(
    readonly phrases: Phrases,
    readonly changed: () => void,
  ) {
    this.#select.addEventListener('change', () => { this.#chosen(); });
    this.#other.addEventListener('change', () => { this.#typed(); });
    this.#other.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      this.#typed();
    });
  }

  get name(): string | null {
    return this.#kept.get();
  }

  /** The id that reminders to this writer carry; names that the shop does not list are their own id. */
  get id(): string | null {
    const name = this.name?.toLowerCase() ?? null;
    return this.#people.find((person) => person.name.toLowerCase() === name)?.id ?? name;
  }

  nameOf(id: string): string {
    return this.#people.find((person) => person.id === id)?.name ?? id;
  }

  people(people: readonly { readonly id: string; readonly name: string }[]): void {
    if (JSON.stringify(people) === JSON.stringify(this.#people) && this.#select.options.length > 0) return;
    this.#people = people;
    this.#fill();
  }

  /** The words of the list are others now. */
  reworded(): void {
    if (this.#select.options.length > 0) this.#fill();
  }

  /** Asks for the missing name. */
  insist(): void {
    (this.#other.hidden ? this.#select : this.#other).focus();
  }

  #fill(): void {
    const names = this.#people.map((person) => person.name);
    const kept = this.name;
    if (kept !== null && !names.includes(kept)) names.push(kept);
    const empty = kept === null ? [new Option(this.phrases.say('choose-name'), '')] : [];
    this.#select.replaceChildren(...empty, ...names.map((name) => new Option(name, name)), new Option(this.phrases.say('another-name'), OTHER));
    this.#select.value = kept ?? '';
  }

  #chosen(): void {
    const other = this.#select.value === OTHER;
    this.#other.hidden = !other;
    if (other) this.#other.focus();
    else this.#keep(this.#select.value);
  }

  #typed(): void {
    const name = this.#other.value.trim().normalize();
    const valid = NAME.test(name);
    this.#other.setCustomValidity(valid ? '' : this.phrases.say('name-rule'));
    if (!valid) {
      this.#other.reportValidity();
      return;
    }
    this.#other.hidden = true;
    this.#keep(name);
    this.#select.focus();
  }

  #keep(name: string): void {
    this.#kept.set(name);
    this.#fill();
    this.changed();
  }
}

