import { LEAST_DEW_MARGIN } from '../../cure/dew-margin.js';
import { instant, type Instant } from '../../cure/units.js';
import type { When } from '../../repair/commands.js';
import type { JobNo } from '../../repair/ids.js';
import { lineOf } from '../../repair/line-of.js';
import type { OpenStep } from '../../repair/next-steps.js';
import { nameOf } from '../../repair/people.js';
import type { Entering, ProcedureStep } from '../../repair/procedure.js';
import type { Role } from '../../repair/shop.js';
import type { Block } from '../../repair/step-needs.js';
import type { Button } from '../answer.js';
import { cautionLine } from './cautions.js';
import { button, capital, clock, degrees, MILESTONE_WORDS, tidy, type Setting } from './words.js';

const LONGEST_LABEL = 24;
const MOST_CAUTIONS = 3;
const MOST_TAPS = 3;

/** `**clean**: wipe in one direction. Technician. Vapour: door open …`, or what is left to be said about it. */
export function openLine({ step, state }: OpenStep, job: JobNo, setting: Setting): string {
  if (state.work !== null) return `**${step.id}** was done ${clock(state.work.at, setting)}, still: ${leftWords({ step, state }).join('; ')}.`;
  const again = state.again === null ? '' : state.again.why === 'late' ? ' again: it is too long ago' : ` again: ${state.again.step} was done after it`;
  const letGo = state.override === null ? '' : ` Let go on by ${nameOf(setting.shop, state.override.by)}.`;
  return [`**${step.id}**${again}: ${sentence(step.act)} ${capital(leastRole(step))}.${letGo}`, howDone(step, job, state.missing.enter), cautionsOf(step)].filter((part) => part !== '').join(' ');
}

/** The same step once more, where act and caution were said a moment ago. */
export function leftLine(open: OpenStep, job: JobNo, setting: Setting): string {
  if (open.state.work !== null) return openLine(open, job, setting);
  const { taps, enter } = open.state.missing;
  const left = leftWords({ ...open, state: { ...open.state, missing: { taps, enter, sign: false } } });
  return left.length > 0 ? `**${open.step.id}**: still ${left.join('; ')}.` : `**${open.step.id}**: ${howDone(open.step, job, []) || 'say when it is done.'}`;
}

function leftWords({ step, state: { missing } }: OpenStep): string[] {
  const taps = missing.taps.flatMap((tap) => step.taps[tap] ?? []).map((tap) => `“${tap}”`);
  return [...(taps.length === 0 ? [] : [`tap ${taps.join(', ')}`]), ...(missing.enter.length === 0 ? [] : [enterWords(missing.enter)]), ...(missing.sign && step.sign !== null ? [`**sign**: ${rolesWords(step.sign)}`] : [])];
}

const sentence = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);

const leastRole = (step: ProcedureStep): string => (step.role === 'foreman' ? 'foreman' : `${step.role} or above`);

/** What the book shows by itself is entered in the usual way. */
function howDone(step: ProcedureStep, job: JobNo, enter: readonly Entering[]): string {
  const there = `${job}${step.joint === null ? '' : ` ${step.joint}`}`;
  if (step.done.by === 'word') return enter.length === 0 ? '' : `${capital(enterWords(enter))}.`;
  const figures = enter.length === 0 ? '' : `${capital(enterWords(enter))}. `;
  if (step.done.by === 'check') return `${figures}Type \`check ${there} ${step.done.milestone} hard\` or soft, once it is due.`;
  const word = { pasted: 'paste', closed: 'closed', 'lamp-set': 'lamp' }[step.done.entry];
  return `${figures}Type \`${word} ${there}\` when it happens.`;
}

const cautionsOf = ({ cautions }: ProcedureStep): string => cautions.slice(0, MOST_CAUTIONS).map(cautionLine).join(' ');

export const enterWords = (what: readonly Entering[]): string => `enter ${what.map((one) => ENTER_WORDS[one]).join(', ')}`;

const ENTER_WORDS: Readonly<Record<Entering, string>> = { batch: 'batch', expiry: 'expiry date', opened: 'opened date', air: 'air with humidity', metal: 'metal temperature', photo: 'photo' };

export const rolesWords = (roles: readonly Role[]): string => (roles.length < 2 ? roles.join('') : `${roles.slice(0, -1).join(', ')} or ${roles.at(-1) ?? ''}`);

/** What a person presses next on this step; `named` where more than one step is shown. */
export function openButtons({ step, state }: OpenStep, job: JobNo, named: boolean): Button[] {
  const label = (word: string): string => short(named ? `${word} ${step.id}` : word);
  const subject = { job, joint: null, step: step.id };
  const { taps, enter, sign } = state.missing;
  if (taps.length > 0) return taps.slice(0, MOST_TAPS).flatMap((tap) => (step.taps[tap] === undefined ? [] : [button(short(capital(step.taps[tap])), lineOf({ kind: 'tap', ...subject, tap }))]));
  if (enter.length > 0) return [];
  if (state.work !== null) return sign ? [button(label('Sign'), lineOf({ kind: 'sign', ...subject }))] : [];
  if (step.done.by === 'word') return [button(label('Done'), lineOf({ kind: 'done', ...subject, when: NOW }))];
  return step.done.by === 'entry' && step.done.entry === 'closed' ? [button(label('Closed'), `closed ${job}${step.joint === null ? '' : ` ${step.joint}`}`)] : [];
}

/** A button without a stated time means the moment it is pressed. */
const NOW: When = { earliest: instant(0), latest: instant(0), stated: false, confirmed: false };

export const short = (label: string): string => {
  const letters = Array.from(label);
  return letters.length <= LONGEST_LABEL ? label : `${letters.slice(0, LONGEST_LABEL - 1).join('')}…`;
};

/** Why a step has to wait, and when that may be over. */
export function blockWords(block: Block, setting: Setting): string {
  const { opensAt } = block;
  switch (block.why) {
    case 'step':
      return `after **${block.step}**`;
    case 'confirmed':
      return `${MILESTONE_WORDS[block.milestone]} on ${block.joint} is not confirmed${from(opensAt, setting)}`;
    case 'too-hot':
      return `${block.joint} has to read below ${degrees(block.temperature, setting)}`;
    case 'dew-unknown':
      return 'read air with humidity and metal';
    case 'dew':
      return `**HOLD**: metal only ${apart(block.margin.margin, setting)} above the ${block.margin.frost ? 'frost' : 'dew'} point of ${degrees(block.margin.point, setting)}, ${apart(LEAST_DEW_MARGIN, setting)} needed`;
    case 'again':
      return `**${block.step}** is too long ago (limit ${clock(block.limit, setting)}): do it again`;
    case 'outdated':
      return `**${block.renewed}** was done again after **${block.step}**: do that again`;
    case 'not-before':
      return `not before **${opensAt === null ? '?' : clock(opensAt, setting)}** (after ${block.step})`;
    case 'cures':
      return `${block.joints.join(', ')} still wait${block.joints.length === 1 ? 's' : ''} for strength${from(opensAt, setting)}`;
    case 'fire-watch':
      return `the fire watch is not over and answered${from(opensAt, setting)}`;
    case 'expired':
      return `**expired: HOLD** (${block.text}), only the foreman can go on, with a reason`;
    case 'opened':
      return `**open too long: HOLD** (since ${block.text}, ${block.days} days at most), only the foreman can go on, with a reason`;
    case 'out-of-turn':
      return `**HOLD**: done all the same ${clock(block.at, setting)} by ${nameOf(setting.shop, block.by)}, out of turn (${blockWords(block.first, setting)}). The foreman decides`;
  }
}

/** The same where the foreman has let it go on. */
export function liftedWords(block: Block, setting: Setting): string {
  switch (block.why) {
    case 'expired':
      return `expired (${block.text})`;
    case 'opened':
      return `open since ${block.text}, ${block.days} days at most`;
    case 'dew':
      return `metal only ${apart(block.margin.margin, setting)} above the ${block.margin.frost ? 'frost' : 'dew'} point`;
    case 'out-of-turn':
      return `done out of turn (${liftedWords(block.first, setting)})`;
    default:
      return blockWords(block, setting);
  }
}

const from = (opensAt: Instant | null, setting: Setting): string => (opensAt === null ? '' : opensAt <= setting.now ? `, due since ${clock(opensAt, setting)}: check it` : ` (earliest **${clock(opensAt, setting)}**)`);

/** A difference of two temperatures; one that is too close never reads as enough. */
const apart = (kelvin: number, { shop }: Setting): string => (shop.unit === 'F' ? `${Math.floor(kelvin * 18 + 1e-6) / 10} °F` : `${tidy(kelvin)} °C`);

/** The reasons one after the other, and the last moment that has to pass. */
export const blocksWords = (blocks: readonly Block[], setting: Setting): string => blocks.map((block) => blockWords(block, setting)).join('; ');
