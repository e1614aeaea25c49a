import { ROLES, type Role } from '../../repair/shop.js';
import { isOneSlip } from '../../repair/one-slip.js';
import { built, missing, type Declaration } from '../declaration.js';
import { wordsOfAll, type Words } from '../language.js';
import { toWhom } from '../to-whom.js';

const SHORTEST_WITH_SLIP = 7;

const ROLE_WORDS: Readonly<Record<Role, Words>> = {
  apprentice: { en: ['apprentice'], de: ['lehrling', 'azubi'], es: ['aprendiz'] },
  technician: { en: ['technician'], de: ['techniker', 'mechaniker'], es: ['técnico', 'técnica'] },
  foreman: { en: ['foreman'], de: ['meister', 'vorarbeiter'], es: ['encargado', 'capataz'] },
  quality: { en: ['quality'], de: ['qualität'], es: ['calidad'] },
  owner: { en: ['owner'], de: ['inhaber', 'inhaberin'], es: ['dueño', 'dueña'] },
};

/** The role of a word, or of the only word that is one slip away: `technichian`. A short word is taken as typed: a name may look like it. */
function roleNamed(typed: string): Role | null {
  const named = (fits: (word: string) => boolean): Role[] => ROLES.filter((one) => wordsOfAll(ROLE_WORDS[one]).some(fits));
  const [exact] = named((word) => word === typed);
  const [near, other] = typed.length < SHORTEST_WITH_SLIP ? [] : named((word) => isOneSlip(word, typed));
  return exact ?? (other === undefined ? (near ?? null) : null);
}

export const adopt: Declaration = {
  kind: 'adopt',
  forms: { adopt: { en: ['adopt'], de: ['aufnehmen'], es: ['adoptar'] } },
  takes: ['reason'],
  usage: 'adopt NAME [ROLE]',
  example: () => 'adopt Sam technician',
  build: ({ reason }) => {
    const words = reason.split(' ');
    const last = words.at(-1)?.toLowerCase() ?? '';
    const role = words.length > 1 ? roleNamed(last) : (ROLES.find((one) => wordsOfAll(ROLE_WORDS[one]).includes(last)) ?? null);
    const person = toWhom((role === null ? words : words.slice(0, -1)).join(' '));
    return person === null ? missing('a-name', 'Sam technician') : built({ kind: 'adopt', person, role });
  },
};
