import { describe, expect, it } from 'vitest';
import { readLine } from '../../../src/grammar/read-line.js';
import { jobNo, jointNo } from '../../../src/repair/ids.js';
import { questionLine } from '../../../src/repair/question-line.js';
import { CARDS } from '../../support/card-shelf.js';
import { exampleShop } from '../../support/example-shop.js';
import { on } from '../../support/joint.js';
import { latestStartCommand, whatIfCommand } from '../../support/questions.js';

const SHOP = exampleShop();
const read = (line: string) => readLine(line, { now: on('Tue 10:00'), zone: SHOP.zone, cards: CARDS.map((card) => card.name), lamps: SHOP.lamps, pads: SHOP.pads, openJobs: [], procedures: [] });

describe('a question as a line', () => {
  it.each([
    whatIfCommand(),
    whatIfCommand({ joint: jointNo('j2'), setting: { value: 65, unit: 'C' } }),
    whatIfCommand({ setting: { value: 150, unit: 'F' }, heater: 'pad', from: on('Tue 14:00') }),
    whatIfCommand({ unheated: true, from: on('Tue 14:00') }),
    whatIfCommand({ unheated: true, air: { value: 18, unit: null } }),
    whatIfCommand({ setting: { value: 40, unit: null }, air: { value: 30, unit: null } }),
    whatIfCommand({ air: { value: 25, unit: null } }),
    whatIfCommand({ air: { value: 68, unit: 'F' }, from: on('Tue 09:15') }),
    latestStartCommand({ readyBy: on('Fri 16:00') }),
    latestStartCommand({ joint: jointNo('j2'), card: 'S1', milestone: 'through', depth: 3, readyBy: on('Fri 16:00') }),
    latestStartCommand({ card: 'P1', milestone: 'handling', readyBy: on('Fri 16:00') }),
    { kind: 'when', job: jobNo('501'), joint: jointNo('j2') } as const,
    { kind: 'why', job: jobNo('501'), joint: null } as const,
  ])('is read as the same question: $kind', (question) => {
    expect(read(questionLine(question))).toEqual({ ok: true, command: question });
  });

  it('is one that a person could type', () => {
    expect(questionLine(whatIfCommand({ setting: { value: 65, unit: 'C' }, from: on('Tue 14:00') }))).toBe('what if 501 lamp 65C from 2026-03-03T14:00:00.000Z');
    expect(questionLine(latestStartCommand({ card: 'S1', depth: 3, readyBy: on('Fri 16:00') }))).toBe('latest start 501 S1 3 mm by 2026-03-06T16:00:00.000Z');
  });
});
