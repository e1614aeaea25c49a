import { entryNo, jobNo } from '../repair/ids.js';
import { HEATERS, type Heater } from '../cure/history.js';
import type { Instant } from '../cure/units.js';
import type { ReadingMethod, TypedTemperature, When } from '../repair/commands.js';
import type { Assigned, ValueToken } from './assign-numbers.js';
import type { Slots } from './declaration.js';
import type { Token } from './token.js';
import { isHeaterWord, type Spoken } from './which-command.js';

/** Everything a line says, under the names that commands ask for. */
export function gatherSlots(tokens: readonly Token[], spoken: Spoken, { job, temperature, air, depth, entry }: Assigned, time: { readonly when: When; readonly ahead: Instant | null }): Slots {
  return {
    forms: spoken.forms,
    heaterWord: spoken.heaterWord,
    heaters: new Set(HEATERS.filter((heater) => tokens.some((token) => isAbout(token, heater)))),
    offWord: tokens.some((token) => token.kind === 'form' && token.command === 'off'),
    airWord: tokens.some((token) => token.kind === 'form' && token.command === 'air'),
    job: job === null ? null : jobNo(job.text.replace('#', '')),
    joint: tokens.find((token) => token.kind === 'joint')?.joint ?? null,
    card: tokens.find((token) => token.kind === 'card')?.name ?? null,
    lamp: tokens.find((token) => token.kind === 'lamp')?.name ?? null,
    temperature: typedTemperature(temperature),
    air: typedTemperature(air),
    humidity: tokens.find((token) => token.kind === 'humidity')?.percent ?? null,
    depth: tokens.find((token) => token.kind === 'depth')?.millimetres ?? depth?.value ?? null,
    method: methodOf(tokens, temperature),
    milestone: tokens.find((token) => token.kind === 'milestone')?.milestone ?? null,
    entry: entry === null ? null : entryNo(entry.value),
    reason: '',
    procedure: null,
    length: null,
    ...time,
  };
}

const typedTemperature = (token: ValueToken | null): TypedTemperature | null => (token === null ? null : { value: token.value, unit: token.kind === 'degrees' ? token.unit : null });

const isAbout = (token: Token, heater: Heater): boolean => (token.kind === 'lamp' ? token.heater === heater : isHeaterWord(token) && token.form === heater);

/** `58 tape`; the word probe behind the value says how, in front of it only what was measured. */
function methodOf(tokens: readonly Token[], value: Token | null): ReadingMethod {
  const said = tokens.find((token) => token.kind === 'method')?.method;
  if (said !== undefined) return said;
  const probed = tokens.some((token) => token.kind === 'form' && token.form === 'probe' && value !== null && token.first > value.first);
  return probed ? 'contact' : 'unstated';
}
