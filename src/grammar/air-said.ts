import type { AirSaid } from '../repair/commands.js';
import { missing, type Built, type Slots } from './declaration.js';

/** The air that was said along with a start, or what is missing of it; empty where nothing was said about the air. */
export function airSaid({ air, airWord, humidity }: Slots): { readonly ok: true; readonly air: { readonly air?: AirSaid } } | { readonly ok: false; readonly gap: Built } {
  if (air !== null) return { ok: true, air: { air: { value: air, humidity } } };
  if (airWord || humidity !== null) return { ok: false, gap: airWord ? missing('air-temperature', '19', '19C') : missing('air-temperature', 'air 19', 'air 19C') };
  return { ok: true, air: {} };
}
