import { describe, expect, it } from 'vitest';
import type { EntryCommand } from '../../../src/repair/commands.js';
import { decide } from '../../../src/repair/decide.js';
import { personId } from '../../../src/repair/ids.js';
import { mayEnter } from '../../../src/repair/may-enter.js';
import type { Role } from '../../../src/repair/shop.js';
import { exampleShop } from '../../support/example-shop.js';
import { on } from '../../support/joint.js';
import { Shift } from '../../support/shift.js';

type Who = Role | 'stranger';
const WHO: readonly Who[] = ['apprentice', 'technician', 'foreman', 'quality', 'owner', 'stranger'];

/** Who may, one letter each: Apprentice, Technician, Foreman, Quality, oWner, Stranger; a dot is a no. Complete by the compiler. */
const MATRIX: Readonly<Record<EntryCommand['kind'], string>> = {
  paste: 'ATF...',
  closed: 'ATF...',
  moved: 'ATF...',
  cure: 'ATF...',
  lamp: 'ATF...',
  off: 'ATF...',
  on: 'ATF...',
  read: 'ATF...',
  air: 'ATF...',
  check: 'ATF...',
  later: 'ATF...',
  depth: 'ATF...',
  'build-up': 'ATF...',
  'wrong-card': 'ATF...',
  stay: 'ATF...',
  scrap: '.TF...',
  undo: 'ATFQ..',
  release: '..F...',
  begin: 'ATF...',
  done: 'ATF...',
  sign: 'ATFQ..',
  tap: 'ATF...',
  enter: 'ATF...',
  hold: '..FQ..',
  override: '..F...',
  weld: 'ATF...',
  smoke: 'ATFQWS',
  hand: 'ATF...',
  handover: 'ATF...',
  accept: 'ATF...',
  busy: 'ATF...',
  move: 'ATF...',
  adopt: '..F...',
  'turn-away': '..F...',
};

/** One person of every role but `stranger`. */
const people = WHO.flatMap((role) => (role === 'stranger' ? [] : [{ id: personId(role), name: role, role, chatId: null, language: 'en' as const, unit: null }]));
const shift = new Shift({ people });
const isKind = (kind: string): kind is EntryCommand['kind'] => kind in MATRIX;

describe.each(Object.keys(MATRIX).filter(isKind))('%s', (kind) => {
  it.each(WHO.map((who, index) => [who, MATRIX[kind].charAt(index) !== '.'] as const))('by %s: %s', (who, may) => {
    const refusal = mayEnter({ kind }, { shop: shift.shop, by: personId(who) });
    expect(refusal === null).toBe(may);
    if (refusal !== null) expect(refusal.code).toMatch(who === 'stranger' ? /^stranger$/ : /^(?:wrong-role|foreman-only)$/);
  });
});

it('is asked before anything else is decided', () => {
  const stranger = shift.situation('nobody', on('09:00'));
  expect(decide(shift.command({ kind: 'cure', job: '501', card: 'P1' }, on('09:00')), stranger)).toMatchObject({ ok: false, refusal: { code: 'stranger', person: 'nobody' } });
});

describe('an apprentice', () => {
  function due(card: string, at = '09:00'): Shift {
    const one = new Shift();
    one.enters('tomek', at, { kind: 'cure', job: '501', card });
    return one;
  }

  it('may not say that full strength is reached, but that it is not', () => {
    const one = due('P1', '07:30');
    one.enters('tomek', '12:30', { kind: 'check', job: '501', result: 'hard' });
    one.enters('tomek', '12:31', { kind: 'read', job: '501', value: { value: 65, unit: 'C' } });
    one.until('15:00');
    expect(one.says('wren', '15:00', { kind: 'check', job: '501', milestone: 'full', result: 'hard' })).toMatchObject({ ok: false, refusal: { code: 'wrong-role', may: ['technician', 'foreman'] } });
    expect(one.says('wren', '15:00', { kind: 'check', job: '501', milestone: 'full', result: 'soft' })).toMatchObject({ ok: true, facts: [{ fact: { result: 'soft', role: 'apprentice' } }] });
  });

  it('is one first check, however often she taps', () => {
    const one = due('P1', '07:30');
    one.enters('wren', '12:31', { kind: 'check', job: '501', result: 'hard' });
    expect(one.says('wren', '12:32', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ ok: true, facts: [], notes: [{ note: 'already-confirmed', by: 'wren' }] });
  });

  it('settles no doubt of somebody else', () => {
    const one = due('P1', '07:30');
    one.enters('tomek', '12:31', { kind: 'check', job: '501', result: 'soft' });
    expect(one.says('wren', '12:32', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ ok: false, refusal: { code: 'not-due' } });
  });

  it('and a technician who differ are held as soft until the foreman decides', () => {
    const one = due('P1', '07:30');
    one.enters('wren', '12:31', { kind: 'check', job: '501', result: 'hard' });
    expect(one.enters('tomek', '12:31:08', { kind: 'check', job: '501', result: 'soft' })).toMatchObject({ notes: [{ note: 'two-answers', other: 'wren' }] });
    expect(one.outlook('501').milestones[0]?.check.conflict).toBe(true);
  });
});

it('nobody is foreman by not being known', () => {
  expect(mayEnter({ kind: 'release' }, { shop: exampleShop({ people: [] }), by: personId('ines') })).toMatchObject({ code: 'stranger', foreman: 'channel' });
});
