import type { MaterialCard, MilestoneKind } from '../../cure/card.js';
import type { Deed, MayNow } from '../../repair/may.js';
import { nameOf } from '../../repair/people.js';
import type { CautionKind } from '../../repair/procedure.js';
import type { Answer } from '../answer.js';
import { sayMay } from '../catalogue/may.js';
import { sayShortName } from '../catalogue/short-names.js';
import type { Reader } from '../catalogue/speaker.js';
import { cautionLine } from './cautions.js';
import { composeRefusal } from './refusal.js';
import { asleep, exampleNote, holdWords, title } from './state.js';
import { answer, capital, clock, milestoneWord, type Setting } from './words.js';

const CAUTIONS: Readonly<Record<Deed, CautionKind | null>> = { sand: 'sanding', weld: 'weld-after', move: null, bake: 'bake', fill: 'filler', unclamp: 'clamps-off' };

/** Never leave to do it: not yet, with one reason, or what a person confirmed and who decides. */
export function composeMay(may: MayNow, setting: Setting): Answer {
  switch (may.is) {
    case 'refused':
      return composeRefusal(may.refusal, setting);
    case 'nothing-known':
      return answer('plain', [sayMay(setting, 'nothing-known', { job: may.job })]);
    case 'banned':
      return answer('alarm', [sayMay(setting, 'banned', { job: may.job, material: may.material, since: clock(may.since, setting) })]);
    case 'job-held':
      return answer('plain', [sayMay(setting, 'job-held', { job: may.job, who: nameOf(setting.shop, may.hold.by), at: clock(may.hold.at, setting), reason: may.hold.reason })]);
    case 'watched':
      return answer('plain', [watched(may, setting)]);
    case 'no-row':
      return answer('plain', [sayMay(setting, `no-row-${may.deed}`, { job: may.job, cards: [...new Set(may.cards.map((card) => card.name))].join(', ') }), noteOf(may.cards, setting)]);
    case 'not-closed':
      return answer('plain', [sayMay(setting, 'not-closed', { job: title(may.outlook), reason: reason(may.deed, may.outlook.cure.card, setting) }), exampleNote(may.outlook.cure.card, setting)]);
    case 'not-yet':
      return notYet(may, setting);
    case 'confirmed':
      return confirmed(may, setting);
  }
}

function watched({ job, dueAt }: Extract<MayNow, { is: 'watched' }>, setting: Setting): string {
  if (dueAt === null) return sayMay(setting, 'hot-work-goes-on', { job });
  return sayMay(setting, dueAt <= setting.now ? 'watch-not-checked' : 'watch-runs', { job, at: clock(dueAt, setting) });
}

function notYet(may: Extract<MayNow, { is: 'not-yet' }>, setting: Setting): Answer {
  const { card } = may.outlook.cure;
  const more = may.others === 0 ? [] : [sayMay(setting, 'more-wait', { more: may.others })];
  const notYetWords = sayMay(setting, 'not-yet', { job: title(may.outlook), state: stateWords(may, setting), reason: reason(may.deed, card, setting) });
  return answer('plain', [[notYetWords, ...more].join(' '), exampleNote(card, setting)]);
}

function stateWords({ outlook, milestone, hold, state }: Extract<MayNow, { is: 'not-yet' }>, setting: Setting): string {
  const name = capital(nameOfWait(milestone.kind, setting));
  const due = milestone.check.dueAt;
  if (state === 'held') return sayMay(setting, 'held', { milestone: name, reason: holdWords(hold ?? 'earlier', setting) });
  if (due !== null) return sayMay(setting, due <= setting.now ? 'not-checked' : 'earliest', { milestone: name, at: clock(due, setting) });
  return state === 'asleep' ? sayMay(setting, 'asleep', { milestone: name, why: asleep(outlook, milestone, setting) }) : sayMay(setting, 'no-time-yet', { milestone: name });
}

function confirmed({ deed, outlook, kind, said }: Extract<MayNow, { is: 'confirmed' }>, setting: Setting): Answer {
  const caution = kind === 'drive-away' ? 'glass' : CAUTIONS[deed];
  return answer('plain', [
    sayMay(setting, 'confirmed', { job: title(outlook), milestone: nameOfWait(kind, setting), at: clock(said.at, setting), who: nameOf(setting.shop, said.by) }),
    caution === null ? null : cautionLine(caution, setting),
    exampleNote(outlook.cure.card, setting),
  ]);
}

/** Strengths without their last word, times with it. */
const nameOfWait = (kind: MilestoneKind, reader: Reader): string => (kind === 'handling' || kind === 'full' ? sayShortName(reader, kind) : milestoneWord(kind, reader));

/** What goes wrong if it is done too early, one reason each. */
function reason(deed: Deed, card: MaterialCard, reader: Reader): string {
  const has = (kind: MilestoneKind): boolean => card.milestones.some((rule) => rule.kind === kind);
  if (deed === 'move' && has('drive-away')) return sayMay(reader, 'reason-glass');
  return sayMay(reader, deed === 'sand' && has('sand') ? 'reason-filler' : `reason-${deed}`);
}

const noteOf = (cards: readonly MaterialCard[], setting: Setting): string | null => cards.map((card) => exampleNote(card, setting)).find((note) => note !== null) ?? null;
