import { z } from 'zod';
import { MILESTONE_KINDS } from '../cure/card.js';
import { HEATERS } from '../cure/history.js';
import { BUILD_UPS } from '../cure/warm-up.js';
import type { Fact } from '../repair/facts.js';
import { CAUTIONS, ENTERINGS } from '../repair/procedure.js';
import { REMINDER_KINDS } from '../repair/reminder.js';
import { ROLES } from '../repair/shop.js';
import { addresseeSchema, celsiusSchema, entrySchema, instantSchema, jobSchema, jointSchema, lampSchema, personSchema, stepSchema } from './brand-schema.js';
import { cardSchema } from './card-schema.js';
import { procedureSchema } from './procedure-schema.js';
import { readJson } from './read-json.js';

const cure = z.strictObject({ joint: jointSchema, card: z.string(), run: z.int() });
const typed = z.strictObject({ value: z.number(), unit: z.enum(['C', 'F']).nullable() });
const ofJoint = <T extends string>(type: T) => z.strictObject({ type: z.literal(type), joint: jointSchema });
const ofCure = <T extends string>(type: T) => z.strictObject({ type: z.literal(type), cure });

const schema = z.discriminatedUnion('type', [
  ofCure('cure-opened').extend({ card: cardSchema, owner: personSchema }),
  ofCure('pasted').extend({ earliest: instantSchema }),
  ofCure('closed'),
  ofCure('moved'),
  ofCure('depth').extend({ millimetres: z.number() }),
  ofCure('cartridge').extend({ batch: z.string().nullable(), expiry: z.string().nullable(), opened: z.string().nullable() }),
  ofJoint('build-up').extend({ buildUp: z.enum(BUILD_UPS) }),
  ofCure('card-corrected').extend({ as: cure, card: cardSchema }),
  ofJoint('lamp-set').extend({ setting: celsiusSchema, typed, lamp: lampSchema.nullable(), heater: z.enum(HEATERS).default('lamp') }),
  ofJoint('lamp-off').extend({ part: z.literal(true).optional() }),
  ofJoint('lamp-found-off'),
  ofJoint('lamp-on'),
  ofJoint('attended').extend({ person: personSchema.optional(), here: z.literal(true).optional() }),
  ofJoint('reading').extend({ value: celsiusSchema, typed, method: z.enum(['unstated', 'contact', 'tape', 'bare']) }),
  ofCure('checked').extend({ milestone: z.enum(MILESTONE_KINDS), result: z.enum(['hard', 'soft']), role: z.enum(['foreman', 'apprentice', 'other']) }),
  ofCure('put-off').extend({ kind: z.enum(REMINDER_KINDS) }),
  ofCure('released').extend({ reason: z.string() }),
  ofCure('scrapped').extend({ reason: z.string() }),
  z.strictObject({ type: z.literal('procedure-begun'), procedure: procedureSchema }),
  z.strictObject({ type: z.literal('step-done'), step: stepSchema }),
  z.strictObject({ type: z.literal('step-entered'), step: stepSchema, what: z.enum(ENTERINGS), text: z.string() }),
  z.strictObject({ type: z.literal('step-tapped'), step: stepSchema, tap: z.int() }),
  z.strictObject({ type: z.literal('step-signed'), step: stepSchema, role: z.enum(ROLES) }),
  z.strictObject({ type: z.literal('step-overridden'), step: stepSchema, reason: z.string(), pastDew: z.literal(true).optional(), pastLabel: z.literal(true).optional() }),
  z.strictObject({ type: z.literal('job-held'), reason: z.string() }),
  z.strictObject({ type: z.literal('job-released'), reason: z.string() }),
  z.strictObject({ type: z.literal('weld-begun'), joint: jointSchema.nullable() }),
  z.strictObject({ type: z.literal('weld-ended'), only: z.array(instantSchema).readonly().nullable() }),
  z.strictObject({ type: z.literal('cautioned'), step: stepSchema, caution: z.enum(CAUTIONS) }),
  z.strictObject({ type: z.literal('handed'), to: personSchema }),
  ofCure('moved-away').extend({ toJob: jobSchema }),
  ofCure('moved-here').extend({ fromJob: jobSchema }),
  z.strictObject({ type: z.literal('handover-offered'), to: personSchema, jobs: z.array(jobSchema).readonly() }),
  z.strictObject({ type: z.literal('handover-accepted'), offer: entrySchema }),
  z.strictObject({ type: z.literal('busy'), until: instantSchema }),
  z.strictObject({ type: z.literal('adopted'), person: personSchema, name: z.string(), role: z.enum(ROLES) }),
  z.strictObject({ type: z.literal('adoption-asked'), person: personSchema }),
  z.strictObject({ type: z.literal('adoption-refused'), person: personSchema }),
  ofCure('reminder-raised').extend({ kind: z.enum(REMINDER_KINDS), round: z.int(), step: z.int(), dueAt: instantSchema, to: addresseeSchema }),
  z.strictObject({ type: z.literal('air'), value: celsiusSchema, typed, humidity: z.number().nullable() }),
  z.strictObject({ type: z.literal('fire-reported') }),
  z.strictObject({ type: z.literal('bell'), bell: z.enum(['opening', 'closing']), dueAt: instantSchema, posted: z.boolean() }),
  z.strictObject({ type: z.literal('undone'), entry: entrySchema }),
]);

/** What the schema reads; `readFact` and `writeFact` only compile while it is neither wider nor narrower than `Fact`. */
type StoredFact = z.output<typeof schema>;

/** Text of the book back to a fact. `where` names the place for the error. */
export const readFact = (text: string, where: string): Fact => readJson(schema, text, where);

/** Checked on the way in as well: what could not be read back must never get into a book that is only added to. */
export function writeFact(fact: Fact): string {
  const stored: StoredFact = fact;
  return JSON.stringify(schema.parse(stored));
}
