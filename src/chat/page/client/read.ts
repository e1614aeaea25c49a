/** What the server sends, read field by field; a wrong shape throws and names the field. Moments are milliseconds since 1970 UTC. */

/** `asks`: whoever presses it writes the rest of the line. */
export interface ButtonNote {
  readonly id: string;
  readonly label: string;
  readonly asks: boolean;
}

export interface ReplyNote {
  readonly id: string;
  readonly text: string;
  readonly buttons: readonly ButtonNote[];
}

/** The joint that a post is about; null where it is about more than one. */
export interface AboutNote {
  readonly job: string | null;
  readonly joint: string | null;
  readonly card: string | null;
}

export interface PostNote {
  readonly seq: number;
  readonly at: number;
  readonly to: string;
  readonly about: AboutNote;
  readonly kind: string;
  readonly reply: ReplyNote;
}

export interface CarRow {
  readonly job: string;
  readonly joint: string;
  readonly card: string;
  readonly waitsFor: string;
  readonly state: string;
  readonly dueAt: number | null;
  readonly owner: string;
  readonly heat: string;
  readonly share: number | null;
}

export interface DeskSheet {
  readonly shop: string;
  readonly zone: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  /** `day`: a standing clock in the practice shop, whose people say their lines by themselves. */
  readonly practice: 'day' | 'standing' | 'running' | null;
  readonly now: number;
  readonly lastPost: number;
  readonly board: readonly CarRow[];
  /** The words of the page, and how their language writes dates. */
  readonly language: string;
  readonly locale: string;
  readonly words: Readonly<Record<string, string>>;
}

export interface MilestoneRow {
  readonly kind: string;
  readonly dueAt: number | null;
  readonly state: string;
  readonly share: number;
}

export interface CureRows {
  readonly joint: string;
  readonly card: string;
  readonly milestones: readonly MilestoneRow[];
}

type Fields = Readonly<Record<string, unknown>>;

export const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null;

function fields(value: unknown): Fields {
  if (!isFields(value)) throw new Error('The server sent something else than an object');
  return value;
}

function text(from: Fields, name: string): string {
  const value = from[name];
  if (typeof value !== 'string') throw new Error(`The server sent no text in ${name}`);
  return value;
}

function texts(from: Fields, name: string): Record<string, string> {
  const all = fields(from[name]);
  return Object.fromEntries(Object.keys(all).map((key) => [key, text(all, key)]));
}

function number(from: Fields, name: string): number {
  const value = from[name];
  if (typeof value !== 'number') throw new Error(`The server sent no number in ${name}`);
  return value;
}

function list<T>(from: Fields, name: string, read: (one: Fields) => T): T[] {
  const value = from[name];
  if (!Array.isArray(value)) throw new Error(`The server sent no list in ${name}`);
  return value.map((one: unknown) => read(fields(one)));
}

function moment(from: Fields, name: string): number {
  const value = Date.parse(text(from, name));
  if (Number.isNaN(value)) throw new Error(`The server sent no moment in ${name}`);
  return value;
}

const orNull = <T>(from: Fields, name: string, read: (from: Fields, name: string) => T): T | null => (from[name] === null ? null : read(from, name));

export function readReply(value: unknown): ReplyNote {
  const from = fields(value);
  return { id: text(from, 'id'), text: text(from, 'text'), buttons: list(from, 'buttons', (one) => ({ id: text(one, 'id'), label: text(one, 'label'), asks: one['asks'] === 'reason' || one['asks'] === true })) };
}

export const readReplyBody = (value: unknown): ReplyNote => readReply(fields(value)['reply']);

const readAbout = (from: Fields): AboutNote => ({ job: orNull(from, 'job', text), joint: orNull(from, 'joint', text), card: orNull(from, 'card', text) });

export function readPost(value: unknown): PostNote {
  const from = fields(value);
  return {
    seq: number(from, 'seq'),
    at: moment(from, 'at'),
    to: text(from, 'to'),
    about: readAbout(fields(from['about'])),
    kind: text(fields(from['about']), 'kind'),
    reply: readReply(from['reply']),
  };
}

export const readPosts = (value: unknown): PostNote[] => list(fields(value), 'posts', readPost);

/** A line that somebody of the practice shop says at its time. */
export interface DayLineNote {
  readonly key: string;
  readonly at: number;
  readonly from: string;
  readonly text: string;
  readonly said: boolean;
}

const truth = (from: Fields, name: string): boolean => {
  const value = from[name];
  if (typeof value !== 'boolean') throw new Error(`The server sent neither true nor false in ${name}`);
  return value;
};

export const readDay = (value: unknown): DayLineNote[] =>
  list(fields(value), 'lines', (one) => ({ key: text(one, 'key'), at: moment(one, 'at'), from: text(one, 'from'), text: text(one, 'text'), said: truth(one, 'said') }));

export const readNow = (value: unknown): number => moment(fields(value), 'now');

const readCar = (from: Fields): CarRow => ({
  job: text(from, 'job'),
  joint: text(from, 'joint'),
  card: text(from, 'card'),
  waitsFor: text(from, 'waitsFor'),
  state: text(from, 'state'),
  dueAt: orNull(from, 'dueAt', moment),
  owner: text(from, 'owner'),
  heat: text(from, 'heat'),
  share: orNull(from, 'share', number),
});

export function readDesk(value: unknown): DeskSheet {
  const from = fields(value);
  const practice = from['practice'];
  return {
    shop: text(from, 'shop'),
    zone: text(from, 'zone'),
    people: list(from, 'people', (one) => ({ id: text(one, 'id'), name: text(one, 'name') })),
    practice: practice === 'day' || practice === 'standing' || practice === 'running' ? practice : null,
    now: moment(from, 'now'),
    lastPost: number(from, 'lastPost'),
    board: list(from, 'board', readCar),
    language: text(from, 'language'),
    locale: text(from, 'locale'),
    words: texts(from, 'words'),
  };
}

export const readJob = (value: unknown): CureRows[] =>
  list(fields(value), 'cures', (cure) => ({
    joint: text(cure, 'joint'),
    card: text(cure, 'card'),
    milestones: list(cure, 'milestones', (one) => ({ kind: text(one, 'kind'), dueAt: orNull(one, 'dueAt', moment), state: text(one, 'state'), share: number(one, 'share') })),
  }));
