import { walkOf } from './course-for.js';
import { openBlocks } from './course.js';
import type { Situation } from './decision.js';
import type { JobNo, JointNo } from './ids.js';
import { isBegunBy } from './opened-days.js';
import type { Refusal } from './refusal.js';

/**
 * The cartridge that was entered for the step that begins here is out of date, or open too long: nothing begins with it
 * until another one is entered, or the foreman lets it go on. Null: nothing is known against it.
 */
export function labelHold(job: JobNo, joint: JointNo, situation: Situation): Refusal | null {
  const walk = walkOf(job, situation);
  if (walk === null) return null;
  const { steps, ground } = walk.course;
  for (const { step, doings, passes } of steps.filter((one) => isBegunBy(one.step, joint))) {
    const doing = doings.at(-1);
    const blocks = doing === undefined || passes.length > 0 ? [] : openBlocks(step, doing, situation.now, ground).map(({ block }) => block);
    const held = blocks.filter(({ why }) => why === 'expired' || why === 'opened');
    if (held.length > 0) return { code: 'step-blocked', job, step, blocks: held };
  }
  return null;
}
