import { jobNo } from '../../repair/ids.js';
import { built, gap, type Declaration } from '../declaration.js';

const BETWEEN = '(?:>|->|=>|→|to|auf|nach|zu|a)';
const FROM_TO = new RegExp(`^#?(\\d{1,7})(?: *${BETWEEN} *| +)#?(\\d{1,7})$`, 'i');

/** It was typed on the wrong car: all times go over to the other. */
export const move: Declaration = {
  kind: 'move',
  forms: { move: { en: ['move'], de: ['umbuchen'], es: ['mover'] } },
  takes: ['reason'],
  usage: 'move JOB>JOB',
  example: ({ job }) => `move ${job}>${job === '502' ? '501' : '502'}`,
  build: ({ reason }) => {
    const [, from, to] = FROM_TO.exec(reason) ?? [];
    if (from === undefined || to === undefined || from === to) return gap({ problem: 'two-jobs', add: reason === '' ? ['501>502'] : ['> 502'], choose: false, place: 'end' });
    return built({ kind: 'move', from: jobNo(from), to: jobNo(to) });
  },
};
