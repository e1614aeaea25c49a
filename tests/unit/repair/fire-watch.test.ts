import { describe, expect, it } from 'vitest';
import { minutes, plus } from '../../../src/cure/units.js';
import { runningOutlooks } from '../../../src/repair/book.js';
import { needsSomebody } from '../../../src/repair/fire-watch.js';
import { waitingList } from '../../../src/repair/waiting.js';
import { FIRE_WATCH } from '../../../src/repair/watch-card.js';
import { personId } from '../../../src/repair/ids.js';
import { exampleShop } from '../../support/example-shop.js';
import { on, said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

/** An hour of watch by the example shop; welding over at 10:00. */
function watched(shift = new Shift()): Shift {
  shift.enters('tomek', '09:40', { kind: 'weld', job: '501' });
  shift.enters('tomek', '10:00', { kind: 'done', job: '501', step: 'weld' });
  return shift;
}

const waiting = (shift: Shift, when: string) =>
  waitingList(runningOutlooks(shift.situation('ines', on(when)).book, shift.shop, shift.jobs()), on(when)).map(({ outlook, waitsFor, state, dueAt }) => `${outlook.cure.job} ${waitsFor} ${state} ${said(dueAt)}`);

describe('a fire watch', () => {
  it('runs from the end of the hot work for as long as the shop says', () => {
    expect(watched().due('501', 'fire-watch')).toBe('11:00');
    expect(watched(new Shift({ fireWatch: minutes(90) })).due('501', 'fire-watch')).toBe('11:30');
  });

  it('runs without anybody having said that they weld', () => {
    const shift = new Shift();
    shift.enters('tomek', '10:00', { kind: 'done', job: '501', step: 'weld' });
    expect(shift.due('501', 'fire-watch')).toBe('11:00');
  });

  it('starts again with every weld, begun or over, and with none that was before it', () => {
    const shift = watched();
    shift.enters('tomek', '10:20', { kind: 'weld', job: '501' });
    expect(shift.outlook('501').milestones).toEqual([]);
    shift.enters('tomek', '10:30', { kind: 'done', job: '501', step: 'weld' });
    expect(shift.due('501', 'fire-watch')).toBe('11:30');
    expect(shift.outlooks('501')).toHaveLength(1);
    shift.until('11:29');
    expect(shift.heard()).toEqual([]);
  });

  it('is not over by the clock while anybody still welds, whatever the step that burned says', () => {
    const shift = watched();
    shift.enters('wren', '10:20', { kind: 'weld', job: '501', joint: 'j3' });
    shift.enters('tomek', '10:25', { kind: 'weld', job: '501', joint: 'j2' });
    shift.enters('tomek', '10:40', { kind: 'done', job: '501', joint: 'j2', step: 'weld' });
    shift.until('11:19');
    expect(shift.heard()).toEqual([]);
    expect(shift.outlook('501').cure.closed).toBeNull();
    shift.enters('wren', '11:19', { kind: 'done', job: '501', step: 'weld' });
    expect(shift.due('501', 'fire-watch')).toBe('12:19');
  });

  it('follows the hot work that goes on, whoever says its end, and again when that is taken back', () => {
    const shift = watched();
    shift.enters('wren', '10:20', { kind: 'weld', job: '501', joint: 'j3' });
    shift.enters('ines', '10:40', { kind: 'done', job: '501', joint: 'j2', step: 'weld' });
    expect(shift.due('501', 'fire-watch')).toBe('11:40');
    shift.enters('ines', '10:41', { kind: 'undo' });
    expect(shift.outlook('501').cure.closed).toBeNull();
  });

  it('is over by the clock for owner and foreman at once, again every 5 min, outside hours as well', () => {
    const shift = new Shift();
    shift.enters('tomek', '16:30', { kind: 'weld', job: '501' });
    shift.enters('tomek', '16:40', { kind: 'done', job: '501', step: 'weld' });
    shift.until('17:46');
    expect(shift.heard('fire-watch')).toEqual(['17:40 fire-watch tomek', '17:40 fire-watch ines', '17:45 fire-watch tomek', '17:45 fire-watch ines']);
    expect(shift.posts.every(({ route }) => route === 'alone')).toBe(true);
  });

  it('cannot be put off, nor muted by whoever is busy', () => {
    const shift = watched();
    shift.enters('tomek', '10:55', { kind: 'busy', minutes: minutes(60) });
    shift.until('11:01');
    expect(shift.heard('fire-watch')).toEqual(['11:00 fire-watch tomek', '11:00 fire-watch ines']);
    expect(shift.says('tomek', '11:02', { kind: 'later', job: '501' })).toMatchObject({ ok: false });
  });

  it('ends only by a person who looked, by name, and not before its time', () => {
    const shift = watched();
    expect(shift.says('tomek', '10:40', { kind: 'check', job: '501', milestone: 'fire-watch', result: 'hard' })).toMatchObject({ ok: false, refusal: { code: 'not-due' } });
    shift.enters('tomek', '11:02', { kind: 'check', job: '501', milestone: 'fire-watch', result: 'hard' });
    const posts = shift.posts.length;
    shift.until('15:00');
    expect(shift.posts).toHaveLength(posts);
    expect(waiting(shift, '15:00')).toEqual([]);
  });

  it('asks whether the work is over where nobody says so', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:40', { kind: 'weld', job: '501' });
    shift.until('10:41');
    expect(shift.heard('fire-watch')).toEqual(['10:40 fire-watch tomek', '10:40 fire-watch ines']);
    shift.enters('tomek', '10:42', { kind: 'weld', job: '501' });
    shift.until('11:41');
    expect(shift.heard('fire-watch')).toHaveLength(2);
  });

  it('is taken back with its entry', () => {
    const shift = watched();
    shift.enters('tomek', '10:05', { kind: 'undo' });
    expect(shift.outlook('501').cure.closed).toBeNull();
    shift.enters('ines', '10:06', { kind: 'undo', entry: shift.outlook('501').cure.hotWork[0]?.entry ?? null });
    expect(shift.outlooks('501')).toEqual([]);
  });
});

describe('a fire watch whose owner goes home', () => {
  const shop = exampleShop();
  const people = [...shop.people, { id: personId('joan'), name: 'Joan', role: 'technician', unit: null, language: 'en', chatId: null } as const];
  const SHIFTS = [
    { name: 'early', days: [1, 2, 3, 4, 5] as const, begins: 6 * 60, ends: 14 * 60, people: [personId('joan')] },
    { name: 'late', days: [1, 2, 3, 4, 5] as const, begins: 14 * 60, ends: 22 * 60, people: [personId('wren'), personId('tomek')] },
  ];
  const shifted = (): Shift => new Shift({ people, shifts: SHIFTS });

  it('goes to everybody at work and the foreman, and not on to whoever went home', () => {
    const shift = shifted();
    shift.enters('joan', '13:55', { kind: 'done', job: '501', step: 'weld' });
    shift.until('15:00');
    expect(shift.heard('fire-watch').sort()).toEqual(['14:55 fire-watch ines', '14:55 fire-watch tomek', '14:55 fire-watch wren', '15:00 fire-watch ines', '15:00 fire-watch tomek', '15:00 fire-watch wren']);
  });

  it('goes on to those who come when its owner leaves in the middle of it', () => {
    const shift = shifted();
    shift.enters('joan', '12:54', { kind: 'done', job: '501', step: 'weld' });
    shift.until('14:00');
    expect(shift.heard('fire-watch')).toEqual(['13:54 fire-watch joan', '13:54 fire-watch ines', '13:59 fire-watch joan', '13:59 fire-watch ines']);
    shift.until('14:05');
    expect(shift.heard('fire-watch').slice(4).sort()).toEqual(['14:04 fire-watch ines', '14:04 fire-watch tomek', '14:04 fire-watch wren']);
  });

  it('goes to whoever took it over, or said that they stay', () => {
    const taken = shifted();
    taken.enters('joan', '13:55', { kind: 'done', job: '501', step: 'weld' });
    taken.enters('joan', '13:56', { kind: 'hand', job: '501', to: 'Wren' });
    taken.until('14:56');
    expect(taken.heard('fire-watch')).toEqual(['14:55 fire-watch wren', '14:55 fire-watch ines']);
    const stays = shifted();
    stays.enters('joan', '13:55', { kind: 'done', job: '501', step: 'weld' });
    stays.enters('joan', '13:56', { kind: 'stay', job: '501' });
    stays.until('14:56');
    expect(stays.heard('fire-watch')).toEqual(['14:55 fire-watch joan', '14:55 fire-watch ines']);
  });

  it('is said to nobody more often than every quarter of an hour after the first half, and goes on, never to nobody', () => {
    const shift = shifted();
    shift.enters('joan', '13:55', { kind: 'done', job: '501', step: 'weld' });
    shift.until('23:00');
    const wren = shift.posts.filter(({ kind, to }) => kind === 'fire-watch' && to === 'wren').map(({ saidAt }) => said(saidAt));
    expect(wren.slice(0, 9)).toEqual(['14:55', '15:00', '15:05', '15:10', '15:15', '15:20', '15:25', '15:40', '15:55']);
    expect(shift.posts.some(({ kind, saidAt }) => kind === 'fire-watch' && saidAt > on('22:30'))).toBe(true);
  });
});

describe('smoke on a fire watch', () => {
  it.each(['10:10', '11:05'])('at %s is an alarm at once and until the foreman decides; then the watch starts again', (at) => {
    const shift = watched();
    shift.until(at);
    const before = shift.posts.length;
    shift.enters('wren', at, { kind: 'check', job: '501', milestone: 'fire-watch', result: 'soft' });
    const minutesLater = said(plus(on(at), minutes(6)));
    shift.until(minutesLater);
    expect(shift.posts.slice(before).map(({ kind, to }) => `${kind} ${to}`)).toEqual(expect.arrayContaining(['safety tomek', 'safety ines', 'safety wren']));
    expect(waiting(shift, minutesLater)).toEqual([`501 decision held ${at}`]);
    expect(shift.says('tomek', minutesLater, { kind: 'check', job: '501', milestone: 'fire-watch', result: 'hard' })).toMatchObject({ ok: false, refusal: { code: 'held', reason: 'smoke' } });
    shift.enters('ines', '11:30', { kind: 'release', job: '501', reason: 'tape smouldered, cold now' });
    expect(shift.due('501', 'fire-watch')).toBe('12:30');
    const released = shift.posts.length;
    shift.until('12:29');
    expect(shift.posts).toHaveLength(released);
  });

  it('is taken while the work still goes on', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:40', { kind: 'weld', job: '501' });
    shift.enters('tomek', '09:45', { kind: 'check', job: '501', milestone: 'fire-watch', result: 'soft' });
    shift.until('09:46');
    expect(shift.heard('safety')).toEqual(expect.arrayContaining(['09:45 safety tomek', '09:45 safety ines', '09:45 safety wren']));
  });

  it('reported twice is one report', () => {
    const shift = watched();
    shift.enters('tomek', '10:10', { kind: 'check', job: '501', milestone: 'fire-watch', result: 'soft' });
    expect(shift.enters('wren', '10:11', { kind: 'check', job: '501', milestone: 'fire-watch', result: 'soft' })).toMatchObject({ facts: [], notes: [{ note: 'already-confirmed' }] });
  });
});

describe('a fire watch beside a cure on the same joint', () => {
  function both(): Shift {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(30) });
    return watched(shift);
  }

  it('takes no reading, no lamp, no scrap and no bare answer from it', () => {
    const shift = both();
    const decided = shift.enters('tomek', '10:05', { kind: 'read', job: '501', value: warm(30) });
    expect(decided).toMatchObject({ about: { cure: { card: 'P1' } } });
    expect(shift.says('tomek', '10:06', { kind: 'lamp', job: '501', setting: warm(95, 'C') })).toMatchObject({ ok: false, refusal: { code: 'over-lamp-maximum' } });
    expect(shift.says('tomek', '10:07', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ ok: false, refusal: { milestone: 'handling' } });
    expect(shift.enters('tomek', '10:08', { kind: 'scrap', job: '501' })).toMatchObject({ about: { cure: { card: 'P1' } } });
    expect(shift.due('501', 'fire-watch')).toBe('11:00');
  });

  it('is no heated joint, and is not restarted by a panel that moves', () => {
    const shift = both();
    expect(shift.outlook('501').heat.lamp).toBe('never');
    shift.enters('tomek', '10:10', { kind: 'moved', job: '501' });
    expect(shift.due('501', 'fire-watch')).toBe('11:00');
  });

  it('is listed besides it, and never asks for a second joint', () => {
    const shift = both();
    expect(waiting(shift, '10:05')).toContain('501 fire-watch running 11:00');
    expect(waiting(shift, '10:05')).toHaveLength(2);
    const other = watched();
    other.enters('tomek', '10:05', { kind: 'cure', job: '501', card: 'P1' });
    expect(other.outlooks('501').map(({ cure }) => cure.card.name)).toEqual([FIRE_WATCH, 'P1']);
  });

  it('takes no word about a joint for an answer, not even as the newest question or where nothing else is', () => {
    const shift = both();
    shift.until('11:01');
    expect(shift.says('tomek', '11:02', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ ok: false, refusal: { milestone: 'handling' } });
    expect(waiting(shift, '11:03').some((line) => line.includes('fire-watch'))).toBe(true);
    const alone = watched();
    expect(alone.says('wren', '11:02', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ ok: false, refusal: { code: 'watch-own-word' } });
  });
});

describe('a fire watch that ends after closing', () => {
  it('needs a named person, before the weld and after it, until somebody says so', () => {
    const shift = new Shift();
    shift.enters('tomek', '16:20', { kind: 'weld', job: '501' });
    expect(needsSomebody(shift.outlook('501'), on('16:20'), shift.shop)).toBe(true);
    shift.enters('wren', '16:25', { kind: 'stay', job: '501' });
    expect(needsSomebody(shift.outlook('501'), on('16:20'), shift.shop)).toBe(false);
    shift.enters('tomek', '16:40', { kind: 'done', job: '501', step: 'weld' });
    expect(needsSomebody(shift.outlook('501'), on('16:40'), shift.shop)).toBe(false);
  });

  it('needs nobody where the shop is open to its end', () => {
    const shift = watched();
    expect(needsSomebody(shift.outlook('501'), on('10:00'), shift.shop)).toBe(false);
  });
});
