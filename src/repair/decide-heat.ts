import { afterHeatEvent, NO_HEAT, type HeatState } from '../cure/heat.js';
import { celsiusFromFahrenheit, minutesBetween, type Celsius, type Instant } from '../cure/units.js';
import type { EntryCommand } from './commands.js';
import { refuse, type Decision, type NewFact, type Note, type Situation } from './decision.js';
import type { JobFact } from './facts.js';
import { runningWatch } from './fire-watch.js';
import { inCelsius, lampElsewhere } from './decide-lamp.js';
import { litOutlooks } from './left-on.js';
import { lineOf } from './line-of.js';
import { hottestAllowed } from './hottest-allowed.js';
import type { Outlook } from './outlook.js';
import { personNamed } from './people.js';
import { readForStep } from './read-joint.js';
import type { Refusal } from './refusal.js';
import { isOpen, nextClosing } from './shop-hours.js';
import { cureFor } from './subject.js';
import { untimely } from './timely.js';
import { isFireWatch } from './watch-card.js';

type Of<K extends EntryCommand['kind']> = Extract<EntryCommand, { readonly kind: K }>;

const about = (outlook: Outlook): { job: Outlook['cure']['job']; cure: Outlook['cure']['ref'] } => ({ job: outlook.cure.job, cure: outlook.cure.ref });

const stored = (outlook: Outlook, happenedAt: Instant, fact: JobFact, notes: readonly Note[] = []): Decision => ({ ok: true, facts: [{ job: outlook.cure.job, happenedAt, fact }], about: about(outlook), notes });

/** Lamp lost: at a stated time, or found off and nobody knows since when. */
export function decideOff(command: Of<'off'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { heat, cure } = found.outlook;
  if (heat.lamp === 'off' && (!cure.partLit || command.part === true)) return { ok: true, facts: [], about: about(found.outlook), notes: [{ note: 'already-so' }] };
  if (cure.partLit) return underLamp(command, found.outlook, situation, 'lamp-off');
  if (heat.lamp === 'never' && heat.counted === null) return refuse({ code: 'no-heat', job: cure.job });
  const then = heatBefore(found.outlook, command.when.latest);
  if (then.lamp !== 'on' && then.counted === null) return refuse({ code: 'lamp-not-on-then', job: cure.job, since: cure.heat.find((event) => event.at > command.when.latest)?.at ?? null });
  if (command.part === true) return partCovered(found.outlook, command.when.latest);
  return underLamp(command, found.outlook, situation, command.since === 'unknown' ? 'lamp-found-off' : 'lamp-off');
}

/** What the lamp leaves out is the coldest spot, and was from the moment it was set: only the air counts. */
function partCovered(outlook: Outlook, latest: Instant): Decision {
  const set = outlook.cure.heat.findLast(({ kind, at }) => kind === 'lamp-set' && at <= latest)?.at ?? latest;
  return stored(outlook, set, { type: 'lamp-off', joint: outlook.cure.ref.joint, part: true }, [{ note: 'part-covered' }]);
}

/** One joint, or every joint under the lamp that was named. */
function underLamp({ lamp, joint, when }: Of<'off'> | Of<'on'>, outlook: Outlook, { book, shop, now }: Situation, type: 'lamp-off' | 'lamp-found-off' | 'lamp-on'): Decision {
  const { job, ref } = outlook.cure;
  const there = lamp === null || joint !== null ? [] : litOutlooks(book, shop, [job], now).filter((other) => other.cure.lamp === lamp && other.heat.lamp !== 'off');
  const facts = [...new Set([ref.joint, ...there.map((other) => other.cure.ref.joint)])].map((one): NewFact => ({ job, happenedAt: when.latest, fact: { type, joint: one } }));
  return { ok: true, facts, about: about(outlook), notes: [] };
}

const heatBefore = (outlook: Outlook, at: Instant): HeatState => outlook.cure.heat.filter((event) => event.at <= at).reduce(afterHeatEvent, NO_HEAT);

/** Seen on: back, or still on. */
export function decideOn(command: Of<'on'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { heat, cure } = found.outlook;
  if (heat.lamp === 'never' && heat.counted === null) return refuse({ code: 'no-heat', job: cure.job });
  const lamp = command.lamp ?? cure.lamp;
  const back = lamp === null ? { moved: [] } : lampElsewhere(lamp, { ...command, job: cure.job, joint: cure.ref.joint }, situation);
  if ('code' in back) return refuse(back);
  const on = underLamp(command, found.outlook, situation, 'lamp-on');
  return on.ok ? { ...on, facts: [...back.moved, ...on.facts] } : on;
}

const NOTHING_CURES: readonly Refusal['code'][] = ['nothing-runs', 'moved-away'];

/** A joint reading; bare shiny metal and stored heat are kept and not counted, and the answer says so. */
export function decideRead(command: Of<'read'>, situation: Situation): Decision {
  if (command.corrects === true) return decideSorry(command, situation);
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return (NOTHING_CURES.includes(found.refusal.code) ? readForStep(command, situation) : null) ?? refuse(found.refusal);
  const { cure } = found.outlook;
  const value = inCelsius(command.value, situation);
  const doubt = hotterThanLamp(command, found.outlook, value);
  if (doubt !== null) return refuse(doubt);
  const fact: JobFact = { type: 'reading', joint: cure.ref.joint, value, typed: command.value, method: command.method };
  return stored(found.outlook, command.when.latest, fact, readingNotes(command, found.outlook, value));
}

/** Rule R20: as long as one's own entry can be taken back. */
const CORRECTED_WITHIN = 10;

/** The last reading was mistyped: it is taken back, and the right one stands at its moment. Both stay in the book. */
function decideSorry(command: Of<'read'>, situation: Situation): Decision {
  const last = situation.lastEntry();
  const wrong = last?.facts.find(({ fact }) => fact.type === 'reading');
  if (last === null || wrong?.fact.type !== 'reading' || wrong.job === null) return refuse({ code: 'nothing-to-undo' });
  if (minutesBetween(wrong.enteredAt, situation.now) > CORRECTED_WITHIN) return refuse({ code: 'undo-too-late', enteredAt: wrong.enteredAt });
  const { joint } = wrong.fact;
  const found = cureFor({ ...command, job: wrong.job, joint }, situation);
  if (!found.ok) return refuse(found.refusal);
  const value = inCelsius(command.value, situation);
  const undone: NewFact = { job: wrong.job, happenedAt: situation.now, fact: { type: 'undone', entry: last.entry } };
  const right: NewFact = { job: wrong.job, happenedAt: wrong.happenedAt, fact: { type: 'reading', joint, value, typed: command.value, method: command.method === 'unstated' ? wrong.fact.method : command.method } };
  return { ok: true, facts: [undone, right], about: about(found.outlook), notes: readingNotes({ ...command, when: { ...command.when, latest: wrong.happenedAt } }, found.outlook, value).filter(({ note }) => note === 'over-maximum') };
}

/** A joint well above its lamp's setting is a slip of the thumb more often than a fact: asked before it counts. */
const ABOVE_LAMP = 10;

function hotterThanLamp(command: Of<'read'>, outlook: Outlook, value: Celsius): Refusal | null {
  const { lamp, setting } = heatBefore(outlook, command.when.latest);
  const maximum = hottestAllowed(outlook.cure.card);
  if (command.when.confirmed || command.method === 'bare' || lamp !== 'on' || setting === null || value <= setting + ABOVE_LAMP || (maximum !== null && value > maximum)) return null;
  const { job } = outlook.cure;
  return { code: 'hotter-than-lamp', job, value, setting, line: lineOf({ ...command, job, joint: outlook.cure.ref.joint, when: { ...command.when, stated: true, confirmed: true } }) };
}

function readingNotes(command: Of<'read'>, outlook: Outlook, value: ReturnType<typeof inCelsius>): Note[] {
  if (command.method === 'bare') return [{ note: 'bare-metal' }];
  const maximum = hottestAllowed(outlook.cure.card);
  if (maximum !== null && value > maximum) return [{ note: 'over-maximum', value, maximum }];
  const after = afterHeatEvent(heatBefore(outlook, command.when.latest), { kind: 'reading', at: command.when.latest, value });
  return after.counted === null ? [{ note: 'stored-heat' }] : [];
}

/** The shop's air; it reaches every joint that is not heated. */
export function decideAir(command: Of<'air'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const value = inCelsius(command.value, situation);
  const doubt = airTooHot(command, value);
  if (doubt !== null) return refuse(doubt);
  return { ok: true, facts: [{ job: null, happenedAt: command.when.latest, fact: { type: 'air', value, typed: command.value, humidity: command.humidity } }], about: null, notes: [] };
}

/** No shop has working air above this; it is °F, a humidity, or a joint reading. */
export const HOTTEST_AIR = 40;

function airTooHot(command: Of<'air'>, value: Celsius): Refusal | null {
  if (value <= HOTTEST_AIR || command.when.confirmed) return null;
  const other = command.value.unit === null ? celsiusFromFahrenheit(command.value.value) : null;
  const fahrenheitLine = lineOf({ ...command, value: { value: command.value.value, unit: 'F' } });
  return { code: 'air-too-hot', value, asCelsius: other !== null && other <= HOTTEST_AIR ? other : null, fahrenheitLine };
}

/** Said in the last hour, that somebody is there is about the time after closing. */
const LAST_HOUR = 60;

function closesLater({ shop, now }: Situation): boolean {
  const closes = nextClosing(shop, now);
  return isOpen(shop, now) && closes !== null && minutesBetween(now, closes) > LAST_HOUR;
}

/** Somebody stays with the lamp past closing time, or for the fire watch; whoever is there is there for both. */
export function decideStay(command: Of<'stay'>, situation: Situation): Decision {
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { heat, cure } = found.outlook;
  if (heat.lamp !== 'on' && heat.counted === null && !isFireWatch(cure.card)) return refuse({ code: 'no-heat', job: cure.job });
  const person = command.who === undefined ? undefined : personNamed(situation.shop.people, command.who)?.id;
  if (command.who !== undefined && person === undefined) return refuse({ code: 'unknown-person', typed: command.who, known: situation.shop.people.map(({ id }) => id) });
  const watch = runningWatch(cure.job, situation);
  const watched = watch?.cure.ref.joint ?? cure.ref.joint;
  const only = command.here === true && watch === null && !isFireWatch(cure.card) && closesLater(situation) ? { here: true as const } : {};
  const facts = [...new Set([cure.ref.joint, watched])].map((joint): NewFact => ({ job: cure.job, happenedAt: situation.now, fact: { type: 'attended', joint, ...(person === undefined ? {} : { person }), ...only } }));
  return { ok: true, facts, about: about(found.outlook), notes: only.here === true ? [{ note: 'here-now' }] : [] };
}
