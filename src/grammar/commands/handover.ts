import { jobNo, JOB_PATTERN } from '../../repair/ids.js';
import { built, gap, type Declaration } from '../declaration.js';
import { isExceptWord } from '../small-words.js';
import { toWhom } from '../to-whom.js';

/** Without a name it is the question what there is to hand over: the list, worst first. */
export const handover: Declaration = {
  kind: 'handover',
  forms: { handover: { en: ['handover', 'hand over', 'pass'], de: ['übergabe', 'schichtübergabe'], es: ['relevo'] } },
  takes: ['reason'],
  usage: 'handover NAME [except JOB], or: NAME takes all [except JOB]',
  example: ({ job }) => `handover Bo except ${job}`,
  build: ({ reason }) => {
    if (reason === '') return built({ kind: 'who-waits' });
    const words = reason.split(' ');
    const cut = words.findIndex((word) => isExceptWord(word.toLowerCase()));
    const to = toWhom((cut < 0 ? words : words.slice(0, cut)).join(' '));
    const jobs = cut < 0 ? [] : jobsIn(words.slice(cut + 1));
    if (to === null) return gap({ problem: 'name-then-except', add: ['Bo'], choose: false, place: 'end' });
    if (jobs === null) return gap({ problem: 'jobs-after-except', add: ['501'], choose: false, place: 'end' });
    return built({ kind: 'handover', to, except: jobs.map(jobNo) });
  },
};

const AND: ReadonlySet<string> = new Set(['and', 'und', 'y', '&']);

/** `612, 613 and 614`; null when there is none, or something else among them. */
function jobsIn(words: readonly string[]): readonly string[] | null {
  const numbers = words.flatMap((word) => word.split(',')).filter((word) => word !== '' && !AND.has(word.toLowerCase())).map((word) => word.replace(/^#/, ''));
  return numbers.length > 0 && numbers.every((number) => JOB_PATTERN.test(number)) ? [...new Set(numbers)] : null;
}
