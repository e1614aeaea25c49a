import type { Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import type { Reminder } from '../../repair/reminder.js';
import { takersAt } from '../../repair/takeover.js';
import type { Button } from '../answer.js';
import { button, clock, type Setting } from './words.js';

const MOST_JOBS = 8;
const MOST_TAKERS = 3;

/** At the end of a shift: to whoever still has cures running, or, where they did not answer, to the foreman on duty. */
export function takeoverLines(reminder: Reminder, all: readonly Outlook[], setting: Setting): string[] {
  const end = clock(reminder.dueAt, setting);
  const jobs = jobsOf(all);
  const named = `${jobs.slice(0, MOST_JOBS).join(', ')}${jobs.length > MOST_JOBS ? ` and ${jobs.length - MOST_JOBS} more` : ''}`;
  if (reminder.step === 0) {
    const taker = takersAt(setting.shop, reminder.to === 'channel' ? ownerOf(all) : reminder.to, reminder.dueAt)[0]?.name ?? 'NAME';
    return [`**Your shift ends ${end}**, still running: ${named}. **Who takes over?**`, 'They stay yours until somebody accepts.', `Not all of them: \`handover ${taker} except ${jobs[0] ?? ''}\`.`];
  }
  const owners = [...new Set(all.map(({ cure }) => nameOf(setting.shop, cure.owner)))].join(', ');
  return [`**Nobody has taken over** from ${owners}, whose shift ended ${end}: ${named}.`, 'What comes due comes to you.', `Give them away one by one: \`hand ${jobs[0] ?? ''} to NAME\`.`];
}

export function takeoverButtons(reminder: Reminder, all: readonly Outlook[], { shop }: Setting): Button[] {
  const takers = takersAt(shop, ownerOf(all), reminder.dueAt).slice(0, MOST_TAKERS);
  const [only, ...others] = jobsOf(all);
  if (reminder.step === 0) return takers.map(({ id, name }) => button(name, `handover ${id}`));
  return only === undefined || others.length > 0 ? [button('List', 'who waits')] : takers.map(({ id, name }) => button(name, `hand ${only} to ${id}`));
}

const ownerOf = (all: readonly Outlook[]): Outlook['cure']['owner'] => all[0]?.cure.owner ?? missing();

const missing = (): never => {
  throw new Error('A question about a handover is about at least one cure.');
};

const jobsOf = (all: readonly Outlook[]): string[] => [...new Set(all.map(({ cure }) => cure.job))];
