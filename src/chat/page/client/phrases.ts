import { isFields } from './read.js';
import { Remembered } from './remembered.js';

export type Values = Readonly<Record<string, string | number>>;

/** What may have to be said before the server has answered for the first time; everything else comes from there. */
export const BEFORE_THE_FIRST_ANSWER: Readonly<Record<string, string>> = {
  send: 'send',
  'send-again': 'send again',
  'name-first': 'Who writes? Choose a name first.',
  'maybe-arrived': 'It is not known whether this line arrived. Send again: it is entered only once.',
  'not-sent': 'Not sent at {time}. Send again: it is entered only once.',
  'no-connection': 'no connection since {time}',
};

/** The words of one language, and how it writes dates. */
export interface Wording {
  readonly language: string;
  readonly locale: string;
  readonly words: Readonly<Record<string, string>>;
}

const NOTHING_HEARD: Wording = { language: 'en', locale: 'en-GB', words: {} };

/** The words around the answers, in the language of whoever writes here; kept by the browser for a start without a connection. */
export class Phrases {
  readonly #kept = new Remembered('cureclerk.words', 'localStorage');
  #wording = readWording(this.#kept.get());

  /** How dates are written in this language. */
  get locale(): string {
    return this.#wording.locale;
  }

  has(key: string): boolean {
    return this.#wording.words[key] !== undefined;
  }

  /** The phrase with its values; before the first answer most of them are not known and nothing is said. */
  say(key: string, values: Values = {}): string {
    const phrase = this.#wording.words[key] ?? BEFORE_THE_FIRST_ANSWER[key] ?? '';
    return phrase.replace(/\{(\w+)\}/g, (hole, name: string) => String(values[name] ?? hole));
  }

  /** Says it in this place, and again in another language when the writer changes. */
  put(place: HTMLElement, key: string, values: Values = {}): void {
    place.dataset['say'] = key;
    place.dataset['values'] = JSON.stringify(values);
    const words = this.say(key, values);
    if (place.textContent !== words) place.textContent = words;
  }

  /** From now on these words; true where they are others than before. */
  hear({ language, locale, words }: Wording): boolean {
    const wording = { language, locale, words };
    const text = JSON.stringify(wording);
    if (text === JSON.stringify(this.#wording)) return false;
    this.#wording = wording;
    this.#kept.set(text);
    this.print();
    return true;
  }

  /** Every place of the page says what it says in the words of now; what is not known stays as it is printed. */
  print(): void {
    document.documentElement.lang = this.#wording.language;
    for (const place of document.querySelectorAll<HTMLElement>('[data-say]')) {
      const { say = '', values } = place.dataset;
      if (this.has(say)) this.put(place, say, readValues(values));
    }
    for (const name of ['aria-label', 'placeholder']) {
      for (const place of document.querySelectorAll(`[data-${name}]`)) {
        const key = place.getAttribute(`data-${name}`) ?? '';
        if (this.has(key)) place.setAttribute(name, this.say(key));
      }
    }
  }
}

function readWording(text: string | null): Wording {
  const value: unknown = text === null ? null : JSON.parse(text);
  if (!isFields(value) || typeof value['language'] !== 'string' || typeof value['locale'] !== 'string' || !isFields(value['words'])) return NOTHING_HEARD;
  return { language: value['language'], locale: value['locale'], words: textsOf(value['words']) };
}

const textsOf = (from: Readonly<Record<string, unknown>>): Record<string, string> => Object.fromEntries(Object.entries(from).flatMap(([key, one]) => (typeof one === 'string' ? [[key, one]] : [])));

function readValues(text: string | undefined): Values {
  const value: unknown = text === undefined ? {} : JSON.parse(text);
  return isFields(value) ? Object.fromEntries(Object.entries(value).flatMap(([key, one]) => (typeof one === 'string' || typeof one === 'number' ? [[key, one]] : []))) : {};
}
