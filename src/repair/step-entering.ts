import { minutesBetween, type Instant } from '../cure/units.js';
import type { EnteredFigure, JobCommand } from './commands.js';
import type { Note, Situation } from './decision.js';
import type { ProcedureStep } from './procedure.js';
import { openedUntil, readLabelDate } from './label-date.js';
import { readClimate } from './step-figures.js';
import { isThrough, type StepAt } from './step-state.js';

type Enter = Extract<JobCommand, { readonly kind: 'enter' }>;

/** No sheet says so: only mentioned. Days. */
const OPENED_LONG_AGO = 60;
const DAY = 24 * 60;

/** Whose figure it is: a step that lacks it, done ones first; else the next that asks for it; else a correction of the last. */
export function stepToEnter({ what, joint }: Enter, steps: readonly StepAt[]): ProcedureStep | null {
  const asking = steps.filter(({ step }) => step.enter.includes(what) && (joint === null || step.joint === joint));
  const lacking = asking.filter(({ state }) => state.is === 'open' && state.missing.enter.includes(what));
  const found = lacking.find(({ state }) => state.is === 'open' && state.work !== null) ?? lacking[0] ?? asking.find((one) => one.state.is === 'open') ?? asking.find((one) => !isThrough(one)) ?? asking.at(-1);
  return found?.step ?? null;
}

/** The figure as it is kept, and what is to be said about it; null: it is none. */
export function fittingFigure({ what, text }: EnteredFigure, { openedDays }: Pick<ProcedureStep, 'openedDays'>, { shop, by, now }: Situation): { readonly text: string; readonly notes: readonly Note[] } | null {
  const typed = text.trim();
  switch (what) {
    case 'batch':
    case 'photo':
      return typed === '' ? null : { text: typed, notes: [] };
    case 'air':
    case 'metal': {
      const figure = readClimate(typed, shop.people.find((person) => person.id === by)?.unit ?? shop.unit);
      return figure === null ? null : { text: figure.text, notes: [] };
    }
    case 'expiry': {
      const date = readLabelDate(typed, shop.zone);
      return date === null ? null : { text: typed, notes: date.ends <= now ? [{ note: 'label-held', what, text: typed, days: null }] : [] };
    }
    case 'opened': {
      const date = readLabelDate(typed, shop.zone);
      if (date === null || date.begins > now) return null;
      const isTooLong = openedDays !== null && openedUntil(date, openedDays, shop.zone) <= now;
      return { text: typed, notes: isTooLong ? [{ note: 'label-held', what, text: typed, days: openedDays }] : openedDays === null ? openedNotes(date.begins, now) : [] };
    }
  }
}

function openedNotes(opened: Instant, now: Instant): Note[] {
  const days = Math.floor(minutesBetween(opened, now) / DAY);
  return days > OPENED_LONG_AGO ? [{ note: 'opened-long-ago', days }] : [];
}
