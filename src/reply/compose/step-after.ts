import type { AirReading } from '../../cure/air.js';
import { courseOf } from '../../repair/course.js';
import type { EntryNo } from '../../repair/ids.js';
import type { Job } from '../../repair/job.js';
import type { Outlook } from '../../repair/outlook.js';
import { stepsAt } from '../../repair/step-state.js';
import type { Answer } from '../answer.js';
import { saySteps } from '../catalogue/steps.js';
import { blocksWords } from './block-words.js';
import { openButtons, openLine } from './step-line.js';
import { line, type Setting } from './words.js';

interface Entered {
  readonly job: Job;
  readonly outlooks: readonly Outlook[];
  readonly air: readonly AirReading[];
  readonly entry: EntryNo | null;
}

const MOST_BUTTONS = 5;

/** An entry about a cure that shows the work of a step: what is still to be said about that step, or why it does not count. */
export function withStepAfter(said: Answer, { job, outlooks, air, entry }: Entered, setting: Setting): Answer {
  const course = entry === null ? null : courseOf(job, outlooks, setting.shop, air);
  const shown = course?.steps.find(({ doings }) => doings.some(({ mark }) => mark?.entry === entry));
  const found = course === null || shown === undefined ? undefined : stepsAt(course, setting.now).find(({ step }) => step.id === shown.step.id);
  if (found === undefined) return said;
  const { step, state } = found;
  if (state.is === 'blocked') return { ...said, lines: [line(saySteps(setting, 'does-not-count', { step: step.id, blocks: blocksWords(state.blocks, setting) })), ...said.lines] };
  if (state.is !== 'open' || state.work === null) return said;
  const buttons = [...openButtons({ step, state }, job.no, false, setting), ...said.buttons];
  return { ...said, lines: [...said.lines, line(openLine({ step, state }, job.no, setting))], buttons: buttons.slice(0, MOST_BUTTONS) };
}
