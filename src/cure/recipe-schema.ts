import { z } from 'zod';
import type { MilestoneKind, MilestoneRule, RateLaw, RecipeStage, SheetRow } from './card.js';
import { durationField, rowsField, temperatureField } from './card-fields.js';
import { closedObject, expects } from './closed-object.js';

const REACHED_BY_LAMP = ['handling', 'full', 'sand', 'recoat-from', 'dry'] as const;
type ReachedByLamp = (typeof REACHED_BY_LAMP)[number];

const stageField = closedObject({
  lamp: temperatureField,
  minutes: durationField,
  reaches: z.enum(REACHED_BY_LAMP, { error: expects(`one of ${REACHED_BY_LAMP.join(', ')}`) }).optional(),
}).transform((plain): RecipeStage => ({ lamp: plain.lamp, minutes: plain.minutes, reaches: plain.reaches ?? null }));

/** The lamp settings of a recipe in their order; the last one must reach a milestone. */
export const stagesField = z.array(stageField, { error: expects('a list of stages, each with lamp and minutes') }).transform((stages, context): readonly RecipeStage[] => {
  if (stages.length === 0) context.addIssue({ code: 'custom', message: 'has no stages' });
  const seen = new Set<MilestoneKind>();
  for (const [index, { reaches }] of stages.entries()) {
    if (reaches === null && index === stages.length - 1) context.addIssue({ code: 'custom', path: [index], message: 'is the last stage and must say what it reaches' });
    if (reaches !== null && seen.has(reaches)) context.addIssue({ code: 'custom', path: [index, 'reaches'], message: `${reaches} is reached by an earlier stage already` });
    if (reaches !== null) seen.add(reaches);
  }
  return stages;
});

/** What the same sheet states without a lamp; a lamp-set card has no other rows. */
export const unheatedField = closedObject({
  handling: rowsField.optional(),
  full: rowsField.optional(),
  sand: rowsField.optional(),
  'recoat-from': rowsField.optional(),
  dry: rowsField.optional(),
});

/** One rule per milestone: all stages up to the one that reaches it, or the unheated rows, whichever comes first. */
export function recipeRules(stages: readonly RecipeStage[], unheated: Partial<Record<ReachedByLamp, readonly SheetRow[] | undefined>> | undefined, context: z.RefinementCtx): MilestoneRule[] {
  const coldestLamp = Math.min(...stages.map((stage) => stage.lamp));
  return REACHED_BY_LAMP.flatMap((kind): MilestoneRule[] => {
    const reached = stages.findIndex((stage) => stage.reaches === kind);
    const recipe: RateLaw[] = reached === -1 ? [] : [{ law: 'recipe', stages: stages.slice(0, reached + 1) }];
    const rows = unheated?.[kind];
    const air: RateLaw[] = rows === undefined ? [] : [{ law: 'credit', rows }];
    refuseHeatedRows(kind, rows ?? [], coldestLamp, context);
    return recipe.length + air.length === 0 ? [] : [{ kind, laws: [...recipe, ...air] }];
  });
}

/** A lamp setting is not a panel temperature: rows as hot as a lamp belong to a panel-temperature card. */
function refuseHeatedRows(kind: ReachedByLamp, rows: readonly SheetRow[], coldestLamp: number, context: z.RefinementCtx): void {
  for (const row of rows) {
    if (row.temperature < coldestLamp) continue;
    const message = `is as hot as the lamp (${coldestLamp}): panel temperatures and lamp settings are never mixed on one card; write a card with basis panel-temperature`;
    context.addIssue({ code: 'custom', path: ['unheated', kind, String(row.temperature)], message });
  }
}
