import { instant } from '../../cure/units.js';
import type { When } from '../../repair/commands.js';
import type { JobNo } from '../../repair/ids.js';
import { lineOf } from '../../repair/line-of.js';
import type { OpenStep } from '../../repair/next-steps.js';
import { nameOf } from '../../repair/people.js';
import type { Entering, ProcedureStep } from '../../repair/procedure.js';
import type { Role } from '../../repair/shop.js';
import type { Button } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { languageOf, LOCALES, type Reader } from '../catalogue/speaker.js';
import { saySteps } from '../catalogue/steps.js';
import { cautionLine } from './cautions.js';
import { button, capital, clock, type Setting } from './words.js';

const LONGEST_LABEL = 24;
const MOST_CAUTIONS = 3;
const MOST_TAPS = 3;

/** `**clean**: wipe in one direction. Technician. Vapour: door open …`, or what is left to be said about it. */
export function openLine({ step, state }: OpenStep, job: JobNo, setting: Setting): string {
  if (state.work !== null) return saySteps(setting, 'done-but', { step: step.id, at: clock(state.work.at, setting), left: leftWords({ step, state }, setting).join('; ') });
  const letGo = state.override === null ? '' : saySteps(setting, 'let-go', { who: nameOf(setting.shop, state.override.by) });
  return [whatToDo({ step, state }, setting), letGo, howDone(step, job, state.missing.enter, setting), cautionsOf(step, setting)].filter((part) => part !== '').join(' ');
}

/** What the shop wrote down is shown as written. */
function whatToDo({ step, state: { again } }: OpenStep, reader: Reader): string {
  const values = { step: step.id, act: sentence(step.act), least: saySteps(reader, `least-${step.role}`) };
  if (again === null) return saySteps(reader, 'open', values);
  return again.why === 'late' ? saySteps(reader, 'open-late', values) : saySteps(reader, 'open-renewed', { ...values, other: again.step });
}

/** The same step once more, where act and caution were said a moment ago. */
export function leftLine(open: OpenStep, job: JobNo, setting: Setting): string {
  if (open.state.work !== null) return openLine(open, job, setting);
  const { taps, enter } = open.state.missing;
  const step = open.step.id;
  const left = leftWords({ ...open, state: { ...open.state, missing: { taps, enter, sign: false } } }, setting);
  if (left.length > 0) return saySteps(setting, 'still', { step, left: left.join('; ') });
  const how = howDone(open.step, job, [], setting);
  return how === '' ? saySteps(setting, 'say-done', { step }) : `**${step}**: ${how}`;
}

function leftWords({ step, state: { missing } }: OpenStep, reader: Reader): string[] {
  const taps = missing.taps.flatMap((tap) => step.taps[tap] ?? []).map((tap) => quotedTap(tap, reader));
  return [
    ...(taps.length === 0 ? [] : [saySteps(reader, 'left-tap', { taps: taps.join(', ') })]),
    ...(missing.enter.length === 0 ? [] : [enterWords(missing.enter, reader)]),
    ...(missing.sign && step.sign !== null ? [saySteps(reader, 'left-sign', { roles: rolesWords(step.sign, reader) })] : []),
  ];
}

export const quotedTap = (tap: string, reader: Reader): string => saySteps(reader, 'quoted-tap', { tap });

const sentence = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);

/** What the book shows by itself is entered in the usual way. */
function howDone(step: ProcedureStep, job: JobNo, enter: readonly Entering[], reader: Reader): string {
  const figures = enter.length === 0 ? '' : `${capital(enterWords(enter, reader))}.`;
  const line = shownBy(step, job);
  const typed = line === null ? '' : saySteps(reader, step.done.by === 'check' ? 'type-check' : 'type-entry', { line });
  return [figures, typed].filter((part) => part !== '').join(' ');
}

/** The line that makes the book show it, without the answer to a check; null: somebody says that it is done. */
export function shownBy({ joint, done }: ProcedureStep, job: JobNo): string | null {
  const there = `${job}${joint === null ? '' : ` ${joint}`}`;
  if (done.by === 'word') return null;
  return done.by === 'check' ? `check ${there} ${done.milestone}` : `${ENTRY_WORDS[done.entry]} ${there}`;
}

const ENTRY_WORDS = { pasted: 'paste', closed: 'closed', 'lamp-set': 'lamp' } as const;

const cautionsOf = ({ cautions }: ProcedureStep, reader: Reader): string => cautions.slice(0, MOST_CAUTIONS).map((kind) => cautionLine(kind, reader)).join(' ');

export const enterWords = (what: readonly Entering[], reader: Reader): string => saySteps(reader, 'left-enter', { what: what.map((one) => saySteps(reader, `enter-${one}`)).join(', ') });

/** `technician or foreman`. */
export const rolesWords = (roles: readonly Role[], reader: Reader): string =>
  new Intl.ListFormat(LOCALES[languageOf(reader)], { type: 'disjunction' }).format(roles.map((role) => saySteps(reader, `role-${role}`)));

/** What a person presses next on this step; `named` where more than one step is shown. */
export function openButtons({ step, state }: OpenStep, job: JobNo, named: boolean, reader: Reader): Button[] {
  const subject = { job, joint: null, step: step.id };
  const label = (what: 'sign' | 'done'): string => short(named ? saySteps(reader, `button-${what}-named`, { step: step.id }) : saySteps(reader, `button-${what}`));
  const { taps, enter, sign } = state.missing;
  if (taps.length > 0) return taps.slice(0, MOST_TAPS).flatMap((tap) => (step.taps[tap] === undefined ? [] : [button(short(capital(step.taps[tap])), lineOf({ kind: 'tap', ...subject, tap }))]));
  if (enter.length > 0) return [];
  if (state.work !== null) return sign ? [button(label('sign'), lineOf({ kind: 'sign', ...subject }))] : [];
  if (step.done.by === 'word') return [button(label('done'), lineOf({ kind: 'done', ...subject, when: NOW }))];
  const line = step.done.by === 'entry' && step.done.entry === 'closed' ? shownBy(step, job) : null;
  return line === null ? [] : [button(short(named ? saySteps(reader, 'button-closed-named', { step: step.id }) : sayButtons(reader, 'closed')), line)];
}

/** A button without a stated time means the moment it is pressed. */
const NOW: When = { earliest: instant(0), latest: instant(0), stated: false, confirmed: false };

export const short = (label: string): string => {
  const letters = Array.from(label);
  return letters.length <= LONGEST_LABEL ? label : `${letters.slice(0, LONGEST_LABEL - 1).join('')}…`;
};
