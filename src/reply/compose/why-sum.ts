import { minutesBetween, roundDownToMinute, roundUpToMinute, instant, plus, minutes, type Instant } from '../../cure/units.js';
import type { MilestoneForecast } from '../../cure/forecast.js';
import type { Piece } from '../../cure/progress.js';
import { languageOf, type Reader } from '../catalogue/speaker.js';
import { sayWhy } from '../catalogue/why.js';
import { clock, tidy, type Setting } from './words.js';

/** A stretch of the wait up to its end; what is done and what is only expected are two stretches. */
interface Stretch extends Piece {
  readonly ahead: boolean;
}

/** Decimals of printed minutes: as few as give the announced minute again, and never more than this. */
const FEWEST = 1;
const MOST = 9;
/** Decimals of printed minutes that speak of less than a second; from here on seconds have decimals as well. */
const SECONDS = 2;
const SECOND = 1000;

/**
 * The sum as lines, `09:50-10:20 reading 30 °C: 30 of 150 min = 20 %`. Who adds up the printed shares, takes the rest of
 * the last printed row minutes and counts on from the last printed begin comes to the announced minute.
 */
export function sumLines({ progress, dueAt }: MilestoneForecast, start: Instant, words: (piece: Piece) => string, setting: Setting): string[] {
  const stretches = stretchesOf(fromStart(progress, start), progress.due, setting.now);
  const decimals = decimalsFor(stretches, dueAt);
  return stretches.map((stretch) => lineOf(stretch, words(stretch), decimals, setting));
}

function lineOf({ ahead, from, to, wholeMinutes }: Stretch, heat: string, decimals: number, setting: Setting): string {
  const span = `${exactClock(from, decimals, setting)}-${to === null ? '…' : exactClock(to, decimals, setting)}`;
  if (wholeMinutes === null) return `${span} ${heat}`;
  const whole = asRead(printed(wholeMinutes, decimals), setting);
  if (to === null) return sayWhy(setting, 'without-end', { span, heat, whole });
  const length = minutesBetween(from, to);
  return sayWhy(setting, ahead ? 'if-it-stays' : 'counted', { span, heat, length: asRead(printed(length, decimals), setting), whole, percent: tidy((length / wholeMinutes) * 100, setting) });
}

/** The same figure with the sign for decimals that the reader's calculator has. */
const asRead = (figure: string, reader: Reader): string => (languageOf(reader) === 'en' ? figure : figure.replace('.', ','));

function decimalsFor(stretches: readonly Stretch[], dueAt: Instant | null): number {
  if (dueAt === null) return FEWEST;
  for (let decimals = FEWEST; decimals < MOST; decimals += 1) if (redone(stretches, decimals) === dueAt) return decimals;
  return MOST;
}

/** The due minute as somebody finds it who has only what is printed. */
function redone(stretches: readonly Stretch[], decimals: number): Instant | null {
  const counting = stretches.flatMap(({ from, to, wholeMinutes }) => (wholeMinutes === null || to === null ? [] : [{ from, length: Number(printed(minutesBetween(from, to), decimals)), whole: Number(printed(wholeMinutes, decimals)) }]));
  const last = counting.at(-1);
  if (last === undefined) return null;
  const share = counting.slice(0, -1).reduce((sum, one) => sum + one.length / one.whole, 0);
  return roundUpToMinute(plus(shownBegin(last.from, decimals), minutes((1 - share) * last.whole)));
}

/** Without trailing zeros, never with an exponent. */
const printed = (value: number, decimals: number): string => (decimals === 0 ? value.toFixed(0) : value.toFixed(decimals).replace(/\.?0+$/, ''));

const secondDecimals = (decimals: number): number => Math.min(3, Math.max(0, decimals - SECONDS));

/** Whole seconds, or as many decimals of a second as are printed. */
function shownBegin(at: Instant, decimals: number): Instant {
  const grain = SECOND / 10 ** secondDecimals(decimals);
  return instant(Math.floor(at / grain) * grain);
}

/** `09:50`; `09:50:23` where it is no whole minute. */
function exactClock(at: Instant, decimals: number, setting: Setting): string {
  const beyond = (shownBegin(at, decimals) - Math.floor(at / 60_000) * 60_000) / SECOND;
  if (beyond === 0) return clock(at, setting);
  const [whole = '', part = ''] = printed(beyond, secondDecimals(decimals)).split('.');
  return `${clock(at, setting)}:${asRead(`${whole.padStart(2, '0')}${part === '' ? '' : `.${part}`}`, setting)}`;
}

/** Up to the due moment; neighbours that count alike are one, and the last whole minute parts what counted from what may count. */
function stretchesOf(pieces: readonly Piece[], due: Instant | null, now: Instant): Stretch[] {
  const minute = roundDownToMinute(now);
  return joined(pieces).flatMap((piece): Stretch[] => {
    if (due !== null && piece.from >= due) return [];
    const to = due !== null && (piece.to === null || piece.to > due) ? due : piece.to;
    if (piece.from >= minute || (to !== null && to <= minute) || piece.wholeMinutes === null) return [{ ...piece, to, ahead: piece.from >= minute }];
    return [{ ...piece, to: minute, ahead: false }, { ...piece, from: minute, to, ahead: true }];
  });
}

/** A recipe begins with its lamp: what was before counts nothing, and is shown. */
function fromStart({ law, pieces }: MilestoneForecast['progress'], start: Instant): readonly Piece[] {
  const first = pieces[0]?.from;
  if (law !== 'recipe' || first === undefined || first <= start) return pieces;
  return [{ from: start, to: first, temperature: null, source: 'lamp off', wholeMinutes: null }, ...pieces];
}

function joined(pieces: readonly Piece[]): Piece[] {
  const lines: Piece[] = [];
  for (const piece of pieces) {
    const last = lines.at(-1);
    const alike = last !== undefined && last.temperature === piece.temperature && last.source === piece.source && last.wholeMinutes === piece.wholeMinutes;
    if (alike) lines[lines.length - 1] = { ...last, to: piece.to };
    else lines.push(piece);
  }
  return lines;
}
