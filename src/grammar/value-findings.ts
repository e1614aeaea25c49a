import { COLDEST_ACCEPTED, HOTTEST_ACCEPTED } from '../cure/units.js';
import { isPossible } from './assign-numbers.js';
import { DEEPEST_BEAD, SHALLOWEST_BEAD } from './bead-depth.js';
import { exampleLine } from './command-table.js';
import { replaced, typedAt, written, replacing } from './draft.js';
import type { Finding, LineState } from './line-state.js';
import { asTyped } from './said.js';
import type { Token, TokenOf } from './token.js';
import type { Repair } from './trouble.js';

/** `1,30` could be a temperature or a time; only a unit or `at` says which. */
export function temperatureOrTime({ draft }: LineState, token: TokenOf<'number'>, takesTemperature: boolean): Finding {
  const time = `${token.clock?.hour ?? 0}:${String(token.clock?.minute ?? 0).padStart(2, '0')}`;
  const short = token.value.toFixed(1);
  const asValue: readonly Repair[] = Number(short) === token.value ? [{ line: replaced(draft, token, short), label: asTyped(short) }] : (['C', 'F'] as const).map((unit) => ({ line: replaced(draft, token, `${token.value}${unit}`), label: [{ is: 'degrees', value: token.value, unit }] }));
  return {
    unclear: typedAt(draft, [token]),
    problem: takesTemperature ? { is: 'temperature-or-time', value: token.value, time } : { is: 'or-time', time },
    repairs: () => [...(takesTemperature ? asValue : []), { line: replaced(draft, token, `at ${time}`), label: asTyped(time) }],
  };
}

export function impossibleTemperature(state: LineState, token: TokenOf<'number'> | TokenOf<'degrees'>): Finding {
  const { draft, assigned, spoken } = state;
  const job = assigned?.job ?? null;
  const swapped = token.kind === 'number' && job !== null ? [{ line: written(draft, new Map([...replacing(token, job.text), ...replacing(job, token.text)])), label: [{ is: 'job', job: token.text } as const] }] : [];
  const inFahrenheit = token.kind === 'number' && isPossible(token.value, 'F') ? [{ line: replaced(draft, token, `${token.value}F`), label: [{ is: 'degrees', value: token.value, unit: 'F' } as const] }] : [];
  const lostComma = token.kind === 'number' && token.whole && /^\d{3}$/.test(token.text) ? [{ line: replaced(draft, token, `${token.value / 10}`), label: [{ is: 'degrees', value: token.value / 10, unit: null } as const] }] : [];
  const asJob = token.kind === 'number' && token.whole && job === null && spoken !== null ? [{ line: exampleLine(spoken.declaration, [token.text], draft.names.cards.values()), label: null }] : [];
  return {
    unclear: typedAt(draft, [token]),
    problem: { is: 'temperature-range', least: COLDEST_ACCEPTED, most: HOTTEST_ACCEPTED },
    repairs: () => [...swapped, ...inFahrenheit, ...(job !== null && job.text.length > 2 ? lostComma : []), ...asJob],
  };
}

export const impossibleDepth = ({ draft }: LineState, token: Token): Finding => ({
  unclear: typedAt(draft, [token]),
  problem: { is: 'depth-range', least: SHALLOWEST_BEAD, most: DEEPEST_BEAD },
  repairs: () => [{ line: replaced(draft, token, '5 mm'), label: null }],
});

/** `pad 501 1` where a pad is called 1: that is no temperature. */
export const padNumber = ({ draft }: LineState, token: Token): Finding => ({
  unclear: typedAt(draft, [token]),
  problem: 'pad-temperature',
  repairs: () => [{ line: replaced(draft, token, `${token.text} 60`), label: null }],
});

export const impossibleHumidity = ({ draft }: LineState, token: Token): Finding => ({
  unclear: typedAt(draft, [token]),
  problem: { is: 'humidity-range', least: 0, most: 100 },
  repairs: () => [{ line: replaced(draft, token, 'rh 55'), label: null }],
});
