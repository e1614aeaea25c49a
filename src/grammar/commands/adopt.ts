import { ROLES, type Role } from '../../repair/shop.js';
import { built, missing, type Declaration } from '../declaration.js';
import { wordsOfAll, type Words } from '../language.js';
import { toWhom } from '../to-whom.js';

const ROLE_WORDS: Readonly<Record<Role, Words>> = {
  apprentice: { en: ['apprentice'], de: ['lehrling', 'azubi'], es: ['aprendiz'] },
  technician: { en: ['technician'], de: ['techniker', 'mechaniker'], es: ['técnico', 'técnica'] },
  foreman: { en: ['foreman'], de: ['meister', 'vorarbeiter'], es: ['encargado', 'capataz'] },
  quality: { en: ['quality'], de: ['qualität'], es: ['calidad'] },
  owner: { en: ['owner'], de: ['inhaber', 'inhaberin'], es: ['dueño', 'dueña'] },
};

export const adopt: Declaration = {
  kind: 'adopt',
  forms: { adopt: { en: ['adopt'], de: ['aufnehmen'], es: ['adoptar'] } },
  takes: ['reason'],
  usage: 'adopt NAME [ROLE]',
  example: () => 'adopt Sam technician',
  build: ({ reason }) => {
    const words = reason.split(' ');
    const last = words.at(-1)?.toLowerCase() ?? '';
    const role = ROLES.find((one) => wordsOfAll(ROLE_WORDS[one]).includes(last)) ?? null;
    const person = toWhom((role === null ? words : words.slice(0, -1)).join(' '));
    return person === null ? missing('a-name', 'Sam technician') : built({ kind: 'adopt', person, role });
  },
};
