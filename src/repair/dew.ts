import type { AirReading } from '../cure/air.js';
import { dewMargin, type DewMargin } from '../cure/dew-margin.js';
import { later, minus, minutes, type Celsius, type Instant } from '../cure/units.js';
import type { Cure, JointReading } from './job.js';

/** How near the metal was to the dew point while the paste lay open (rule R24). */
export interface Dew {
  /** The highest known between paste and closing; below 0 °C moisture settles as frost. */
  readonly point: Celsius;
  readonly frost: boolean;
  /** The metal that came closest in that time, and by how much it was above the dew point; null: nobody read it. */
  readonly metal: Closeness | null;
  /** Too close, and the foreman has not decided since; null: nothing to decide. */
  readonly heldSince: Instant | null;
}

/** One reading of bare metal against one of the air, from the moment on at which both were known. */
interface Closeness extends Pick<DewMargin, 'margin' | 'verdict'> {
  readonly at: Instant;
  /** When both were in the book. */
  readonly knownAt: Instant;
  readonly value: Celsius;
}

interface HumidAir extends Pick<DewMargin, 'point' | 'frost'> {
  readonly at: Instant;
  readonly knownAt: Instant;
  readonly against: (metal: Celsius) => DewMargin | null;
}

/** A humidity that was read longer before the paste says nothing about it. */
const READING_LASTS = minutes(180);

/**
 * Null where nothing is known: no paste noted, or no humidity read in the three hours before it and until the panel was
 * closed. A warmer reading later lifts nothing, since the bead lies on the damp metal already; one taken back does.
 */
export function dewOf(cure: Cure, air: readonly AirReading[]): Dew | null {
  const { pasted } = cure;
  if (pasted === null) return null;
  const damp = humidAir(cure, pasted, air);
  const [first, ...others] = damp;
  if (first === undefined) return null;
  const { point, frost } = others.reduce((highest, one) => (one.point > highest.point ? one : highest), first);
  const met = bareMetal(cure, pasted).flatMap((metal) => damp.flatMap((one) => closeness(metal, one, pasted)));
  const metal = met.reduce<Closeness | null>((worst, one) => (worst === null || one.margin < worst.margin ? one : worst), null);
  return { point, frost, metal, heldSince: heldSince(met.filter((one) => one.verdict === 'too close'), decidedAt(cure)) };
}

function closeness(metal: JointReading, air: HumidAir, pasted: Instant): Closeness[] {
  const found = air.against(metal.value);
  return found === null ? [] : [{ at: later(pasted, later(metal.at, air.at)), knownAt: later(metal.enteredAt, air.knownAt), value: metal.value, margin: found.margin, verdict: found.verdict }];
}

/** Air whose humidity was known at the paste, and until the panel was closed. */
function humidAir({ closed }: Cure, pasted: Instant, air: readonly AirReading[]): HumidAir[] {
  const humid = air.flatMap(readHumid);
  const atPaste = humid.filter((one) => one.at <= pasted && one.at >= minus(pasted, READING_LASTS)).slice(-1);
  return [...atPaste, ...humid.filter((one) => one.at > pasted && (closed === null || one.at <= closed))];
}

function readHumid({ at, value, humidity, enteredAt = at }: AirReading): HumidAir[] {
  if (humidity === null) return [];
  const settles = dewMargin(value, value, humidity);
  return settles === null ? [] : [{ at, knownAt: enteredAt, point: settles.point, frost: settles.frost, against: (metal) => dewMargin(metal, value, humidity) }];
}

/** What the metal was when the bead was laid: read shortly before, or after it while no heat was put on. */
function bareMetal({ heat, readings, readBefore, closed }: Cure, pasted: Instant): JointReading[] {
  const heated = heat.find((event) => event.at > pasted && (event.kind === 'lamp-set' || event.kind === 'lamp-on'))?.at ?? null;
  return [...readBefore, ...readings].filter((one) => one.method !== 'bare' && (closed === null || one.at <= closed) && (heated === null || one.at < heated));
}

/** The foreman's word about the cure, or about the step in which the bead is laid: one decision, wherever it was said last. */
const decidedAt = ({ releasedAt, dampAllowedAt }: Cure): Instant | null => (releasedAt === null || dampAllowedAt === null ? releasedAt ?? dampAllowedAt : later(releasedAt, dampAllowedAt));

/** A decision covers what was known by then; metal that turns out closer still has to be decided on. */
function heldSince(close: readonly Closeness[], decidedBy: Instant | null): Instant | null {
  const decided = decidedBy === null ? [] : close.filter((one) => one.knownAt <= decidedBy);
  const worst = decided.reduce((least, one) => Math.min(least, one.margin), Infinity);
  const open = close.filter((one) => !decided.includes(one) && one.margin < worst);
  return open.reduce<Instant | null>((first, one) => (first === null || one.at < first ? one.at : first), null);
}
