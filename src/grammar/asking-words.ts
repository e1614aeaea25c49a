import { DEEDS } from './commands/may.js';
import { wordsOfAll, type Words } from './language.js';

export type Deed = (typeof DEEDS)[number];

/** Words that begin a question for leave. */
const ASKING: Words = { en: ['can', 'could', 'may', 'cant', 'cannot'], de: ['kann', 'darf', 'können', 'dürfen'], es: ['puedo', 'puede', 'podemos', 'podría'] };
/** With these it is one only if something is ready for it. */
const BEING: Words = { en: ['is', 'are'], de: ['ist', 'sind'], es: ['está'] };
const READY: Words = { en: ['ready'], de: ['bereit', 'so weit', 'soweit'], es: ['listo', 'lista'] };
const REASONS: Words = { en: ['why'], de: ['warum', 'wieso'], es: ['por', 'qué', 'se'] };

/** What may be asked for. Something about the clamps is always about taking them off. */
const DEED_WORDS: Readonly<Record<Deed, Words>> = {
  sand: { en: ['sand', 'sanded', 'sanding'], de: ['schleifen', 'geschliffen', 'schleifbar'], es: ['lijar', 'lijado', 'lijada', 'lijarse'] },
  weld: { en: ['weld', 'welded', 'welding'], de: ['schweißen', 'geschweißt'], es: ['soldar', 'soldado', 'soldarse'] },
  move: { en: ['move', 'moved', 'moving', 'roll', 'rolled'], de: ['bewegen', 'bewegt', 'rollen', 'schieben'], es: ['mover', 'movido', 'movida', 'moverse'] },
  bake: { en: ['bake', 'baked', 'baking', 'oven'], de: ['einbrennen', 'eingebrannt', 'ofen'], es: ['hornear', 'horneado', 'horno'] },
  fill: { en: ['fill', 'filled', 'filler', 'filling'], de: ['spachteln', 'gespachtelt'], es: ['masillar', 'enmasillar', 'masillado'] },
  unclamp: { en: ['unclamp', 'unclamped', 'clamp', 'clamps'], de: ['lösen', 'zwingen', 'spannzwingen', 'klemmen'], es: ['soltar', 'mordazas', 'sargentos', 'pinzas'] },
};

/** The clamps themselves, for saying that they are off. */
const CLAMPS: Words = { en: ['clamp', 'clamps'], de: ['zwingen', 'spannzwingen'], es: ['mordazas', 'sargentos'] };

/** What stands between them and changes nothing. */
const BETWEEN: Words = {
  en: ['i', 'we', 'it', 'this', 'that', 'one', 'be', 'being', 'to', 'for', 'now', 'yet', 'already', 'out', 'of', 'bay', 'in', 'into', 'off', 'take', 'taken', 'remove', 'come', 'go', 'put', 'on', 'please', 'my'],
  de: ['ich', 'wir', 'man', 'jetzt', 'schon', 'werden', 'zum', 'zu', 'in', 'ab', 'abnehmen', 'weg', 'raus', 'wegnehmen', 'lose', 'machen', 'fürs', 'für'],
  es: ['yo', 'ya', 'ahora', 'para', 'quitar', 'ser', 'se', 'la', 'las', 'al', 'del', 'meter', 'en'],
};

/** How far a car is, in words that the answer never says itself. */
const STATE: Words = { en: ['safe', 'ready', 'drive', 'driven'], de: ['sicher', 'fertig', 'bereit', 'soweit', 'fahren', 'gefahren'], es: ['seguro', 'segura', 'listo', 'lista', 'conducir', 'manejar'] };
const WHEN: Words = { en: ['when'], de: ['wann'], es: ['cuándo', 'cuando'] };

const setOf = (words: Words): ReadonlySet<string> => new Set(wordsOfAll(words));
const asking = setOf(ASKING);
const being = setOf(BEING);
const ready = setOf(READY);
const reasons = setOf(REASONS);
const between = setOf(BETWEEN);
const stateWords = setOf(STATE);
const whenWords = setOf(WHEN);
const clamps = setOf(CLAMPS);
const deeds: ReadonlyMap<string, Deed> = new Map(DEEDS.flatMap((deed) => wordsOfAll(DEED_WORDS[deed]).map((word) => [word, deed] as const)));

export const isAskingWord = (text: string): boolean => asking.has(text);
export const isBeingWord = (text: string): boolean => being.has(text);
export const isReadyForWord = (text: string): boolean => ready.has(text);
export const isReasonWord = (text: string): boolean => reasons.has(text);
export const isStateAskedFor = (text: string): boolean => stateWords.has(text);
export const isWhenWord = (text: string): boolean => whenWords.has(text);
export const isBetweenWord = (text: string): boolean => between.has(text);
export const isClampWord = (text: string): boolean => clamps.has(text);
export const deedNamed = (text: string): Deed | null => deeds.get(text) ?? null;
export const askingWords = (): readonly string[] => [...asking, ...deeds.keys(), ...ready].filter((word) => !word.includes(' '));
