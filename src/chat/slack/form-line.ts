import { AIR } from './form-fields.js';
import type { FieldErrors, FormValues } from './form-fields.js';

export type FormLine = { readonly ok: true; readonly line: string } | { readonly ok: false; readonly errors: FieldErrors };

const ONE_WORD = /^\S{1,40}$/;
const JOINT = /^j?(\d{1,2})$/i;
const SETTING = /^\d{1,3}(?:[.,]\d+)?\s*(?:°\s*)?[CF]?$/i;
const DEPTH = /^(\d{1,3}(?:[.,]\d+)?)\s*(?:mm)?$/i;
const BARE_CLOCK = /^\d{1,2}[:.]\d{2}$/;

/** The line that could have been typed instead of filling in the form: `cure 501 j2 P2 lamp A 35 15 min ago`. */
export function formLine(values: FormValues): FormLine {
  const errors = faultsOf(values);
  if (Object.keys(errors).length > 0) return { ok: false, errors };
  const words = ['cure', values.job, jointWord(values.joint), values.card, depthWords(values.depth), heatWords(values), timeWords(values)];
  return { ok: true, line: words.filter((word) => word !== null && word !== '').join(' ') };
}

/** Only what cannot become a line at all; everything else is for the desk to say. */
function faultsOf({ job, joint, card, depth, heat, setting }: FormValues): FieldErrors {
  const heated = heat !== null && heat !== AIR;
  return {
    ...(job !== null && ONE_WORD.test(job) ? {} : { job: 'One job number, like 501.' }),
    ...(joint === null || JOINT.test(joint) ? {} : { joint: 'A joint is j1, j2, …' }),
    ...(card !== null ? {} : { card: 'Choose the material card.' }),
    ...(depth === null || DEPTH.test(depth) ? {} : { depth: 'Millimetres, like 3 or 4,5.' }),
    ...settingFault(heated, setting),
  };
}

function settingFault(heated: boolean, setting: string | null): FieldErrors {
  if (heated && setting === null) return { setting: 'Which setting? Like 35.' };
  if (!heated && setting !== null) return { heat: 'A setting is typed, but no lamp or pad is chosen: choose one, or clear the setting.' };
  return setting === null || SETTING.test(setting) ? {} : { setting: 'One temperature, like 35 or 95F.' };
}

function jointWord(joint: string | null): string | null {
  const no = joint === null ? undefined : JOINT.exec(joint)?.[1];
  return no === undefined ? null : `j${no}`;
}

function depthWords(depth: string | null): string | null {
  const figure = depth === null ? undefined : DEPTH.exec(depth)?.[1];
  return figure === undefined ? null : `${figure} mm`;
}

const heatWords = ({ heat, setting }: FormValues): string | null => (heat === null || heat === AIR || setting === null ? null : `${heat} ${setting.replace(/[\s°]/g, '')}`);

/** What was typed comes before what was tapped. */
function timeWords({ when, time }: FormValues): string | null {
  if (time !== null) return BARE_CLOCK.test(time) ? `at ${time}` : time;
  return when === null || when === '0' ? null : `${when} min ago`;
}
