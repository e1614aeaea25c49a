import { MILESTONE_KINDS, type MilestoneKind } from '../cure/card.js';
import type { ReadingMethod } from '../repair/commands.js';
import { wordsOfAll, type Words } from './language.js';

/** Words of courtesy and grammar that change nothing. Kept tiny: whatever stands here can be said without being heard. */
const FILLERS: Words = { en: ['please', 'thanks', 'job', 'car', 'the', 'is', 'its', 'deg', 'degrees', 'degree'] };

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
export const CARD_WORDS: Words = { en: ['card'] };
/** The unit of a bead's depth. */
const DEPTH_UNITS: Words = { en: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'] };
export const HUMIDITY_WORDS: Words = { en: ['rh', 'humidity'] };
/** After a stated time: the person was asked about it. */
export const CONFIRM_WORDS: Words = { en: ['yes'] };

export const METHODS: readonly (readonly [ReadingMethod, Words])[] = [
  ['tape', { en: ['tape', 'matt tape'] }],
  ['bare', { en: ['bare', 'bare metal', 'shiny'] }],
  ['contact', { en: ['contact'] }],
];

/** The names on the card, and the same as people write them. */
export const MILESTONES: readonly (readonly [MilestoneKind, Words])[] = MILESTONE_KINDS.map((kind) => [kind, { en: kind.includes('-') ? [kind, kind.replace('-', ' ')] : [kind] }]);

/** Between a card and the one it was taken for: `P2 not P1`. */
const NOT_WORDS: Words = { en: ['not'] };

/** A word that turns a line round: a line is never offered without it. */
const NEGATIONS: Words = { en: ['not', 'isnt', 'aint', 'never', 'dont', 'doesnt', 'didnt', 'wasnt', 'cant', 'cannot', 'no', 'nor', 'without', 'nearly', 'almost'] };

const fillers = new Set(wordsOfAll(FILLERS));
const units = new Map(UNITS);
const humidity = new Set(wordsOfAll(HUMIDITY_WORDS));
const depthUnits = new Set(wordsOfAll(DEPTH_UNITS));
const confirming = new Set(wordsOfAll(CONFIRM_WORDS));
const cardWords = new Set(wordsOfAll(CARD_WORDS));

const notWords = new Set(wordsOfAll(NOT_WORDS));
const negations = new Set(wordsOfAll(NEGATIONS));

export const isFiller = (text: string): boolean => fillers.has(text);
export const isNotWord = (text: string): boolean => notWords.has(text);
export const isNegation = (text: string): boolean => negations.has(text);
export const isHumidityWord = (text: string): boolean => humidity.has(text);
export const isDepthUnit = (text: string): boolean => depthUnits.has(text);
export const isConfirmWord = (text: string): boolean => confirming.has(text);
export const isCardWord = (text: string): boolean => cardWords.has(text);
export const isUnitWord = (text: string): boolean => units.has(text);
/** The unit a word names; null for a plain degree sign. */
export const unitNamed = (text: string): 'C' | 'F' | null => units.get(text) ?? null;
export const smallWords = (): readonly string[] => [...fillers, ...units.keys(), ...humidity, ...depthUnits, ...confirming, ...notWords, ...cardWords, '%'];
