import { entryNo, jobNo } from '../repair/ids.js';
import type { ReadingMethod, When } from '../repair/commands.js';
import type { Assigned } from './assign-numbers.js';
import type { Slots } from './declaration.js';
import type { Token } from './token.js';
import type { Spoken } from './which-command.js';

/** Everything a line says, under the names that commands ask for. */
export function gatherSlots(tokens: readonly Token[], spoken: Spoken, { job, temperature, entry }: Assigned, when: When): Slots {
  return {
    forms: spoken.forms,
    lampWord: spoken.lampWord,
    job: job === null ? null : jobNo(job.text.replace('#', '')),
    joint: tokens.find((token) => token.kind === 'joint')?.joint ?? null,
    card: tokens.find((token) => token.kind === 'card')?.name ?? null,
    lamp: tokens.find((token) => token.kind === 'lamp')?.name ?? null,
    temperature: temperature === null ? null : { value: temperature.value, unit: temperature.kind === 'degrees' ? temperature.unit : null },
    humidity: tokens.find((token) => token.kind === 'humidity')?.percent ?? null,
    method: methodOf(tokens, temperature),
    milestone: tokens.find((token) => token.kind === 'milestone')?.milestone ?? null,
    entry: entry === null ? null : entryNo(entry.value),
    reason: '',
    when,
  };
}

/** `58 tape`; the word probe behind the value says how, in front of it only what was measured. */
function methodOf(tokens: readonly Token[], value: Token | null): ReadingMethod {
  const said = tokens.find((token) => token.kind === 'method')?.method;
  if (said !== undefined) return said;
  const probed = tokens.some((token) => token.kind === 'form' && token.form === 'probe' && value !== null && token.first > value.first);
  return probed ? 'contact' : 'unstated';
}
