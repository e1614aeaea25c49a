import type { EntryCommand } from './commands.js';
import type { Note } from './decision.js';
import type { MaterialCard } from '../cure/card.js';
import type { Outlook } from './outlook.js';
import type { CautionKind } from './procedure.js';
import type { Shop } from './shop.js';

/** An entry, and the cure after it. */
export interface Entering {
  readonly command: EntryCommand;
  readonly after: Outlook;
  readonly notes: readonly Note[];
}

/** The one caution that belongs to the step which this entry begins; null: it begins none that needs one, or something graver is said. */
export function cautionFor({ command, after, notes }: Entering, { batteryCaution }: Pick<Shop, 'batteryCaution'>): CautionKind | null {
  if (notes.some(isGraver)) return null;
  const { card } = after.cure;
  switch (command.kind) {
    case 'paste':
      return after.open.kind === 'too hot' ? null : card.noHeatAfter ? 'wax' : 'paste';
    case 'cure':
    case 'lamp':
      return heatCaution(after, batteryCaution) ?? (command.kind === 'cure' ? restCaution(card) : null);
    case 'closed':
      return restCaution(card);
    case 'read':
      // Once a cure: whoever has read it knows how.
      return command.method === 'unstated' && after.cure.readings.length === 1 ? 'reading' : null;
    case 'check':
      return checkedCaution(notes);
    default:
      return null;
  }
}

/** Hotter than the shop says, the car's battery is in the way as well. */
function heatCaution({ heat }: Outlook, batteryCaution: number): CautionKind | null {
  if (heat.lamp !== 'on') return null;
  return heat.setting !== null && heat.setting > batteryCaution ? 'battery' : 'lamp';
}

/** What must be left alone once it lies or stands. */
function restCaution(card: MaterialCard): CautionKind | null {
  if (card.noHeatAfter) return 'wax';
  return card.milestones.some((rule) => rule.kind === 'drive-away') ? 'glass' : null;
}

function checkedCaution(notes: readonly Note[]): CautionKind | null {
  const confirmed = notes.find((one) => one.note === 'confirmed')?.milestone;
  if (confirmed === 'handling') return 'clamps-off';
  return confirmed === 'sand' ? 'sanding' : null;
}

const isGraver = ({ note }: Note): boolean => note === 'lamp-over-maximum' || note === 'over-maximum' || note === 'already-so' || note === 'already-confirmed';
