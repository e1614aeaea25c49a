import { later, type Instant } from '../cure/units.js';
import type { CartridgeLabel } from './commands.js';
import type { Cure } from './job.js';
import { openedUntil, readLabelDate } from './label-date.js';

/** What somebody said about the cartridge, and when. */
export interface CartridgeSaid extends CartridgeLabel {
  readonly at: Instant;
  readonly enteredAt: Instant;
}

/** Out of date, or open for more than so many `days`, when the bead was laid. */
export type CartridgeFault = { readonly what: 'expiry'; readonly text: string } | { readonly what: 'opened'; readonly text: string; readonly days: number };

/** The cartridge a bead was laid from, as far as anybody said. */
export interface Cartridge {
  readonly label: CartridgeLabel;
  /** The one that may not be used, and what is wrong with it; null: nothing is known against the bead, or a good one took its place. */
  readonly bad: BadCartridge | null;
  /** It waits for the foreman since then; null: nothing to decide. */
  readonly heldSince: Instant | null;
}

export interface BadCartridge {
  readonly label: CartridgeLabel;
  readonly faults: readonly CartridgeFault[];
  /** From the paste on, or since it was said. */
  readonly since: Instant;
  readonly knownAt: Instant;
}

const NOTHING: CartridgeLabel = { batch: null, expiry: null, opened: null };

/**
 * Null: nobody said anything. Until the panel is closed another cartridge lifts what stands against the one before, where
 * it is good in everything that the other was not; afterwards the bead in the joint is what it is, and only what turns out
 * against it counts.
 */
export function cartridgeOf(cure: Cure, zone: string): Cartridge | null {
  const { closed, cartridges } = cure;
  if (cartridges.length === 0) return null;
  const laid = cure.pasted ?? closed ?? cure.openedAt;
  let label = NOTHING;
  let bad: BadCartridge | null = null;
  for (const said of cartridges) {
    label = said.batch !== null && label.batch !== null && said.batch !== label.batch ? labelOf(said) : merged(label, said);
    const faults = faultsOf(label, laid, cure.openedDays, zone);
    if (faults.length > 0) bad = stillBad(bad, { label, faults, since: later(laid, said.at), knownAt: said.enteredAt });
    else if (bad !== null && (closed === null || said.at <= closed) && isGoodFor(bad, label)) bad = null;
  }
  return { label, bad, heldSince: bad === null || isDecided(bad, cure) ? null : bad.since };
}

const labelOf = ({ batch, expiry, opened }: CartridgeLabel): CartridgeLabel => ({ batch, expiry, opened });

const merged = (label: CartridgeLabel, said: CartridgeLabel): CartridgeLabel => ({ batch: said.batch ?? label.batch, expiry: said.expiry ?? label.expiry, opened: said.opened ?? label.opened });

/** Of one that nobody named a date of, nobody knows whether it is any better. */
const isGoodFor = ({ faults }: BadCartridge, label: CartridgeLabel): boolean => faults.every(({ what }) => label[what] !== null);

/** The same fault said once more was known before. */
function stillBad(known: BadCartridge | null, now: BadCartridge): BadCartridge {
  const isKnown = known !== null && now.faults.every((one) => known.faults.some(({ what, text }) => what === one.what && text === one.text));
  return isKnown ? { ...now, since: known.since, knownAt: known.knownAt } : now;
}

/** The foreman's word about the cure, or about the step in which the bead is laid; it covers what was known by then. */
const isDecided = ({ knownAt }: BadCartridge, { releasedAt, labelAllowedAt }: Cure): boolean => [releasedAt, labelAllowedAt].some((at) => at !== null && at >= knownAt);

/** A label is good to the end of its day, or of its month; how long it was open errs early. */
function faultsOf({ expiry, opened }: CartridgeLabel, laid: Instant, days: number | null, zone: string): CartridgeFault[] {
  const ends = expiry === null ? null : (readLabelDate(expiry, zone)?.ends ?? laid);
  const opening = opened === null ? null : readLabelDate(opened, zone);
  const until = opened === null || days === null ? null : opening === null ? laid : openedUntil(opening, days, zone);
  return [
    ...(expiry !== null && ends !== null && ends <= laid ? [{ what: 'expiry' as const, text: expiry }] : []),
    ...(opened !== null && days !== null && until !== null && until <= laid ? [{ what: 'opened' as const, text: opened, days }] : []),
  ];
}
