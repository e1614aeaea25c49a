import type { EnteredFigure } from '../../repair/commands.js';
import { ENTERINGS, isLabelFigure, type Entering } from '../../repair/procedure.js';
import { LABEL_WORDS, takeLabel } from '../cartridge-label.js';
import { built, missing, type Built, type Declaration, type Slots } from '../declaration.js';
import { readChunks } from '../reader.js';

const USUAL: Readonly<Record<Entering, string>> = { batch: '55-B', expiry: '2027-03', opened: '2026-11-20', air: '19', metal: '15', photo: 'label' };

/** Figures of a cartridge and the like; what is typed behind the word is kept as it is. */
export const enter: Declaration = {
  kind: 'enter',
  forms: {
    ...LABEL_WORDS,
    photo: { en: ['photo', 'picture'], de: ['foto', 'bild'], es: ['foto'] },
    enter: { en: ['enter'], de: ['eintragen'], es: ['anotar'] },
  },
  takes: ['job', 'joint', 'reason'],
  usage: 'batch JOB 55-B exp 2027-03 opened 2026-11-20',
  example: ({ job }) => `batch ${job} 55-B`,
  build: (slots) => {
    const named = ENTERINGS.find((what) => slots.forms.has(what));
    if (named !== undefined) return entered(slots, named, slots.reason);
    const [word = '', ...others] = slots.reason.split(' ');
    const what = ENTERINGS.find((one) => one === word.toLowerCase());
    return what === undefined ? missing('what-is-entered', 'batch 55-B') : entered(slots, what, others.join(' '));
  },
};

function entered({ job, joint }: Slots, what: Entering, typed: string): Built {
  const { text, more } = isLabelFigure(what) ? apart(typed) : { text: typed, more: [] };
  if (text === '' && what !== 'photo') return missing(`the-${what}`, USUAL[what]);
  return built({ kind: 'enter', job, joint, what, text, ...(more.length === 0 ? {} : { more }) });
}

/** `55-B exp 03/27`: the first figure, and those behind it. Without any it is kept as it was typed. */
function apart(typed: string): { readonly text: string; readonly more: readonly EnteredFigure[] } {
  const reading = readChunks(typed);
  const { figures: more, rest } = reading.ok ? takeLabel(reading.chunks) : { figures: [], rest: [] };
  return more.length === 0 ? { text: typed, more } : { text: rest.map((chunk) => chunk.typed).join(' ').replace(/[,;]+$/u, ''), more };
}
