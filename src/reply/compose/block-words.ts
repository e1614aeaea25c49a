import { LEAST_DEW_MARGIN, type DewMargin } from '../../cure/dew-margin.js';
import type { Instant } from '../../cure/units.js';
import { nameOf } from '../../repair/people.js';
import type { Block } from '../../repair/step-needs.js';
import { saySteps } from '../catalogue/steps.js';
import { clock, degrees, milestoneWord, tidy, type Setting } from './words.js';

/** Why a step has to wait, and when that may be over. */
function blockWords(block: Block, setting: Setting): string {
  switch (block.why) {
    case 'step':
      return saySteps(setting, 'after-step', { step: block.step });
    case 'confirmed':
      return until('unconfirmed', block.opensAt, { milestone: milestoneWord(block.milestone, setting), joint: block.joint }, setting);
    case 'too-hot':
      return saySteps(setting, 'too-hot', { joint: block.joint, temperature: degrees(block.temperature, setting) });
    case 'dew-unknown':
      return saySteps(setting, 'dew-unknown');
    case 'dew':
      return saySteps(setting, settlesAs(block.margin), { margin: apart(block.margin.margin, setting), point: degrees(block.margin.point, setting), least: apart(LEAST_DEW_MARGIN, setting) });
    case 'again':
      return saySteps(setting, 'too-long-ago', { step: block.step, limit: clock(block.limit, setting) });
    case 'outdated':
      return saySteps(setting, 'outdated', { renewed: block.renewed, step: block.step });
    case 'not-before':
      return saySteps(setting, 'not-before', { at: block.opensAt === null ? '?' : clock(block.opensAt, setting), step: block.step });
    case 'cures':
      return until('cures', block.opensAt, { joints: block.joints.join(', '), count: block.joints.length }, setting);
    case 'fire-watch':
      return until('fire-watch', block.opensAt, {}, setting);
    case 'expired':
      return saySteps(setting, 'expired', { text: block.text });
    case 'opened':
      return saySteps(setting, 'opened', { text: block.text, days: block.days });
    case 'out-of-turn':
      return saySteps(setting, 'out-of-turn', { at: clock(block.at, setting), who: nameOf(setting.shop, block.by), first: blockWords(block.first, setting) });
  }
}

/** The same where the foreman has let it go on. */
export function liftedWords(block: Block, setting: Setting): string {
  switch (block.why) {
    case 'expired':
      return saySteps(setting, 'lifted-expired', { text: block.text });
    case 'opened':
      return saySteps(setting, 'lifted-opened', { text: block.text, days: block.days });
    case 'dew':
      return saySteps(setting, `lifted-${settlesAs(block.margin)}`, { margin: apart(block.margin.margin, setting) });
    case 'out-of-turn':
      return saySteps(setting, 'lifted-out-of-turn', { first: liftedWords(block.first, setting) });
    default:
      return blockWords(block, setting);
  }
}

/** What may be over at a moment, or should be since. */
function until(what: 'unconfirmed' | 'cures' | 'fire-watch', opensAt: Instant | null, values: Readonly<Record<string, string | number>>, setting: Setting): string {
  if (opensAt === null) return saySteps(setting, what, values);
  return saySteps(setting, opensAt <= setting.now ? `${what}-due` : `${what}-earliest`, { ...values, at: clock(opensAt, setting) });
}

const settlesAs = ({ frost }: DewMargin): 'frost' | 'dew' => (frost ? 'frost' : 'dew');

/** A difference of two temperatures; one that is too close never reads as enough. */
function apart(kelvin: number, setting: Setting): string {
  const { unit } = setting.shop;
  return `${tidy(unit === 'F' ? Math.floor(kelvin * 18 + 1e-6) / 10 : kelvin, setting)} °${unit}`;
}

/** The reasons one after the other, and the last moment that has to pass. */
export const blocksWords = (blocks: readonly Block[], setting: Setting): string => blocks.map((block) => blockWords(block, setting)).join('; ');
