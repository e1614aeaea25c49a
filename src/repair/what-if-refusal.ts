import { celsius, celsiusFromFahrenheit, type Celsius } from '../cure/units.js';
import type { QuestionCommand, TypedTemperature } from './commands.js';
import { HOTTEST_AIR } from './decide-heat.js';
import { COLDEST_LAMP, inCelsius } from './decide-lamp.js';
import type { Situation } from './decision.js';
import { highestSetting, recipeOf } from './heat-choices.js';
import type { Cure } from './job.js';
import { questionLine } from './question-line.js';
import type { Refusal } from './refusal.js';

/** Why nothing was reckoned: what a command would be refused for, and what only a supposition can get wrong. */
export type WhatIfRefusal =
  | Refusal
  | { readonly code: 'supposed-over-maximum'; readonly value: Celsius; readonly maximum: Celsius; readonly card: string }
  | { readonly code: 'supposed-below-recipe'; readonly value: Celsius; readonly coldest: Celsius; readonly card: string }
  | { readonly code: 'supposed-pad-on-recipe'; readonly card: string };

type WhatIfCommand = Extract<QuestionCommand, { readonly kind: 'what-if' }>;

/** What cannot be supposed about this cure; null: it can. */
export function refusedSupposition(command: WhatIfCommand, cure: Cure, situation: Situation): WhatIfRefusal | null {
  const named: WhatIfCommand = { ...command, job: cure.job, joint: cure.ref.joint };
  return (command.setting === null ? null : refusedSetting(command.setting, named, cure, situation)) ?? (command.air === null ? null : refusedAir(command.air, named, situation));
}

function refusedSetting(typed: TypedTemperature, command: WhatIfCommand, { card }: Cure, situation: Situation): WhatIfRefusal | null {
  const value = inCelsius(typed, situation);
  const maximum = highestSetting(card);
  if (value < COLDEST_LAMP) return { code: 'lamp-too-cold', value };
  if (maximum !== null && value > maximum) {
    if (typed.unit !== null) return { code: 'supposed-over-maximum', value, maximum, card: card.name };
    const other = celsiusFromFahrenheit(typed.value);
    const line = questionLine({ ...command, setting: { value: typed.value, unit: 'F' } });
    return { code: 'which-unit', value: typed.value, maximum, asCelsius: other <= maximum ? other : null, line };
  }
  const recipe = recipeOf(card, card.milestones.map((rule) => rule.kind));
  if (recipe === null) return null;
  if (command.heater === 'pad') return { code: 'supposed-pad-on-recipe', card: card.name };
  const coldest = celsius(Math.min(...recipe.map((stage) => stage.lamp)));
  return value < coldest ? { code: 'supposed-below-recipe', value, coldest, card: card.name } : null;
}

function refusedAir(typed: TypedTemperature, command: WhatIfCommand, situation: Situation): WhatIfRefusal | null {
  const value = inCelsius(typed, situation);
  if (value <= HOTTEST_AIR) return null;
  const other = typed.unit === null ? celsiusFromFahrenheit(typed.value) : null;
  const fahrenheitLine = questionLine({ ...command, air: { value: typed.value, unit: 'F' } });
  return { code: 'air-too-hot', value, asCelsius: other !== null && other <= HOTTEST_AIR ? other : null, fahrenheitLine };
}
