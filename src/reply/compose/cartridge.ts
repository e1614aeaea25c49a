import { DateTime } from 'luxon';
import type { CartridgeFault } from '../../repair/cartridge.js';
import type { CartridgeLabel } from '../../repair/commands.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import { lineOf } from '../../repair/line-of.js';
import { undecidedCartridge, type Outlook } from '../../repair/outlook.js';
import { foremanOf, nameOf } from '../../repair/people.js';
import { sayCartridge } from '../catalogue/cartridge.js';
import type { Reader } from '../catalogue/speaker.js';
import { title } from './state.js';
import type { Setting } from './words.js';

/** `batch 55-B, expires 01/26, opened 20.10.26`. */
export function labelWords({ batch, expiry, opened }: CartridgeLabel, reader: Reader): string {
  const said = [batch === null ? [] : [sayCartridge(reader, 'batch', { batch })], expiry === null ? [] : [sayCartridge(reader, 'expires', { text: expiry })], opened === null ? [] : [sayCartridge(reader, 'opened', { text: opened })]];
  return said.flat().join(', ');
}

/** What is wrong with the cartridge; null: nothing is known against it. */
export function badCartridge({ cartridge }: Outlook, reader: Reader): string | null {
  if (cartridge?.bad == null) return null;
  const { label, faults } = cartridge.bad;
  const said = faults.map((fault) => faultWords(fault, reader)).join(', ');
  return label.batch === null ? sayCartridge(reader, 'bad-cartridge', { faults: said }) : sayCartridge(reader, 'bad-batch', { batch: label.batch, faults: said });
}

const faultWords = (fault: CartridgeFault, reader: Reader): string =>
  fault.what === 'expiry' ? sayCartridge(reader, 'past-expiry', { text: fault.text }) : sayCartridge(reader, 'open-too-long', { text: fault.text, days: fault.days });

/** The first thing to see while nobody has decided: what is wrong, and who alone lets it go on. */
export function cartridgeHeld(outlook: Outlook, setting: Setting): string | null {
  const why = undecidedCartridge(outlook) === null ? null : badCartridge(outlook, setting);
  if (why === null) return null;
  const foreman = foremanOf(setting.shop);
  const values = { title: title(outlook), why, job: title(outlook) };
  return foreman === 'channel' ? sayCartridge(setting, 'held', values) : sayCartridge(setting, 'held-named', { ...values, foreman: nameOf(setting.shop, foreman) });
}

/** How another cartridge is told, while that still helps. */
export function anotherCartridge(outlook: Outlook, setting: Setting): string | null {
  const { cartridge, cure } = outlook;
  if (cartridge?.bad == null || undecidedCartridge(outlook) === null || cure.closed !== null) return null;
  const today = DateTime.fromMillis(setting.now, { zone: setting.shop.zone });
  const figures = cartridge.bad.faults.map(({ what }) => ({ what, text: what === 'expiry' ? today.plus({ years: 1 }).toFormat('yyyy-MM') : today.toFormat('yyyy-MM-dd') }));
  const joint = cure.ref.joint === FIRST_JOINT ? null : cure.ref.joint;
  return sayCartridge(setting, 'another', { line: lineOf({ kind: 'enter', job: cure.job, joint, what: 'batch', text: '66-C', more: figures }) });
}

/** What stands on the cartridge, and what is wrong with it, also where that was decided; null: nobody said anything. */
export function cartridgeLine(outlook: Outlook, reader: Reader): string | null {
  if (outlook.cartridge === null) return null;
  const label = labelWords(outlook.cartridge.label, reader);
  const why = badCartridge(outlook, reader);
  return why === null ? sayCartridge(reader, 'line', { label }) : sayCartridge(reader, 'line-bad', { label, why: why.charAt(0).toUpperCase() + why.slice(1) });
}
