import { describe, expect, it } from 'vitest';
import { forecast, type MilestoneForecast } from '../../../src/cure/forecast.js';
import type { MilestoneKind } from '../../../src/cure/card.js';
import { personId } from '../../../src/repair/ids.js';
import type { Check } from '../../../src/repair/job.js';
import { checkState, recheckAfter } from '../../../src/repair/rounds.js';
import { cardNamed } from '../../support/card-shelf.js';
import { joint, lampSet, on, read, said } from '../../support/joint.js';

const forecastOf = (card: string, kind: MilestoneKind, ...heat: Parameters<typeof joint>[1] & object): MilestoneForecast => {
  const found = forecast(cardNamed(card), joint('10:10', heat)).find((one) => one.kind === kind);
  if (found === undefined) throw new Error(`no ${kind}`);
  return found;
};

/** Due 11:30; a quarter of its wait is 20 min. */
const P2 = forecastOf('P2', 'handling', lampSet('10:10', 35));

/** `11:30:08 soft tomek`; Ines is the foreman, Kit an apprentice. */
function check(line: string): Check {
  const [at = '', result, by = ''] = line.split(' ');
  return { milestone: 'handling', result: result === 'hard' ? 'hard' : 'soft', at: on(at), by: personId(by), foreman: by === 'ines', apprentice: by === 'kit' };
}

function state(...lines: string[]): string {
  const { phase, round, dueAt, conflict, answer, first } = checkState(P2, lines.map(check));
  const looked = first === null || phase === 'confirmed' ? '' : ` first ${first.by}`;
  return `${phase} ${round} ${said(dueAt)}${conflict ? ' conflict' : ''}${answer === null ? '' : ` by ${answer.by}`}${looked}`;
}

describe('the check of a milestone', () => {
  it.each<[string, readonly string[], string]>([
    ['is open until somebody answers', [], 'open 1 11:30'],
    ['is confirmed by a person', ['11:31 hard wren'], 'confirmed 1 11:30 by wren'],
    ['does not count an answer from before the due time', ['11:29:59 hard wren'], 'open 1 11:30'],
    ['counts the due minute itself', ['11:30 hard wren'], 'confirmed 1 11:30 by wren'],
    ['is looked at first by an apprentice, and stays due', ['11:31 hard kit'], 'open 1 11:30 first kit'],
    ['is not confirmed by an apprentice who looks twice', ['11:31 hard kit', '11:35 hard kit'], 'open 1 11:30 first kit'],
    ['is confirmed by the second tap', ['11:31 hard kit', '11:35 hard wren'], 'confirmed 1 11:30 by wren'],
    ['is soft by an apprentice as by anybody', ['11:30 soft kit'], 'open 2 11:50 by kit'],
    ['hard by an apprentice, soft by another: held as soft', ['11:30 hard kit', '11:30:08 soft tomek'], 'open 2 11:50 conflict by tomek'],
    ['hard and then soft by the same apprentice: soft', ['11:30 hard kit', '11:30:08 soft kit'], 'open 2 11:50 by kit'],
    ['soft by a person, hard by an apprentice before the recheck: still soft', ['11:30 soft tomek', '11:40 hard kit'], 'open 2 11:50 by tomek'],
    ['doubted by an apprentice, and looked at again by both', ['11:30 hard tomek', '11:31 soft kit', '11:51 hard kit', '11:52 hard tomek'], 'confirmed 2 11:51 by tomek'],
    ['doubted by an apprentice who has not looked again', ['11:30 hard tomek', '11:31 soft kit', '11:51 hard tomek'], 'open 2 11:51 conflict by kit'],
    ['doubted by a technician: no apprentice settles it', ['11:30 hard wren', '11:31 soft tomek', '11:51 hard kit'], 'open 2 11:51 conflict by tomek'],
    ['is one check for the same answer twice', ['11:31 hard wren', '11:31:01 hard tomek'], 'confirmed 1 11:30 by wren'],
    ['is soft: again after a quarter of the wait, from the minute it was said', ['11:30:08 soft tomek'], 'open 2 11:50 by tomek'],
    ['is soft twice within the recheck: one answer', ['11:30:08 soft tomek', '11:31 soft wren'], 'open 2 11:50 by tomek'],
    ['is soft again at the recheck: held, no third timer', ['11:30:08 soft tomek', '11:50 soft tomek'], 'held 2 11:50 by tomek'],
    ['hard, then soft 8 s later: held as soft', ['11:30 hard wren', '11:30:08 soft tomek'], 'open 2 11:50 conflict by tomek'],
    ['soft, then hard 8 s later: held as soft', ['11:30 soft tomek', '11:30:08 hard wren'], 'open 2 11:50 conflict by tomek'],
    ['hard at the recheck settles a conflict', ['11:30 hard wren', '11:30:08 soft tomek', '11:52 hard tomek'], 'confirmed 2 11:50 by tomek'],
    ['the foreman settles a conflict as hard', ['11:30 hard wren', '11:30:08 soft tomek', '11:35 hard ines'], 'confirmed 2 11:50 by ines'],
    ['the foreman settles a conflict as soft: looked at again from then', ['11:30 hard wren', '11:30:08 soft tomek', '11:35 soft ines'], 'open 2 11:55 by ines'],
    ['the foreman says soft as well: no second soft', ['11:30 soft tomek', '11:35 soft ines'], 'open 2 11:55 by ines'],
    ['nobody but the foreman lifts a hold', ['11:30 soft tomek', '11:50 soft tomek', '11:52 hard wren'], 'held 2 11:50 by tomek'],
    ['the foreman lifts a hold', ['11:30 soft tomek', '11:50 soft tomek', '11:52 hard ines'], 'confirmed 2 11:50 by ines'],
    ['more soft answers leave a hold as it is', ['11:30 soft tomek', '11:50 soft tomek', '11:52 soft ines', '11:53 soft wren'], 'held 2 11:50 by tomek'],
    ['hard at the recheck, then soft again: that is the second soft', ['11:30 soft tomek', '11:50 hard wren', '11:51 soft tomek'], 'held 2 11:50 conflict by tomek'],
    ['soft after the foreman said hard holds again', ['11:31 hard ines', '11:40 soft tomek'], 'open 2 12:00 conflict by tomek'],
  ])('%s', (_name, lines, expected) => {
    expect(state(...lines)).toBe(expected);
  });

  it('has nothing to confirm while no due time is in sight', () => {
    expect(checkState(forecastOf('P2', 'full', lampSet('10:10', 35)), [check('11:31 hard wren')])).toMatchObject({ phase: 'open', dueAt: null, answer: null });
  });

  it('does not take the answer to another milestone', () => {
    expect(checkState(P2, [{ ...check('11:31 hard wren'), milestone: 'full' }]).phase).toBe('open');
  });
});

describe('the wait for a recheck', () => {
  it.each<[string, MilestoneForecast, number]>([
    ['a quarter of 80 min', P2, 20],
    ['at least 15 min: a quarter of 25 is 6.25', forecastOf('P1', 'handling', read('10:10', 65)), 15],
    ['at most 120 min: a quarter of 2160 is 540', forecastOf('P1', 'full'), 120],
    ['a quarter at the present temperature, rounded up: 184.67 / 4', forecastOf('P1', 'handling', read('10:10', 27)), 47],
  ])('%s', (_name, one, expected) => {
    expect(recheckAfter(one, on('Wed 12:00'))).toBe(expected);
  });
});
