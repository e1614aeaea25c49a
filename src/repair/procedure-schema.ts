import { z } from 'zod';
import { durationField, openedDaysField, temperatureField, wordsField } from '../cure/card-fields.js';
import { closedObject, expects } from '../cure/closed-object.js';
import { jointNo, stepId } from './ids.js';
import { CAUTIONS, ENTERINGS, type Need, type Procedure, type ProcedureStep } from './procedure.js';
import { actField, confirmedField, doneField, jointField, listOf, procedureNameField, stepNameField, tapsField, wordField } from './procedure-fields.js';
import { orderProblems } from './procedure-order.js';
import { ROLES } from './shop.js';

const MOST_STEPS = 60;
const trueOrFalse = z.boolean({ error: expects('true or false') }).default(false);
const ofSteps = (example: string) => z.record(z.string(), durationField, { error: expects(`a step and its time such as ${example}`) }).default({});

/** An apprentice may do a step, and may not open the way past a hold. */
const signer = wordField(ROLES, 'role').refine((role) => role !== 'apprentice', { error: 'must not be apprentice, who may not sign a hold point: write foreman' });
const signField = listOf(signer, '[foreman]').min(1, { error: 'is a hold point that nobody may sign: write a role such as [foreman], or leave it out' });

const stepField = closedObject({
  step: stepNameField,
  joint: jointField.optional(),
  do: actField,
  role: wordField(['apprentice', 'technician', 'foreman'], 'role for doing a step').default('technician'),
  after: listOf(stepNameField, '[dry-fit]').default([]),
  confirmed: confirmedField.optional(),
  'joint-below': z.record(z.string(), temperatureField, { error: expects('a joint and a temperature such as { j1: 40 }') }).default({}),
  'dew-margin': trueOrFalse,
  within: ofSteps('{ clean: 30 }'),
  'not-before': ofSteps('{ clean: 5 }'),
  'cures-done': trueOrFalse,
  done: doneField.optional(),
  enter: listOf(wordField(ENTERINGS, 'thing to enter'), '[batch, expiry]').default([]),
  'opened-days': openedDaysField.optional(),
  taps: tapsField.default([]),
  caution: listOf(wordField(CAUTIONS, 'caution'), '[paste]').default([]),
  sign: signField.optional(),
  starts: listOf(wordField(['fire-watch', 'heat-ban'], 'thing that a step starts'), '[fire-watch]').default([]),
});
type PlainStep = z.output<typeof stepField>;

/**
 * The order of one kind of repair as a shop writes it, read into a procedure. Temperatures are °C; a plain number of time
 * is minutes. Issues carry the path of the field and words for the person who wrote it.
 */
export const procedureSchema = closedObject({
  procedure: procedureNameField,
  title: wordsField,
  version: wordsField,
  example: trueOrFalse,
  steps: listOf(stepField, '- { step: dry-fit, do: … }')
    .min(1, { error: 'has no step: a procedure is a list of at least one' })
    .max(MOST_STEPS, { error: `must have at most ${MOST_STEPS} steps` }),
}).transform(({ procedure, title, version, example, steps: plain }, context): Procedure => {
  const steps = plain.map(stepOf);
  for (const { step, field, message, known } of orderProblems(steps)) {
    context.addIssue({ code: 'custom', path: ['steps', step, ...placeOf(plain[step], field)], message, ...(known === null ? {} : { params: known }) });
  }
  return { name: procedure, title, version, example, steps };
});

function stepOf(plain: PlainStep): ProcedureStep {
  const { step, joint, do: act, role, done, enter, taps, caution, sign, starts } = plain;
  return { id: step, joint: joint ?? null, act, role, needs: needsOf(plain), done: done ?? { by: 'word' }, enter, openedDays: plain['opened-days'] ?? null, taps, cautions: caution, sign: sign ?? null, starts };
}

function needsOf(plain: PlainStep): readonly Need[] {
  return [
    ...plain.after.map((step): Need => ({ need: 'step', step })),
    ...(plain.confirmed ?? []).map((one): Need => ({ need: 'confirmed', ...one })),
    ...Object.entries(plain['joint-below']).map(([joint, temperature]): Need => ({ need: 'joint-below', joint: jointNo(joint), temperature })),
    ...(plain['dew-margin'] ? [{ need: 'dew-margin' } as const] : []),
    ...Object.entries(plain.within).map(([step, minutes]): Need => ({ need: 'within', step: stepId(step), minutes })),
    ...Object.entries(plain['not-before']).map(([step, minutes]): Need => ({ need: 'not-before', step: stepId(step), minutes })),
    ...(plain['cures-done'] ? [{ need: 'cures-done' } as const] : []),
  ];
}

/** Where in the file a field of a step stands: a member of `after` by its number, of the others by its key. */
function placeOf(plain: PlainStep | undefined, field: readonly string[]): readonly (string | number)[] {
  const [name = '', member] = field;
  if (member === undefined) return field;
  if (name !== 'after') return name === 'confirmed' ? [name] : field;
  return [name, plain?.after.findIndex((step) => step === member) ?? 0];
}
