import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaterialCard, RateLaw } from '../../src/cure/card.js';
import { forecast } from '../../src/cure/forecast.js';
import type { JointHistory } from '../../src/cure/history.js';
import { jointSteps } from '../../src/cure/joint-temperature.js';
import { celsius, instant, plus, type Instant } from '../../src/cure/units.js';
import { outlooks, randomBook } from '../support/random-book.js';
import { anyCard } from '../support/random-card.js';
import { randomHistory } from '../support/random-history.js';
import { anySurplus, minutesAbove, trulyEarned, warmerCourse, type Assumed, type Surplus } from '../support/true-course.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;
/** Rounding dust: what the truth reaches within the same millisecond was not early. */
const DUST = 1;
/** Nothing in a body shop is hotter. */
const HOTTEST = 250;

/** Which temperature a law counts with; a dwell counts only what was measured on the object. */
function assumedBy(law: RateLaw, card: MaterialCard, history: JointHistory): Assumed[] {
  if (law.law !== 'dwell') return jointSteps(history, card.maxPanel);
  return jointSteps(history, card.maxPanel, 'previous').map((step) => (step.source === 'reading' ? step : { ...step, temperature: null }));
}

/** What has truly been waited of the whole by then, 1 or more when it is over; null for laws without a temperature of the joint. */
function trueShare(law: RateLaw, card: MaterialCard, history: JointHistory, at: Instant, surplus: Surplus): number | null {
  const course = warmerCourse(assumedBy(law, card, history), at, surplus, card.maxPanel ?? HOTTEST);
  switch (law.law) {
    case 'credit':
      return trulyEarned(law.rows, course);
    case 'above':
      return minutesAbove(course, law.temperature, history.start) / law.minutes;
    case 'dwell':
      return minutesAbove(course, law.temperature, plus(history.start, law.after)) / law.minutes;
    case 'recipe':
    case 'table':
    case 'depth-root':
    case 'elapsed':
      return null;
  }
}

function earlyLaws(card: MaterialCard, history: JointHistory, surplus: Surplus): string[] {
  return forecast(card, history).flatMap((milestone, index) =>
    milestone.laws.flatMap(({ due }, number) => {
      const law = card.milestones[index]?.laws[number];
      if (due === null || law === undefined) return [];
      const share = trueShare(law, card, history, instant(due + DUST), surplus);
      return share !== null && share < 1 ? [`${milestone.kind} ${law.law} ${share}`] : [];
    }),
  );
}

describe('a strength forecast is never early, whatever the joint truly was at or above what is counted', () => {
  it('from a history', () => {
    fc.assert(
      fc.property(anyCard, randomHistory, anySurplus, (card, history, surplus) => {
        expect(earlyLaws(card, history, surplus)).toEqual([]);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('from what was entered in a shop with nights, weekends and holidays', () => {
    fc.assert(
      fc.property(randomBook, anySurplus, (book, surplus) => {
        for (const { cure, history } of outlooks(book, book.facts)) {
          if (history !== null) expect(earlyLaws(cure.card, history, surplus)).toEqual([]);
        }
      }),
      RUNS,
    );
  }, PATIENCE);

  it('and the test would see a forecast that counts one degree too many', () => {
    const dueTooWarm = (card: MaterialCard, history: JointHistory): boolean => {
      const warmer = { ...history, heat: history.heat.map((event) => (event.kind === 'reading' ? { ...event, value: celsius(event.value + 1) } : event)) };
      return forecast(card, warmer).some(({ laws: [first] }, index) => {
        const law = card.milestones[index]?.laws[0];
        const share = law === undefined || first?.due == null ? null : trueShare(law, card, history, instant(first.due + DUST), { points: [], unknown: 0 });
        return share !== null && share < 1;
      });
    };
    const seen = fc.sample(fc.tuple(anyCard, randomHistory), { numRuns: 2000, seed: 1 }).filter(([card, history]) => dueTooWarm(card, history));
    expect(seen.length).toBeGreaterThan(20);
  });
});
