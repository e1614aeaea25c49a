import { MILESTONE_KINDS, type MilestoneKind } from '../cure/card.js';
import type { ReadingMethod } from '../repair/commands.js';
import { wordsOfAll, type Words } from './language.js';

/** Words of courtesy and grammar that change nothing. Kept tiny: whatever stands here can be said without being heard. */
const FILLERS: Words = {
  en: ['please', 'thanks', 'job', 'car', 'the', 'is', 'its', 'deg', 'degrees', 'degree'],
  de: ['bitte', 'danke', 'auftrag', 'auto', 'wagen', 'der', 'die', 'das', 'den', 'dem', 'ist', 'es', 'grad'],
  es: ['favor', 'gracias', 'orden', 'coche', 'el', 'los', 'es', 'está', 'grado', 'grados'],
};
/** `la lámpara`; but in `a las 7` it belongs to the time. */
const ARTICLES: Words = { en: [], de: [], es: ['la', 'las'] };

const UNITS: readonly (readonly [string, 'C' | 'F' | null])[] = [
  ['c', 'C'],
  ['°c', 'C'],
  ['celsius', 'C'],
  ['f', 'F'],
  ['°f', 'F'],
  ['fahrenheit', 'F'],
  ['°', null],
];

/** The word that says that the next name is a card: `card K`. */
export const CARD_WORDS: Words = { en: ['card'], de: ['karte'], es: ['ficha', 'tarjeta'] };
/** The unit of a bead's depth. */
const DEPTH_UNITS: Words = { en: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], de: ['mm', 'millimeter'], es: ['mm', 'milímetro', 'milímetros'] };
export const HUMIDITY_WORDS: Words = { en: ['rh', 'humidity'], de: ['feuchte', 'luftfeuchte', 'feuchtigkeit'], es: ['humedad'] };
/** After a stated time: the person was asked about it. */
export const CONFIRM_WORDS: Words = { en: ['yes'], de: [], es: [] };

export const METHODS: readonly (readonly [ReadingMethod, Words])[] = [
  ['tape', { en: ['tape', 'matt tape'], de: ['klebeband', 'mattband'], es: ['cinta', 'cinta mate'] }],
  ['bare', { en: ['bare', 'bare metal', 'shiny'], de: ['blank', 'blankes blech'], es: ['desnudo', 'brillante'] }],
  ['contact', { en: ['contact'], de: ['kontakt', 'kontaktfühler'], es: ['contacto'] }],
];

/** The same, and the person stays with the lamp. */
const ATTENDED_WORDS: Words = { en: ['attended'], de: [], es: [] };

/** How people call a milestone, beside the name on the card. */
const MILESTONE_NAMES: Readonly<Partial<Record<MilestoneKind, Words>>> = {
  'flash-off': { en: [], de: ['ablüften', 'ablüftzeit'], es: ['evaporación'] },
  handling: { en: ['handling strength'], de: ['handfest', 'handfestigkeit'], es: ['manipulación', 'manipulable'] },
  full: { en: ['full strength'], de: ['endfest', 'endfestigkeit'], es: ['final', 'resistencia final'] },
  sand: { en: ['sanding'], de: ['schleifbar'], es: ['lijable'] },
  'drive-away': { en: [], de: ['wegfahrzeit'], es: ['inmovilización'] },
  'recoat-from': { en: [], de: ['überlackierbar'], es: ['repintable'] },
  'fire-watch': { en: [], de: ['brandwache'], es: ['vigilancia'] },
};

/** The names on the card, and the same as people write them. */
export const MILESTONES: readonly (readonly [MilestoneKind, Words])[] = MILESTONE_KINDS.map((kind) => {
  const { en, de, es } = MILESTONE_NAMES[kind] ?? { en: [], de: [], es: [] };
  return [kind, { en: [kind, ...(kind.includes('-') ? [kind.replace('-', ' ')] : []), ...en], de, es }];
});

/** Said of a joint, these are an answer by themselves: `501 handfest`. */
const STATED: ReadonlySet<string> = new Set(['handfest', 'endfest']);

/** Between a card and the one it was taken for: `P2 not P1`. */
const NOT_WORDS: Words = { en: ['not'], de: ['nicht'], es: [] };

/** A word that turns a line round, or takes half of it back: a line is never offered without it, and nothing in it is taken for a slip. */
const NEGATIONS: Words = {
  en: ['not', 'isnt', 'aint', 'never', 'dont', 'doesnt', 'didnt', 'wasnt', 'cant', 'cannot', 'no', 'nor', 'without', 'nearly', 'almost', 'hardly', 'barely', 'until', 'unless', 'nobody', 'none', 'nothing', 'neither'],
  de: ['nicht', 'nich', 'nix', 'kein', 'keine', 'keinen', 'nie', 'niemals', 'ohne', 'fast', 'kaum', 'beinahe', 'falls', 'weder', 'niemand', 'nichts'],
  es: ['no', 'nunca', 'sin', 'casi', 'apenas', 'tampoco', 'ni', 'nada', 'nadie', 'ningún', 'hasta'],
};

/** `all except 612`. */
const EXCEPT_WORDS: Words = { en: ['except', 'but', 'without'], de: ['außer', 'ohne'], es: ['excepto', 'menos', 'salvo'] };

const setOf = (words: Words): ReadonlySet<string> => new Set(wordsOfAll(words));
const fillers = setOf(FILLERS);
const articles = setOf(ARTICLES);
const units = new Map(UNITS);
const humidity = setOf(HUMIDITY_WORDS);
const depthUnits = setOf(DEPTH_UNITS);
const confirming = setOf(CONFIRM_WORDS);
const attended = setOf(ATTENDED_WORDS);
const cardWords = setOf(CARD_WORDS);
const notWords = setOf(NOT_WORDS);
const negations = setOf(NEGATIONS);
const exceptWords = setOf(EXCEPT_WORDS);

export const isFiller = (text: string): boolean => fillers.has(text);
export const isArticle = (text: string): boolean => articles.has(text);
export const isNotWord = (text: string): boolean => notWords.has(text);
export const isNegation = (text: string): boolean => negations.has(text);
export const isExceptWord = (text: string): boolean => exceptWords.has(text);
export const isHumidityWord = (text: string): boolean => humidity.has(text);
export const isDepthUnit = (text: string): boolean => depthUnits.has(text);
export const isConfirmWord = (text: string): boolean => confirming.has(text);
export const isAttendedWord = (text: string): boolean => attended.has(text);
export const isCardWord = (text: string): boolean => cardWords.has(text);
export const isUnitWord = (text: string): boolean => units.has(text);
export const isStatedMilestone = (text: string): boolean => STATED.has(text);
/** The unit a word names; null for a plain degree sign. */
export const unitNamed = (text: string): 'C' | 'F' | null => units.get(text) ?? null;
export const exceptTexts = (): readonly string[] => [...exceptWords];
export const smallWords = (): readonly string[] => [...fillers, ...articles, ...units.keys(), ...humidity, ...depthUnits, ...confirming, ...attended, ...notWords, ...cardWords, '%'];
