import type { Celsius } from '../../cure/units.js';
import type { Refusal } from '../../repair/refusal.js';
import { nameOf } from '../../repair/people.js';
import { isStepRefusal } from '../../repair/step-refusal.js';
import type { Answer } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayRefusal } from '../catalogue/refusal.js';
import { saySteps } from '../catalogue/steps.js';
import { composeStepRefusal } from './procedure-refusal.js';
import { shortened } from './shortened.js';
import { holdWords, markedExample } from './state.js';
import { rolesWords } from './step-line.js';
import { answer, button, clock, degrees, lasting, milestoneWord, percent, tidy, type Setting } from './words.js';

type Of<Code extends Refusal['code']> = Extract<Refusal, { readonly code: Code }>;
type Key = Parameters<typeof sayRefusal>[1];
type Values = Readonly<Record<string, string>>;
type Choice = readonly [label: string, line: string];

/** Beside a question a phone shows this many buttons. */
const MOST_LAMPS = 5;

/** Why a command was not carried out, and what to do. One line each, buttons where they save typing. */
export function composeRefusal(refusal: Refusal, setting: Setting): Answer {
  return markedExample(composed(refusal, setting), 'card' in refusal && typeof refusal.card !== 'string' ? [refusal.card] : [], setting);
}

function composed(refusal: Refusal, setting: Setting): Answer {
  if (isStepRefusal(refusal)) return composeStepRefusal(refusal, setting);
  const { shop, now } = setting;
  const say = (key: Key, values: Values = {}): string => sayRefusal(setting, key, values);
  const refused = (key: Key, values: Values = {}): Answer => answer('refusal', [say(key, values)]);
  const asked = (sentence: string, choices: readonly Choice[]): Answer => answer('question', [sentence], choices.map(([label, sent]) => button(label, sent)));
  switch (refusal.code) {
    case 'which-job':
      return asked(say('which-job'), refusal.choices.map(({ job, line }) => [job, line]));
    case 'which-question':
      return asked(say('which-question'), refusal.choices.map(({ yes, job, line }) => [say(`yes-${yes}`, job === null ? {} : { job }), line]));
    case 'unknown-job':
      return asked(say(refusal.choices.length > 0 ? 'unknown-job-like' : 'unknown-job', { job: refusal.job }), refusal.choices.map(({ job, line }) => [job, line]));
    case 'new-job': {
      const { job, choices, newLine } = refusal;
      return asked(say('new-job', { job }), [...choices.map((choice): Choice => [choice.job, choice.line]), [say('button-new', { job }), newLine]]);
    }
    case 'which-joint':
      return asked(say('which-joint', { job: refusal.job }), refusal.choices.map(({ joint, line }) => [joint, line]));
    case 'moved-away':
      return refused('moved-away', { job: refusal.job, cards: refusal.cards.join(', '), to: refusal.to, at: clock(refusal.at, setting), who: nameOf(shop, refusal.by) });
    case 'onto-itself':
    case 'nothing-runs':
    case 'watch-own-word':
    case 'still-hot':
    case 'no-next-stage':
    case 'nothing-to-check':
    case 'no-heat':
    case 'nothing-held':
      return refused(refusal.code, { job: refusal.job });
    case 'nothing-asked':
    case 'to-yourself':
    case 'nothing-to-hand':
    case 'nothing-offered':
    case 'nothing-to-undo':
      return refused(refusal.code);
    case 'which-card':
      return asked(say('which-card', { job: refusal.job, cards: refusal.choices.map(({ card }) => card).join(', ') }), refusal.choices.slice(0, 5).map(({ card, line }) => [card, line]));
    case 'which-cure':
      return asked(say('which-cure', { job: refusal.job, named: refusal.named }), refusal.choices.map(({ joint, card, line }) => [`${card} ${joint}`, line]));
    case 'already-running': {
      const { job, joint, card } = refusal;
      const other: Choice = [say('button-other-joint'), refusal.otherJoint];
      return asked(say('already-running', { job, joint, card, since: clock(refusal.since, setting) }), refusal.cartridge === null ? [other, [say('button-moved'), `moved ${job} ${joint}`]] : [[say('button-cartridge'), refusal.cartridge], other]);
    }
    case 'second-cure': {
      const { job, joint, card } = refusal;
      return asked(say('second-cure', { job, joint, card, since: clock(refusal.since, setting) }), [[say('button-second-joint'), refusal.otherJoint], [say('button-same-joint'), refusal.sameJoint]]);
    }
    case 'already-closed':
      return asked(say('already-closed', { job: refusal.job, at: clock(refusal.at, setting) }), [[say('button-moved'), refusal.line]]);
    case 'not-closed':
      return asked(say('not-closed', { job: refusal.job }), [[sayButtons(setting, 'closed'), refusal.line]]);
    case 'future':
      return asked(say('future', { at: clock(refusal.at, setting), now: clock(now, setting) }), [[say('button-now'), refusal.nowLine], [say('button-yesterday'), refusal.yesterdayLine]]);
    case 'long-ago':
      return asked(say('long-ago', { at: clock(refusal.at, setting), length: lasting(refusal.at, now, setting) }), [[say('button-yes'), refusal.yesLine], [say('button-now'), refusal.nowLine]]);
    case 'before-step':
      return refused('before-step', { at: clock(refusal.at, setting), step: refusal.step, stepAt: clock(refusal.stepAt, setting) });
    case 'which-unit': {
      const values = { value: tidy(refusal.value, setting), maximum: degrees(refusal.maximum, setting) };
      if (refusal.asCelsius === null) return refused('over-card-maximum', values);
      return asked(say('which-unit', { ...values, celsius: tidy(refusal.asCelsius, setting) }), [[`${values.value} °F`, refusal.line]]);
    }
    case 'over-lamp-maximum':
      return refused('over-lamp-maximum', { value: degrees(refusal.value, setting), card: refusal.card, maximum: degrees(refusal.maximum, setting) });
    case 'not-due': {
      const values = { job: refusal.job, milestone: milestoneWord(refusal.milestone, setting), share: percent(refusal.share, setting) };
      return refusal.dueAt === null ? refused('not-due-no-time', values) : refused('not-due', { ...values, at: clock(refusal.dueAt, setting) });
    }
    case 'held':
      return refused('held', { job: refusal.job, reason: holdWords(refusal.reason, setting) });
    case 'check-first': {
      const values = { job: refusal.job, milestone: milestoneWord(refusal.milestone, setting) };
      const sentence = refusal.dueAt === null ? say('check-first', values) : say('check-first-earliest', { ...values, at: clock(refusal.dueAt, setting) });
      const lampAt = (key: 'button-lamp-at' | 'button-stays-at', value: Celsius): string => say(key, { setting: degrees(value, setting).replace(/ °.*$/, '') });
      return asked(sentence, [[lampAt('button-lamp-at', refusal.setting), refusal.line], ...(refusal.stays === null ? [] : [[lampAt('button-stays-at', refusal.stays.setting), refusal.stays.line] as const])]);
    }
    case 'hotter-than-lamp':
      return asked(say('hotter-than-lamp', { job: refusal.job, value: degrees(refusal.value, setting), setting: degrees(refusal.setting, setting) }), [[say('button-reading-right'), refusal.line]]);
    case 'air-too-hot':
      return asked(say('air-too-hot', { value: degrees(refusal.value, setting) }), refusal.asCelsius === null ? [] : [['°F', refusal.fahrenheitLine]]);
    case 'lamp-alone': {
      const stay: Choice = [sayButtons(setting, 'i-stay'), refusal.stayLine];
      return asked(lampAlone(refusal, setting), refusal.airLine === null ? [stay] : [stay, [say('button-air-only'), refusal.airLine]]);
    }
    case 'lamp-too-cold':
      return refused('lamp-too-cold', { value: degrees(refusal.value, setting) });
    case 'lamp-not-on-then':
      return refusal.since === null ? refused('lamp-not-on-then', { job: refusal.job }) : refused('lamp-not-on-before', { job: refusal.job, since: clock(refusal.since, setting) });
    case 'lamp-elsewhere':
      return asked(say('lamp-elsewhere', { heater: refusal.heater, lamp: refusal.lamp, job: refusal.job }), [[say('button-moved-here'), refusal.line]]);
    case 'which-lamp': {
      const lamps = refusal.choices.map(({ lamp, on }) => say('lamp-is-on', { lamp, job: on })).join(', ');
      return asked(say('which-lamp', { job: refusal.job, lamps }), refusal.choices.slice(0, MOST_LAMPS).map(({ lamp, on, line }) => [say('button-lamp-from', { lamp, job: on }), line]));
    }
    case 'unknown-lamp':
      return answer('refusal', [unknownHeater(refusal, setting)]);
    case 'same-card':
      return refused('same-card', { job: refusal.job, card: refusal.card });
    case 'card-runs-there':
      return refused('card-runs-there', { job: refusal.job, joint: refusal.joint, card: refusal.card, since: clock(refusal.since, setting) });
    case 'two-cures-there':
      return refused('two-cures-there', { job: refusal.job, joint: refusal.joint, cards: refusal.cards.reduce((cards, card) => say('card-and', { cards, card })) });
    case 'no-depth':
      return refused('no-depth', { card: refusal.card });
    case 'odd-depth':
      return refused('odd-depth', { depth: tidy(refusal.millimetres, setting), least: tidy(refusal.least, setting), most: tidy(refusal.most, setting) });
    case 'stranger':
      return answer('refusal', [strangerRefused(refusal, setting)]);
    case 'wrong-role':
      return answer('refusal', [wrongRole(refusal, setting)]);
    case 'unknown-person': {
      const typed = shortened(refusal.typed);
      return refusal.known.length === 0 ? refused('unknown-person', { typed }) : refused('unknown-person-known', { typed, known: refusal.known.map((person) => nameOf(shop, person)).join(', ') });
    }
    case 'one-of-us':
      return refused('one-of-us', { person: nameOf(shop, refusal.person) });
    case 'cannot-take':
      return refused('cannot-take', { person: nameOf(shop, refusal.person), role: saySteps(setting, `role-${refusal.role}`) });
    case 'not-in-handover':
      return refused('not-in-handover', { jobs: refusal.jobs.join(', ') });
    case 'offered-to-another':
      return refused('offered-to-another', { to: nameOf(shop, refusal.to) });
    case 'too-long-busy':
      return refused('too-long-busy', { hours: tidy(refusal.most / 60, setting) });
    case 'foreman-only':
      return refusal.foreman === 'channel' ? refused('foreman-only') : refused('foreman-only-named', { foreman: nameOf(shop, refusal.foreman) });
    case 'undo-too-late':
      return refused('undo-too-late', { length: lasting(refusal.enteredAt, now, setting) });
    case 'went-along':
      return refused('went-along', { job: refusal.job, at: clock(refusal.at, setting), who: nameOf(shop, refusal.by) });
    case 'not-yours':
      return refused('not-yours', { who: nameOf(shop, refusal.by) });
  }
}

/** Who may, by role and, where they are few, by name. */
function wrongRole({ role, may }: Of<'wrong-role'>, setting: Setting): string {
  const named = setting.shop.people.filter((person) => may.includes(person.role) && person.role !== 'apprentice').map((person) => person.name);
  const values = { role, roles: rolesWords(may, setting) };
  return named.length === 0 ? sayRefusal(setting, 'wrong-role', values) : sayRefusal(setting, 'wrong-role-named', { ...values, names: named.slice(0, 3).join(', ') });
}

function lampAlone({ job, heater, ends, closes, ...refusal }: Of<'lamp-alone'>, setting: Setting): string {
  const values = { job, heater, setting: degrees(refusal.setting, setting), ends: clock(ends, setting) };
  return closes === null ? sayRefusal(setting, 'lamp-alone-closed', values) : sayRefusal(setting, 'lamp-alone', { ...values, closes: clock(closes, setting) });
}

function strangerRefused({ person, foreman }: Of<'stranger'>, setting: Setting): string {
  const values = { person: nameOf(setting.shop, person), id: person };
  return foreman === 'channel' ? sayRefusal(setting, 'stranger', values) : sayRefusal(setting, 'stranger-named', { ...values, foreman: nameOf(setting.shop, foreman) });
}

function unknownHeater({ lamp, heater, isOther }: Of<'unknown-lamp'>, setting: Setting): string {
  if (isOther) return sayRefusal(setting, 'other-heater', { heater, lamp });
  const known = heater === 'pad' ? setting.shop.pads : setting.shop.lamps;
  return known.length === 0 ? sayRefusal(setting, 'no-heaters', { heater, lamp }) : sayRefusal(setting, 'unknown-heater', { heater, lamp, known: known.join(', ') });
}
