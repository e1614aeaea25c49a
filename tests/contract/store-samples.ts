import type { Delivery, DeliveryTarget } from '../../src/clerk/message.js';
import type { NewPost } from '../../src/clerk/ports.js';
import type { MaterialCard } from '../../src/cure/card.js';
import { celsius, instant, minutes, type Instant } from '../../src/cure/units.js';
import type { CureRef } from '../../src/repair/cure-ref.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { entryNo, FIRST_JOINT, jobNo, lampName, personId, type EntryNo, type JobNo } from '../../src/repair/ids.js';
import type { Reminder } from '../../src/repair/reminder.js';
import type { Answer } from '../../src/reply/answer.js';
import type { Book } from '../../src/store/book.js';

export const MONDAY = instant(Date.UTC(2026, 2, 2, 7, 0));
export const at = (afterMinutes: number): Instant => instant(MONDAY + afterMinutes * 60_000);
export const JOB = jobNo('501');
export const ANA = personId('ana');
export const BEN = personId('ben');
export const CURE: CureRef = { joint: FIRST_JOINT, card: 'P2', run: 1 };
const typed = { value: 35, unit: null } as const;

export const answer = (text: string): Answer => ({
  tone: 'plain',
  lines: [[{ kind: 'strong', text }, { kind: 'text', text: ' äöü 🛠' }], []],
  buttons: [{ label: 'why', line: `why ${text}` }],
});

/** Uses every rate law; all figures invented. */
export const CARD: MaterialCard = {
  name: 'P2',
  title: 'Example panel adhesive',
  version: '1',
  example: true,
  basis: 'panel-temperature',
  milestones: [
    { kind: 'handling', laws: [{ law: 'credit', rows: [{ temperature: celsius(20), minutes: minutes(180) }] }, { law: 'elapsed', minutes: minutes(1440) }] },
    { kind: 'full', laws: [{ law: 'recipe', stages: [{ lamp: celsius(35), minutes: minutes(40), reaches: 'handling' }, { lamp: celsius(60), minutes: minutes(20), reaches: null }] }] },
    { kind: 'flash-off', laws: [{ law: 'elapsed', minutes: minutes(12) }] },
    { kind: 'skin', laws: [{ law: 'table', rows: [{ atLeast: celsius(15), humidity: 50, minutes: minutes(30) }] }] },
    { kind: 'through', laws: [{ law: 'depth-root', depthMillimetres: 3, minutes: minutes(1440), reference: { temperature: celsius(23), humidity: 50 } }] },
    { kind: 'dwell', laws: [{ law: 'above', temperature: celsius(60), minutes: minutes(30) }, { law: 'dwell', temperature: celsius(60), minutes: minutes(30), after: minutes(12) }] },
  ],
  openTime: { by: 'rows', rows: [{ temperature: celsius(20), minutes: minutes(90) }] },
  maxPanel: celsius(80),
  maxLamp: null,
  recoatBy: minutes(2880),
  marginPercent: 10,
  noHeatAfter: true,
  openedDays: 30,
};

export const AIR = { type: 'air', value: celsius(18.5), typed, humidity: 45 } as const satisfies Fact;
export const CLOSED: Fact = { type: 'closed', cure: CURE };

/** One fact of every type. */
export const EVERY_FACT: readonly Fact[] = [
  { type: 'cure-opened', cure: CURE, card: CARD, owner: ANA },
  { type: 'cure-opened', cure: CURE, card: { ...CARD, milestones: [], openTime: { by: 'minutes', minutes: minutes(20) }, maxPanel: null, recoatBy: null }, owner: ANA },
  { type: 'cure-opened', cure: CURE, card: { ...CARD, openTime: null }, owner: ANA },
  { type: 'pasted', cure: CURE, earliest: at(-20.333) },
  CLOSED,
  { type: 'moved', cure: CURE },
  { type: 'depth', cure: CURE, millimetres: 3.5 },
  { type: 'cartridge', cure: CURE, batch: '55-B', expiry: null, opened: '20.10.26' },
  { type: 'build-up', joint: FIRST_JOINT, buildUp: 'two-sheets-with-flange' },
  { type: 'card-corrected', cure: CURE, as: { ...CURE, card: 'P9' }, card: { ...CARD, name: 'P9' } },
  { type: 'lamp-set', joint: FIRST_JOINT, setting: celsius(35), typed, lamp: lampName('a'), heater: 'lamp' },
  { type: 'lamp-set', joint: FIRST_JOINT, setting: celsius(60), typed, lamp: lampName('m1'), heater: 'pad' },
  { type: 'lamp-off', joint: FIRST_JOINT },
  { type: 'lamp-found-off', joint: FIRST_JOINT },
  { type: 'lamp-on', joint: FIRST_JOINT },
  { type: 'attended', joint: FIRST_JOINT },
  { type: 'reading', joint: FIRST_JOINT, value: celsius(31.666666666666668), typed: { value: 89, unit: 'F' }, method: 'tape' },
  { type: 'checked', cure: CURE, milestone: 'handling', result: 'soft', role: 'other' },
  { type: 'put-off', cure: CURE, kind: 'handling' },
  { type: 'released', cure: CURE, reason: 'foreman looked' },
  { type: 'scrapped', cure: CURE, reason: 'opened up "again"' },
  { type: 'reminder-raised', cure: CURE, kind: 'open-limit', round: 0, step: 2, dueAt: at(80), to: 'channel' },
  { type: 'reminder-raised', cure: CURE, kind: 'handling', round: 1, step: 0, dueAt: at(180), to: BEN },
  { type: 'handed', to: BEN },
  { type: 'handover-offered', to: BEN, jobs: [JOB, jobNo('502')] },
  { type: 'handover-accepted', offer: entryNo(1) },
  { type: 'busy', until: at(30) },
  { type: 'adopted', person: BEN, name: 'Ben', role: 'apprentice' },
  { type: 'adoption-asked', person: BEN },
  { type: 'checked', cure: CURE, milestone: 'handling', result: 'hard', role: 'apprentice' },
  AIR,
  { type: 'bell', bell: 'opening', dueAt: MONDAY, posted: true },
  { type: 'undone', entry: entryNo(1) },
];

export const record = (entry: EntryNo, fact: Fact, about: Partial<FactRecord> = {}): FactRecord => ({
  entry,
  job: JOB,
  happenedAt: at(0),
  enteredAt: at(0),
  by: ANA,
  fact,
  ...about,
});

/** Writes one entry in a transaction of its own. */
export const enter = (book: Book, facts: readonly Fact[], about: Partial<FactRecord> = {}): EntryNo =>
  book.transact((open) => {
    const entry = open.nextEntry();
    open.append(facts.map((fact) => record(entry, fact, about)));
    return entry;
  });

export const reminder = (key: string, ringAt: Instant, change: Partial<Reminder> = {}): Reminder => ({
  key,
  job: JOB,
  cure: CURE,
  kind: 'handling',
  round: 0,
  step: 0,
  dueAt: ringAt,
  ringAt,
  route: 'alone',
  to: ANA,
  ...change,
});

export const post = (key: string, when: Instant, change: Partial<NewPost> = {}): NewPost => ({
  key,
  at: when,
  dueAt: when,
  to: ANA,
  about: { job: JOB, joint: FIRST_JOINT, card: 'P2', kind: 'handling' },
  answer: answer(key),
  ...change,
});

export const HOME: DeliveryTarget = { kind: 'home-channel' };
export const inThreadOf = (job: JobNo): DeliveryTarget => ({ kind: 'job-thread', job });
export const inChannel = (channel: string): DeliveryTarget => ({ kind: 'channel', channel, thread: null });

export const delivery = (key: string, target: DeliveryTarget = HOME, change: Partial<Delivery> = {}): Delivery => ({
  key,
  chat: 'slack',
  target,
  urgent: false,
  mention: null,
  answer: answer(key),
  createdAt: at(0),
  ...change,
});
