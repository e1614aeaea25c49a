import type { MaterialCard } from '../../cure/card.js';
import type { Deed, MayNow } from '../../repair/may.js';
import { nameOf } from '../../repair/people.js';
import type { CautionKind } from '../../repair/procedure.js';
import type { Answer } from '../answer.js';
import { cautionLine } from './cautions.js';
import { composeRefusal } from './refusal.js';
import { asleep, exampleNote, holdWords, title } from './state.js';
import { answer, capital, clock, MILESTONE_WORDS, type Setting } from './words.js';

/** What goes wrong if it is done too early, one reason each. Common practice, no source. */
const REASONS: Readonly<Record<Deed, string>> = {
  sand: 'Squeeze-out clogs paper and pulls edges now.',
  weld: 'Heat weakens a joint a hand\'s width away.',
  move: 'A push on a joint that is still soft shifts it.',
  bake: 'The oven heats what is still soft, and nothing clamps it there.',
  fill: 'Filler over soft glue lifts and shows after paint.',
  unclamp: 'The gap opens overnight and shows only after paint.',
};
const FILLER_REASON = 'Paper clogs, and the edge shrinks later and shows after paint.';
const GLASS_REASON = 'Glass that is shaken now may leak later.';

const CAUTIONS: Readonly<Record<Deed, CautionKind | null>> = { sand: 'sanding', weld: 'weld-cured', move: null, bake: 'bake', fill: 'filler', unclamp: 'clamps-off' };
const DEED_WORDS: Readonly<Record<Deed, string>> = { sand: 'sanding', weld: 'welding', move: 'moving the car', bake: 'the oven', fill: 'filler', unclamp: 'taking clamps off' };

/** Never leave to do it: not yet, with one reason, or what a person confirmed and who decides. */
export function composeMay(may: MayNow, setting: Setting): Answer {
  switch (may.is) {
    case 'refused':
      return composeRefusal(may.refusal, setting);
    case 'nothing-known':
      return answer('plain', [`${may.job}: nothing entered about ${may.job}: **no clock runs**. Ask whoever worked on it.`]);
    case 'banned':
      return answer('alarm', [`**${may.job} STOP: no heat, no flame.** ${may.material} is in this car since ${clock(may.since, setting)}: it burns.`]);
    case 'job-held':
      return answer('plain', [`${may.job} **NOT yet**. **HELD** by ${nameOf(setting.shop, may.hold.by)} since ${clock(may.hold.at, setting)}: ${may.hold.reason}.`]);
    case 'no-row':
      return answer('plain', [`${may.job}: **no sheet time** for ${DEED_WORDS[may.deed]} on ${[...new Set(may.cards.map((card) => card.name))].join(', ')}. Data sheet and repair method decide.`, noteOf(may.cards, setting)]);
    case 'not-closed':
      return answer('plain', [`${title(may.outlook)} **NOT yet**. Not noted as closed: no strength clock runs. ${reason(may.deed, may.outlook.cure.card)}`, exampleNote(may.outlook.cure.card, setting)]);
    case 'not-yet':
      return notYet(may, setting);
    case 'confirmed':
      return confirmed(may, setting);
  }
}

function notYet(may: Extract<MayNow, { is: 'not-yet' }>, setting: Setting): Answer {
  const { card } = may.outlook.cure;
  const more = may.others === 0 ? '' : ` ${may.others} more ${may.others === 1 ? 'wait' : 'waits'} on this car.`;
  return answer('plain', [`${title(may.outlook)} **NOT yet**. ${stateWords(may, setting)}. ${reason(may.deed, card)}${more}`, exampleNote(card, setting)]);
}

function stateWords({ outlook, milestone, hold, state }: Extract<MayNow, { is: 'not-yet' }>, setting: Setting): string {
  const name = shortName(milestone.kind);
  const due = milestone.check.dueAt;
  if (state === 'held') return `${name} **HELD**, ${holdWords(hold ?? 'earlier', setting)}: the foreman decides`;
  if (due !== null && due <= setting.now) return `${name} due since ${clock(due, setting)} and **not checked**`;
  if (due !== null) return `${name} **${clock(due, setting)}** earliest`;
  return state === 'asleep' ? `${name} ${asleep(outlook, milestone, setting)}` : `${name} has **no time yet**`;
}

function confirmed({ deed, outlook, kind, said }: Extract<MayNow, { is: 'confirmed' }>, setting: Setting): Answer {
  const caution = kind === 'drive-away' ? 'glass' : CAUTIONS[deed];
  return answer('plain', [
    `${title(outlook)} ${shortName(kind).toLowerCase()} confirmed ${clock(said.at, setting)} by ${nameOf(setting.shop, said.by)}. Data sheet and repair method decide.`,
    caution === null ? null : cautionLine(caution),
    exampleNote(outlook.cure.card, setting),
  ]);
}

const shortName = (kind: keyof typeof MILESTONE_WORDS): string => capital(MILESTONE_WORDS[kind].replace(/ strength$/, ''));

function reason(deed: Deed, card: MaterialCard): string {
  const has = (kind: string): boolean => card.milestones.some((rule) => rule.kind === kind);
  if (deed === 'move' && has('drive-away')) return GLASS_REASON;
  return deed === 'sand' && has('sand') ? FILLER_REASON : REASONS[deed];
}

const noteOf = (cards: readonly MaterialCard[], setting: Setting): string | null => cards.map((card) => exampleNote(card, setting)).find((note) => note !== null) ?? null;
