import { sayForm } from '../../reply/catalogue/form.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import { AIR } from './form-fields.js';
import type { FieldErrors, FormValues } from './form-fields.js';

export type FormLine = { readonly ok: true; readonly line: string } | { readonly ok: false; readonly errors: FieldErrors };

const ONE_WORD = /^\S{1,40}$/;
const JOINT = /^j?(\d{1,2})$/i;
const SETTING = /^\d{1,3}(?:[.,]\d+)?\s*(?:°\s*)?[CF]?$/i;
const DEPTH = /^(\d{1,3}(?:[.,]\d+)?)\s*(?:mm)?$/i;
const BARE_CLOCK = /^\d{1,2}[:.]\d{2}$/;

/** The line that could have been typed instead of filling in the form: `cure 501 j2 P2 lamp A 35 15 min ago`. Faults are said in the reader's words. */
export function formLine(values: FormValues, reader: Reader): FormLine {
  const errors = faultsOf(values, reader);
  if (Object.keys(errors).length > 0) return { ok: false, errors };
  const words = ['cure', values.job, jointWord(values.joint), values.card, depthWords(values.depth), heatWords(values), timeWords(values)];
  return { ok: true, line: words.filter((word) => word !== null && word !== '').join(' ') };
}

/** Only what cannot become a line at all; everything else is for the desk to say. */
function faultsOf({ job, joint, card, depth, heat, setting }: FormValues, reader: Reader): FieldErrors {
  const heated = heat !== null && heat !== AIR;
  return {
    ...(job !== null && ONE_WORD.test(job) ? {} : { job: sayForm(reader, 'one-job') }),
    ...(joint === null || JOINT.test(joint) ? {} : { joint: sayForm(reader, 'which-joint') }),
    ...(card !== null ? {} : { card: sayForm(reader, 'choose-card') }),
    ...(depth === null || DEPTH.test(depth) ? {} : { depth: sayForm(reader, 'which-depth') }),
    ...settingFault(heated, setting, reader),
  };
}

function settingFault(heated: boolean, setting: string | null, reader: Reader): FieldErrors {
  if (heated && setting === null) return { setting: sayForm(reader, 'which-setting') };
  if (!heated && setting !== null) return { heat: sayForm(reader, 'no-heater') };
  return setting === null || SETTING.test(setting) ? {} : { setting: sayForm(reader, 'one-temperature') };
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
