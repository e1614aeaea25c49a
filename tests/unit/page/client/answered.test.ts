import { expect, test } from 'vitest';
import { isAnswered } from '../../../../src/chat/page/client/answered.js';
import type { CarRow } from '../../../../src/chat/page/client/read.js';
import { MILESTONE_KINDS } from '../../../../src/cure/card.js';
import { REMINDER_KINDS } from '../../../../src/repair/reminder.js';

const about = { job: '501', joint: 'j1', card: 'P1' };
const row = (change: Partial<CarRow>): CarRow => ({ job: '501', joint: 'j1', card: 'P1', waitsFor: 'handling', state: 'due', dueAt: null, owner: 'Tomek', heat: '', share: null, ...change });
const answered = (kind: string, change: Partial<CarRow>): boolean => isAnswered({ about, kind }, [row({ job: '7' }), row(change)]);

test.each(MILESTONE_KINDS)('a question about %s stands while the car is due or held, and is answered once it only runs', (kind) => {
  expect(['due', 'held', 'a state from tomorrow'].map((state) => answered(kind, { state }))).toEqual([false, false, false]);
  expect(['running', 'asleep', 'confirmed'].map((state) => answered(kind, { state }))).toEqual([true, true, true]);
});

test('a car that is due for a later milestone may still owe the earlier answer', () => {
  expect(answered('handling', { waitsFor: 'full', state: 'due' })).toBe(false);
});

test('the question to close the panel is answered when that joint waits for something else', () => {
  expect(answered('open-limit', { waitsFor: 'open-limit', state: 'running' })).toBe(false);
  expect(answered('open-limit', { waitsFor: 'decision', state: 'held' })).toBe(false);
  expect(answered('open-limit', { waitsFor: 'handling', state: 'running' })).toBe(true);
  expect(answered('open-limit', { waitsFor: 'handling', state: 'running', joint: 'j2' })).toBe(false);
  expect(answered('open-limit', { waitsFor: 'handling', state: 'running', card: 'P2' })).toBe(false);
});

test.each(['reading', 'still-on', 'stage', 'decision', 'safety', 'bundle'])('the board does not tell about %s: it stays open', (kind) => {
  expect(['due', 'held', 'running', 'asleep'].map((state) => answered(kind, { state, waitsFor: 'handling' }))).toEqual([false, false, false, false]);
});

test('a car that left the board has nothing open, but a warning is never struck', () => {
  expect(REMINDER_KINDS.filter((kind) => !isAnswered({ about, kind }, [row({ job: '7' })]))).toEqual(['safety']);
});

test('a post about no single joint is never struck', () => {
  expect(isAnswered({ about: { job: null, joint: null, card: null }, kind: 'bundle' }, [])).toBe(false);
  expect(isAnswered({ about: { job: '501', joint: null, card: null }, kind: 'handling' }, [])).toBe(false);
});
