import { z } from 'zod';
import { CARD_BASES, MILESTONE_KINDS, type CardBasis, type MaterialCard, type MilestoneKind, type MilestoneRule, type OpenTime, type RateLaw } from './card.js';
import { checkedAgainstLimits } from './card-limits.js';
import { cardNameField, durationField, humidityField, marginField, openedDaysField, openField, rowsField, temperatureField, wordsField } from './card-fields.js';
import { closedObject, expects } from './closed-object.js';
import { recipeRules, stagesField, unheatedField } from './recipe-schema.js';
import { tableField } from './table-schema.js';
import { minutes, type Minutes } from './units.js';

const heading = { card: cardNameField, title: wordsField, version: wordsField, example: z.boolean({ error: expects('true or false') }).default(false), 'no-heat-after': z.boolean({ error: expects('true or false') }).default(false), 'opened-days': openedDaysField.optional() };

/** Real minutes at or above a temperature, without credit for more heat. */
const holdField = closedObject({ 'at-least': temperatureField, minutes: durationField });

const depthField = closedObject({
  'depth-mm': z.number({ error: expects('millimetres, more than 0') }).gt(0, { error: 'must be more than 0 mm' }).max(100, { error: 'must be at most 100 mm' }),
  within: durationField,
  temperature: temperatureField,
  humidity: humidityField.refine((humidity) => humidity > 0, { error: 'must be more than 0 percent: a front of moisture does not move in dry air' }),
});

const panelCard = closedObject({
  basis: z.literal('panel-temperature'),
  ...heading,
  handling: rowsField.optional(),
  full: rowsField.optional(),
  sand: rowsField.optional(),
  'recoat-from': rowsField.optional(),
  dry: rowsField.optional(),
  'flash-off': durationField.optional(),
  'recoat-by': durationField.optional(),
  open: openField.optional(),
  'max-panel': temperatureField.optional(),
  'margin-percent': marginField.optional(),
}).transform((plain, context): MaterialCard => {
  const rule = (kind: 'handling' | 'full' | 'sand' | 'recoat-from' | 'dry') => ruleOf(kind, plain[kind], (rows) => ({ law: 'credit', rows }));
  const milestones = [...flashOff(plain), ...rule('handling'), ...rule('full'), ...rule('sand'), ...rule('recoat-from'), ...rule('dry')];
  const limits = { openTime: plain.open ?? null, maxPanel: plain['max-panel'] ?? null, recoatBy: plain['recoat-by'] ?? null };
  return checkedAgainstLimits({ ...cardOf(plain, milestones), ...limits, marginPercent: plain['margin-percent'] ?? 0 }, context);
});

const lampCard = closedObject({
  basis: z.literal('lamp-set'),
  ...heading,
  recipe: stagesField,
  unheated: unheatedField.optional(),
  open: openField.optional(),
  'max-panel': temperatureField.optional(),
  'max-lamp': temperatureField.optional(),
}).transform((plain, context): MaterialCard => {
  const card = cardOf(plain, recipeRules(plain.recipe, plain.unheated, context));
  return checkedAgainstLimits({ ...card, openTime: plain.open ?? null, maxPanel: plain['max-panel'] ?? null, maxLamp: plain['max-lamp'] ?? null }, context);
});

const tableCard = closedObject({ basis: z.literal('table'), ...heading, 'drive-away': tableField, open: openField.optional() }).transform((plain): MaterialCard => {
  const milestones = ruleOf('drive-away', plain['drive-away'], (rows) => ({ law: 'table', rows }));
  return { ...cardOf(plain, milestones), openTime: plain.open ?? null };
});

const depthCard = closedObject({ basis: z.literal('depth'), ...heading, skin: durationField.optional(), through: depthField.optional(), open: openField.optional() }).transform((plain, context): MaterialCard => {
  const milestones = ruleOf('through', plain.through, (through) => ({
    law: 'depth-root',
    depthMillimetres: through['depth-mm'],
    minutes: through.within,
    reference: { temperature: through.temperature, humidity: through.humidity },
  }));
  return checkedAgainstLimits({ ...cardOf(plain, milestones), openTime: openUntilSkin(plain.open ?? null, plain.skin ?? null) }, context);
});

const windowCard = closedObject({ basis: z.literal('window'), ...heading, 'flash-off': durationField.optional(), 'recoat-from': durationField, 'recoat-by': durationField.optional() }).transform((plain, context): MaterialCard => {
  const milestones = [...flashOff(plain), ...ruleOf('recoat-from', plain['recoat-from'], elapsed)];
  return checkedAgainstLimits({ ...cardOf(plain, milestones), recoatBy: plain['recoat-by'] ?? null }, context);
});

const dwellCard = closedObject({ basis: z.literal('dwell'), ...heading, 'flash-off': durationField.optional(), dwell: holdField, 'max-panel': temperatureField.optional() }).transform((plain, context): MaterialCard => {
  const after = plain['flash-off'] ?? minutes(0);
  const milestones = [...flashOff(plain), ...ruleOf('dwell', plain.dwell, (hold) => ({ law: 'dwell', temperature: hold['at-least'], minutes: hold.minutes, after }))];
  return checkedAgainstLimits({ ...cardOf(plain, milestones), maxPanel: plain['max-panel'] ?? null }, context);
});

const aboveCard = closedObject({ basis: z.literal('above-temperature'), ...heading, 'drip-free': holdField.optional(), dry: holdField.optional(), 'max-panel': temperatureField.optional() }).transform((plain, context): MaterialCard => {
  const rule = (kind: 'drip-free' | 'dry') => ruleOf(kind, plain[kind], (hold) => ({ law: 'above', temperature: hold['at-least'], minutes: hold.minutes }));
  return checkedAgainstLimits({ ...cardOf(plain, [...rule('drip-free'), ...rule('dry')]), maxPanel: plain['max-panel'] ?? null }, context);
});

/**
 * The figures of one data sheet as a shop writes them, read into a card. Temperatures are °C; a plain number of time is
 * minutes. Issues carry the path of the field and words for the person who wrote it.
 */
export const cardSchema = z.discriminatedUnion('basis', [panelCard, lampCard, tableCard, depthCard, windowCard, dwellCard, aboveCard], {
  error: (issue) => (isObject(issue.input) ? `must be one of ${CARD_BASES.join(', ')}` : 'must be keys with values, one on a line'),
});

const isObject = (value: unknown): boolean => typeof value === 'object' && value !== null && !Array.isArray(value);

interface Heading {
  readonly basis: CardBasis;
  readonly card: string;
  readonly title: string;
  readonly version: string;
  readonly example: boolean;
  /** No welding, no bake on this car from then on. */
  readonly 'no-heat-after': boolean;
  readonly 'opened-days'?: number | undefined;
}

/** A card without limits; milestones in the order people meet them. */
function cardOf(plain: Heading, rules: readonly MilestoneRule[]): MaterialCard {
  const milestones = [...rules].sort((one, other) => MILESTONE_KINDS.indexOf(one.kind) - MILESTONE_KINDS.indexOf(other.kind));
  return { name: plain.card, title: plain.title, version: plain.version, example: plain.example, basis: plain.basis, milestones, openTime: null, maxPanel: null, maxLamp: null, recoatBy: null, marginPercent: 0, noHeatAfter: plain['no-heat-after'], openedDays: plain['opened-days'] ?? null };
}

const elapsed = (wait: Minutes): RateLaw => ({ law: 'elapsed', minutes: wait });

const flashOff = (plain: { readonly 'flash-off'?: Minutes | undefined }): MilestoneRule[] => ruleOf('flash-off', plain['flash-off'], elapsed);

/** Tooling a bead tears its skin: the skin is the latest end of the open time, not a wait that somebody checks. */
function openUntilSkin(open: OpenTime | null, skin: Minutes | null): OpenTime | null {
  if (skin === null) return open;
  const capped = (wait: Minutes): Minutes => minutes(Math.min(wait, skin));
  if (open === null || open.by === 'minutes') return { by: 'minutes', minutes: capped(open?.minutes ?? skin) };
  return { by: 'rows', rows: open.rows.map((row) => ({ ...row, minutes: capped(row.minutes) })) };
}

function ruleOf<Figures>(kind: MilestoneKind, figures: Figures | undefined, law: (figures: Figures) => RateLaw): MilestoneRule[] {
  return figures === undefined ? [] : [{ kind, laws: [law(figures)] }];
}
