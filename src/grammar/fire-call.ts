import { jobNo, type JobNo } from '../repair/ids.js';
import type { Command } from '../repair/commands.js';

/** Nobody types well beside a fire: with one of these a line that cannot be read otherwise is a call. */
const CALLS = /(?<![\p{L}-])(?:smoke|smoking|fire|flames?|rauch|raucht|qualm|feuer|brennt|flammen|humo|fuego|incendio|llamas)(?![\p{L}-])/iu;
/** The watch, the tool and the brigade are no fire, and somebody who asks or denies calls nobody. */
const NO_CALL = /\?|¿|(?<!\p{L})(?:no|not|never|without|kein|keine|keinen|nicht|nie|ohne|sin|nunca|ni|watch|extinguisher|alarm|service|drill|löscher|weld|schweiß\p{L}*|soldar)(?!\p{L})/iu;

/** `help there is smoke at 704!!`: the call in it, and the open job it names. Null: it calls nobody. */
export function fireCall(text: string, openJobs: readonly string[]): Command | null {
  if (!CALLS.test(text) || NO_CALL.test(text)) return null;
  return { kind: 'smoke', job: jobIn(text, openJobs), joint: null };
}

function jobIn(text: string, openJobs: readonly string[]): JobNo | null {
  const named = [...new Set(text.match(/(?<!\d)\d{2,7}(?!\d)/gu) ?? [])].filter((one) => openJobs.includes(one));
  const [only] = named;
  return only !== undefined && named.length === 1 ? jobNo(only) : null;
}
