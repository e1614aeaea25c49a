import type { Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import type { Reminder } from '../../repair/reminder.js';
import { takersAt } from '../../repair/takeover.js';
import type { Button } from '../answer.js';
import { sayLists } from '../catalogue/lists.js';
import { sayTakeover } from '../catalogue/takeover.js';
import { button, clock, type Setting } from './words.js';

const MOST_JOBS = 8;
const MOST_TAKERS = 3;

/** At the end of a shift: to whoever still has cures running, or, where they did not answer, to the foreman on duty. */
export function takeoverLines(reminder: Reminder, all: readonly Outlook[], setting: Setting): string[] {
  const end = clock(reminder.dueAt, setting);
  const every = jobsOf(all);
  const first = every.slice(0, MOST_JOBS).join(', ');
  const jobs = every.length > MOST_JOBS ? sayTakeover(setting, 'jobs-more', { jobs: first, more: `${every.length - MOST_JOBS}` }) : first;
  const job = every[0] ?? '';
  if (reminder.step === 0) {
    const taker = takersAt(setting.shop, reminder.to === 'channel' ? ownerOf(all) : reminder.to, reminder.dueAt)[0]?.name ?? sayTakeover(setting, 'some-name');
    return [sayTakeover(setting, 'shift-ends', { end, jobs }), sayTakeover(setting, 'stay-yours'), sayTakeover(setting, 'not-all', { taker, job })];
  }
  const owners = [...new Set(all.map(({ cure }) => nameOf(setting.shop, cure.owner)))].join(', ');
  return [sayTakeover(setting, 'nobody', { owners, end, jobs }), sayTakeover(setting, 'comes-to-you'), sayTakeover(setting, 'one-by-one', { job })];
}

export function takeoverButtons(reminder: Reminder, all: readonly Outlook[], setting: Setting): Button[] {
  const takers = takersAt(setting.shop, ownerOf(all), reminder.dueAt).slice(0, MOST_TAKERS);
  const [only, ...others] = jobsOf(all);
  if (reminder.step === 0) return takers.map(({ id, name }) => button(name, `handover ${id}`));
  return only === undefined || others.length > 0 ? [button(sayLists(setting, 'button-list'), 'who waits')] : takers.map(({ id, name }) => button(name, `hand ${only} to ${id}`));
}

const ownerOf = (all: readonly Outlook[]): Outlook['cure']['owner'] => all[0]?.cure.owner ?? missing();

const missing = (): never => {
  throw new Error('A question about a handover is about at least one cure.');
};

const jobsOf = (all: readonly Outlook[]): string[] => [...new Set(all.map(({ cure }) => cure.job))];
