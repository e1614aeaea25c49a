import type { JobCommand } from '../../repair/commands.js';
import type { PersonId } from '../../repair/ids.js';
import { curesOf, type Job } from '../../repair/job.js';
import { nameOf } from '../../repair/people.js';
import { undecidedSmoke } from '../../repair/smoke.js';
import type { Answer } from '../answer.js';
import { sayButtons } from '../catalogue/buttons.js';
import { sayHotWork } from '../catalogue/hot-work.js';
import { fireFirst } from './fire-watch.js';
import type { JobEntered } from './job-entry.js';
import { answer, button, clock, type Setting } from './words.js';

/** Smoke or fire was called: what to do first of all, then who hears of it. */
export function composeSmoke({ job, by, notes, entry }: JobEntered<Extract<JobCommand, { readonly kind: 'smoke' }>>, setting: Setting): Answer {
  if (job === null) return answer('alarm', [called(by, setting), sayHotWork(setting, 'everybody-told'), sayHotWork(setting, 'which-car')]);
  if (notes.some(({ note }) => note === 'already-confirmed')) return answer('alarm', [smokeLine(job, setting), sayHotWork(setting, 'everybody-told')]);
  const noted = sayHotWork(setting, 'smoke-noted', { title: job.no, at: clock(setting.now, setting), who: nameOf(setting.shop, by), fire: fireFirst(setting) });
  return answer('alarm', [noted, sayHotWork(setting, 'everybody-told'), sayHotWork(setting, 'only-the-foreman')], entry === null ? [] : [button(sayButtons(setting, 'undo'), `undo ${entry}`)]);
}

/** The same to everybody else, where nobody said at which car. */
export const composeFireCalled = (by: PersonId, setting: Setting): Answer => answer('alarm', [called(by, setting)]);

const called = (by: PersonId, setting: Setting): string => sayHotWork(setting, 'fire-called', { at: clock(setting.now, setting), who: nameOf(setting.shop, by), fire: fireFirst(setting) });

/** Said with every answer about a car until the foreman has decided on its smoke; null: there is none. */
export function smokeLine(job: Job, setting: Setting): string | null {
  const smoke = curesOf(job).flatMap((cure) => (cure.scrapped ? [] : (undecidedSmoke(cure) ?? []))).at(-1);
  return smoke === undefined ? null : sayHotWork(setting, 'smoke-stands', { job: job.no, at: clock(smoke.at, setting), who: nameOf(setting.shop, smoke.by), fire: fireFirst(setting) });
}
