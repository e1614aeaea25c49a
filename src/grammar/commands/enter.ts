import { ENTERINGS, type Entering } from '../../repair/procedure.js';
import { built, missing, type Built, type Declaration, type Slots } from '../declaration.js';

const USUAL: Readonly<Record<Entering, string>> = { batch: '55-B', expiry: '2027-03', opened: '2026-11-20', air: '19', metal: '15', photo: 'label' };

/** Figures of a cartridge and the like; what is typed behind the word is kept as it is. */
export const enter: Declaration = {
  kind: 'enter',
  forms: {
    batch: { en: ['batch'], de: ['charge'], es: ['lote'] },
    expiry: { en: ['expiry', 'expires'], de: ['ablaufdatum', 'verfall', 'haltbar bis'], es: ['caducidad', 'caduca'] },
    opened: { en: ['opened'], de: ['geöffnet', 'angebrochen'], es: ['abierto', 'abierta'] },
    photo: { en: ['photo', 'picture'], de: ['foto', 'bild'], es: ['foto'] },
    enter: { en: ['enter'], de: ['eintragen'], es: ['anotar'] },
  },
  takes: ['job', 'joint', 'reason'],
  usage: 'batch JOB 55-B, expiry JOB 2027-03, opened JOB 2026-11-20',
  example: ({ job }) => `batch ${job} 55-B`,
  build: (slots) => {
    const named = ENTERINGS.find((what) => slots.forms.has(what));
    if (named !== undefined) return entered(slots, named, slots.reason);
    const [word = '', ...others] = slots.reason.split(' ');
    const what = ENTERINGS.find((one) => one === word.toLowerCase());
    return what === undefined ? missing('what-is-entered', 'batch 55-B') : entered(slots, what, others.join(' '));
  },
};

function entered({ job, joint }: Slots, what: Entering, text: string): Built {
  if (text === '' && what !== 'photo') return missing(`the-${what}`, USUAL[what]);
  return built({ kind: 'enter', job, joint, what, text });
}
