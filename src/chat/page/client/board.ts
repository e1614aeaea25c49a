import { ask } from './ask.js';
import { element, field, mark, part, tab } from './element.js';
import type { Phrases } from './phrases.js';
import { readJob, type CarRow, type CureRows } from './read.js';
import type { ShopClock } from './shop-clock.js';
import { shareBar } from './share-bar.js';
import { stateWord, subjectOf, waitsFor, type StateWord } from './words.js';

/** The waiting board: one row per car, worst first. A tap on the job number opens its milestones. */
export class Board {
  readonly #list = part('cars', HTMLOListElement);
  readonly #open = new Map<string, readonly CureRows[]>();
  #cars: readonly CarRow[] = [];
  #drawn = '';

  constructor(
    readonly clock: ShopClock,
    readonly phrases: Phrases,
    readonly say: (line: string) => void,
  ) {}

  get empty(): boolean {
    return this.#cars.length === 0;
  }

  /** How many cars wait in each state, worst first: `1 due, 2 running`. */
  get tally(): string {
    const words = ['held', 'due', 'asleep', 'running'] as const;
    const counted = words.map((word) => ({ word, count: this.count(word) })).filter(({ count }) => count > 0);
    return counted.length === 0 ? this.phrases.say('tally-none') : counted.map(({ word, count }) => this.phrases.say(`tally-${word}-${count === 1 ? 'one' : 'other'}`, { count })).join(', ');
  }

  count(word: string): number {
    return this.#cars.filter((car) => stateWord(car.state) === word).length;
  }

  show(cars: readonly CarRow[]): void {
    this.#cars = cars;
    for (const job of this.#open.keys()) {
      if (cars.some((car) => car.job === job)) void this.#load(job);
      else this.#open.delete(job);
    }
    this.draw();
  }

  /** Draws again only what would look different; the keyboard stays where it was. */
  draw(): void {
    const rows = this.#cars.map((car) => this.#row(car));
    const look = rows.map((row) => row.outerHTML).join('');
    if (look === this.#drawn) return;
    const focused = document.activeElement?.getAttribute('data-key') ?? null;
    this.#list.replaceChildren(...rows);
    this.#drawn = look;
    if (focused !== null) this.#focusAgain(focused);
  }

  #focusAgain(key: string): void {
    const again = Array.from(this.#list.querySelectorAll<HTMLElement>('[data-key]')).find((one) => one.dataset['key'] === key);
    again?.focus({ preventScroll: true });
  }

  #row(car: CarRow): HTMLLIElement {
    const state = stateWord(car.state);
    const opened = this.#open.has(car.job);
    const number = tab('', () => void this.#toggle(car.job));
    number.className = 'job';
    number.append(element('span', 'job-number', car.job));
    if (car.joint !== 'j1') number.append(element('span', 'joint', car.joint));
    number.setAttribute('aria-expanded', String(opened));
    number.setAttribute('aria-label', this.phrases.say(opened ? 'close-milestones' : 'open-milestones', { subject: subjectOf(car.job, car.joint) }));
    number.dataset['key'] = `${car.job} ${car.joint} ${car.card}`;
    const row = element(
      'li',
      `car is-${state}`,
      this.#field('job', 'no', number),
      this.#field('waits-for', 'what', element('p', 'waits-for', waitsFor(car.waitsFor, this.phrases))),
      this.#due(car),
      this.#field('state', 'status', this.#state('p', state)),
      this.#field('card', 'fact', car.card),
      this.#field('heat', 'fact', car.heat),
      this.#field('who', 'fact', car.owner),
      shareBar(car.share, state, this.phrases),
    );
    if (opened) row.append(this.#sheet(car));
    return row;
  }

  #field(caption: 'job' | 'waits-for' | 'due' | 'state' | 'card' | 'heat' | 'who', className: string, ...content: (Node | string)[]): HTMLElement {
    return field(this.phrases.say(`field-${caption}`), className, ...content);
  }

  #state(tag: 'p' | 'span', state: StateWord): HTMLElement {
    return element(tag, 'state', mark(state), this.phrases.say(`state-${state}`));
  }

  #due(car: CarRow): HTMLElement {
    if (car.dueAt === null) return this.#field('due', 'due none', this.phrases.say('no-time'));
    const weekday = this.clock.weekdayUnlessToday(car.dueAt);
    const time = element('time', 'due-time', element('span', 'weekday', weekday), weekday === '' ? '' : ' ', this.clock.time(car.dueAt));
    time.dateTime = new Date(car.dueAt).toISOString();
    return this.#field('due', 'due', time, element('span', 'distance', this.clock.distance(car.dueAt)));
  }

  #sheet(car: CarRow): HTMLElement {
    const cures = (this.#open.get(car.job) ?? []).flatMap((cure) =>
      cure.milestones.map((one) => {
        const state = stateWord(one.state);
        const name = `${cure.joint === 'j1' ? '' : `${cure.joint} `}${cure.card} ${waitsFor(one.kind, this.phrases)}`;
        const time = one.dueAt === null ? this.phrases.say('no-time') : `${this.clock.weekdayUnlessToday(one.dueAt)} ${this.clock.time(one.dueAt)}`;
        return element('li', `milestone is-${state}`, element('span', '', name), element('span', 'milestone-time', time), this.#state('span', state), shareBar(one.share, state, this.phrases));
      }),
    );
    const subject = subjectOf(car.job, car.joint);
    const asks = (['when', 'why'] as const).map((word) => tab(this.phrases.say(`ask-${word}`, { subject }), () => { this.say(`${word} ${subject}`); }));
    return element('div', 'job-sheet', element('ul', 'milestones', ...cures), element('div', 'tabs', ...asks));
  }

  async #toggle(job: string): Promise<void> {
    if (this.#open.delete(job)) {
      this.draw();
      return;
    }
    this.#open.set(job, []);
    await this.#load(job);
  }

  async #load(job: string): Promise<void> {
    const outcome = await ask(`/api/jobs/${encodeURIComponent(job)}`, readJob);
    if (outcome.kind === 'done' && this.#open.has(job)) this.#open.set(job, outcome.value);
    this.draw();
  }
}
