import { afterHeatEvent, NO_HEAT } from '../cure/heat.js';
import type { Instant } from '../cure/units.js';
import type { EntryCommand } from './commands.js';
import { refuse, type Decision, type Note, type Situation } from './decision.js';
import type { JobFact } from './facts.js';
import { inCelsius } from './decide-lamp.js';
import type { Outlook } from './outlook.js';
import { cureFor } from './subject.js';
import { untimely } from './timely.js';

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
  if (heat.lamp === 'off') return { ok: true, facts: [], about: about(found.outlook), notes: [{ note: 'already-so' }] };
  if (heat.lamp === 'never' && heat.counted === null) return refuse({ code: 'no-heat', job: cure.job });
  return stored(found.outlook, command.when.latest, { type: command.since === 'unknown' ? 'lamp-found-off' : 'lamp-off', joint: cure.ref.joint });
}

/** Seen on: back, or still on. */
export function decideOn(command: Of<'on'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { heat, cure } = found.outlook;
  if (heat.lamp === 'never' && heat.counted === null) return refuse({ code: 'no-heat', job: cure.job });
  return stored(found.outlook, command.when.latest, { type: 'lamp-on', joint: cure.ref.joint });
}

/** A joint reading; bare shiny metal and stored heat are kept and not counted, and the answer says so. */
export function decideRead(command: Of<'read'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { cure } = found.outlook;
  const value = inCelsius(command.value, situation);
  const fact: JobFact = { type: 'reading', joint: cure.ref.joint, value, typed: command.value, method: command.method };
  return stored(found.outlook, command.when.latest, fact, readingNotes(command, found.outlook, value));
}

function readingNotes(command: Of<'read'>, outlook: Outlook, value: ReturnType<typeof inCelsius>): Note[] {
  if (command.method === 'bare') return [{ note: 'bare-metal' }];
  const maximum = outlook.cure.card.maxPanel;
  if (maximum !== null && value > maximum) return [{ note: 'over-maximum', value, maximum }];
  const before = outlook.cure.heat.filter((event) => event.at <= command.when.latest).reduce(afterHeatEvent, NO_HEAT);
  const after = afterHeatEvent(before, { kind: 'reading', at: command.when.latest, value });
  return after.counted === null ? [{ note: 'stored-heat' }] : [];
}

/** The shop's air; it reaches every joint that is not heated. */
export function decideAir(command: Of<'air'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const value = inCelsius(command.value, situation);
  return { ok: true, facts: [{ job: null, happenedAt: command.when.latest, fact: { type: 'air', value, typed: command.value, humidity: command.humidity } }], about: null, notes: [] };
}

/** Somebody stays with the lamp past closing time. */
export function decideStay(command: Of<'stay'>, situation: Situation): Decision {
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  return stored(found.outlook, situation.now, { type: 'attended', joint: found.outlook.cure.ref.joint });
}
