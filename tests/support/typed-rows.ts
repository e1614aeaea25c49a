import { toText } from '../../src/reply/to-text.js';
import type { Answer } from '../../src/reply/answer.js';
import type { DeskDay } from './desk-day.js';

/**
 * One row of a day in a shop: when, who, what they type, and what the answer has to hold; nothing wanted where the row only sets the scene.
 * `bot` in place of a person: what it says by itself at that moment, and to whom. `down`: it was down until then.
 * `wants` are parts of the text, `[Label]` for a button, `-` in front of what must not stand there.
 */
export type TypedRow = readonly [when: string, who: string, typed: string, ...wants: (string | RegExp)[]];

/** What a day's rows did not get, each with the answer that came instead; plays all rows in order. */
export function missedIn(rows: readonly TypedRow[], day: DeskDay): string[] {
  return rows.flatMap(([when, who, typed, ...wants]) => {
    const answer = who === 'bot' ? postAt(day, when, typed) : heard(day, when, who, typed);
    const missed = answer === null ? wants.map(String) : wants.filter((want) => !holds(answer, want)).map(String);
    return missed.length === 0 && answer !== null ? [] : [`${when} ${who}: ${typed} lacks ${missed.join(', ')} in\n${answer === null ? `nothing; said: ${day.heard().slice(-4).join(', ')}` : shown(answer)}`];
  });
}

function heard(day: DeskDay, when: string, who: string, typed: string): Answer | null {
  if (who !== 'down') return day.says(who, when, typed);
  day.isDownUntil(when);
  return NOTHING;
}

const NOTHING: Answer = { tone: 'plain', lines: [], buttons: [] };

/** `handling kit`: the post of this kind to this person at this very minute. */
function postAt(day: DeskDay, when: string, kindAndWho: string): Answer | null {
  day.at(when);
  const at = day.momentOf(when);
  return day.posts().findLast((post) => post.at === at && `${post.about.kind} ${post.to}` === kindAndWho)?.answer ?? null;
}

function holds(answer: Answer, want: string | RegExp): boolean {
  const text = shown(answer);
  if (typeof want !== 'string') return want.test(text);
  return want.startsWith('-') ? !text.includes(want.slice(1)) : text.includes(want);
}

const shown = (answer: Answer): string => [toText(answer), answer.buttons.map(({ label }) => `[${label}]`).join(' ')].join('\n');
