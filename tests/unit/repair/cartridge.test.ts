import { describe, expect, it } from 'vitest';
import type { CartridgeLabel } from '../../../src/repair/commands.js';
import { said } from '../../support/joint.js';
import { Shift } from '../../support/shift.js';
import { aStep, code, Walk } from '../../support/walk.js';

const NOTHING: CartridgeLabel = { batch: null, expiry: null, opened: null };
const label = (figures: Partial<CartridgeLabel>): CartridgeLabel => ({ ...NOTHING, ...figures });
const GOOD = { batch: '66-C', expiry: '03/27', opened: '2026-03-01' };

/** Pasted on Monday 2 March 2026 at 08:00; the example card P1 lets a cartridge be open for 30 days. */
function pasted(figures: Partial<CartridgeLabel>): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1', label: label(figures) });
  return shift;
}

const told = (shift: Shift, at: string, { batch, expiry, opened }: Partial<CartridgeLabel>): Shift => {
  const figures = [batch == null ? [] : [{ what: 'batch' as const, text: batch }], expiry == null ? [] : [{ what: 'expiry' as const, text: expiry }], opened == null ? [] : [{ what: 'opened' as const, text: opened }]].flat();
  const [first = { what: 'batch' as const, text: '' }, ...more] = figures;
  shift.enters('tomek', at, { kind: 'enter', job: '501', ...first, more });
  return shift;
};

const held = (shift: Shift): string => said(shift.outlook('501').cartridge?.heldSince ?? null);
const faults = (shift: Shift): string[] => shift.outlook('501').cartridge?.bad?.faults.map(({ what, text }) => `${what} ${text}`) ?? [];

describe('a cartridge that was named with the paste', () => {
  it.each<[string, Partial<CartridgeLabel>, string]>([
    ['in date', { expiry: '03/26', opened: '2026-02-28' }, 'never'],
    ['on its last day', { expiry: '2026-03-02' }, 'never'],
    ['a day too old', { expiry: '2026-03-01' }, '08:00'],
    ['a month too old', { expiry: '02/26' }, '08:00'],
    ['opened on the last day that counts', { opened: '2026-02-01' }, 'never'],
    ['open for a day too long', { opened: '2026-01-31' }, '08:00'],
    ['only with its batch', { batch: '55-B' }, 'never'],
  ])('%s', (_, figures, expected) => {
    expect(held(pasted(figures))).toBe(expected);
  });

  it('is out of date by the moment of the paste, however late the panel is closed and the cure looked at', () => {
    const shift = pasted({ expiry: '2026-03-02' });
    shift.enters('tomek', '08:30', { kind: 'closed', job: '501' });
    expect(held(told(shift, 'Wed 08:00', { batch: '55-B' }))).toBe('never');
  });

  it('is not asked for', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(shift.outlook('501').cartridge).toBeNull();
  });

  it('with a date that nobody can read changes nothing', () => {
    const shift = new Shift();
    for (const figures of [{ expiry: 'soon' }, { opened: '2026-03-03' }]) {
      for (const kind of ['paste', 'cure'] as const) expect(code(shift.says('tomek', '08:00', { kind, job: '501', card: 'P1', label: label(figures) }))).toBe('odd-figure');
    }
    expect(shift.facts).toEqual([]);
  });

  it('holds a cure that begins with its closing as well', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P2', label: label({ expiry: '01/26' }) });
    expect(held(shift)).toBe('08:00');
  });
});

describe('held for its cartridge', () => {
  const expired = (): Shift => {
    const shift = pasted({ batch: '55-B', expiry: '01/26' });
    shift.enters('tomek', '08:20', { kind: 'closed', job: '501' });
    return shift;
  };

  it('no strength is announced or confirmed, and the foreman is asked once', () => {
    const shift = expired();
    shift.until('18:00');
    expect(shift.heard()).toEqual(['08:00 decision ines']);
    expect(shift.due('501', 'handling')).toBe('13:20');
    expect(code(shift.says('tomek', '13:30', { kind: 'check', job: '501', milestone: 'handling', result: 'hard' }))).toBe('held');
  });

  it('only the foreman lets it go on, and what was known is decided for good', () => {
    const shift = expired();
    expect(code(shift.says('tomek', '09:00', { kind: 'release', job: '501', reason: 'it is fine' }))).toBe('foreman-only');
    shift.enters('ines', '09:01', { kind: 'release', job: '501', reason: 'maker says six months more' });
    expect(held(shift)).toBe('never');
    expect(faults(shift)).toEqual(['expiry 01/26']);
    expect(held(told(shift, '09:05', { expiry: '01/26' }))).toBe('never');
    shift.until('13:20');
    expect(shift.heard('handling')).toEqual(['13:20 handling tomek']);
  });

  it('what turns out against it after that is decided anew', () => {
    const shift = expired();
    shift.enters('ines', '09:01', { kind: 'release', job: '501', reason: 'maker says six months more' });
    expect(held(told(shift, '09:30', { opened: '2025-11-01' }))).toBe('09:30');
    shift.until('09:31');
    expect(shift.heard('decision')).toEqual(['08:00 decision ines', '09:30 decision ines']);
  });

  it('late words about the label hold it from then on', () => {
    const shift = pasted({});
    shift.enters('tomek', '08:20', { kind: 'closed', job: '501' });
    expect(held(told(shift, '09:00', { batch: '55-B', expiry: '01/26' }))).toBe('09:00');
  });

  it('a slip that is taken back was none', () => {
    const shift = told(pasted({ expiry: '03/27' }), '08:05', { expiry: '03/25' });
    expect(held(shift)).toBe('08:05');
    shift.enters('tomek', '08:06', { kind: 'undo' });
    expect(held(shift)).toBe('never');
  });
});

describe('another cartridge', () => {
  it.each<[string, Partial<CartridgeLabel>, Partial<CartridgeLabel>, string]>([
    ['a good one lifts it', { batch: '55-B', expiry: '01/26' }, GOOD, 'never'],
    ['a date read wrong the first time is put right', { expiry: '01/26' }, { expiry: '01/27' }, 'never'],
    ['of a batch alone nobody knows whether it is any better', { batch: '55-B', expiry: '01/26' }, { batch: '66-C' }, '08:00'],
    ['good in something else than what was wrong it lifts nothing', { batch: '55-B', opened: '2025-11-01' }, { batch: '66-C', expiry: '03/27' }, '08:00'],
    ['a bad one holds as well', { batch: '55-B', expiry: '03/27' }, { batch: '66-C', expiry: '02/26' }, '08:05'],
    ['the old one\'s dates are not its own', { batch: '55-B', expiry: '03/27', opened: '2025-11-01' }, { batch: '66-C', opened: '2026-03-01' }, 'never'],
  ])('%s', (_, first, second, expected) => {
    expect(held(told(pasted(first), '08:05', second))).toBe(expected);
  });

  it('comes too late once the panel is closed: the bead in the joint is from the old one', () => {
    const shift = pasted({ batch: '55-B', expiry: '01/26' });
    shift.enters('tomek', '08:20', { kind: 'closed', job: '501' });
    expect(held(told(shift, '08:25', GOOD))).toBe('08:00');
  });

  it('came too late where the panel turns out to have been closed before', () => {
    const shift = told(pasted({ batch: '55-B', expiry: '01/26' }), '08:15', GOOD);
    expect(held(shift)).toBe('never');
    shift.enters('tomek', '08:20', { kind: 'closed', job: '501', at: '08:10' });
    expect(held(shift)).toBe('08:00');
  });
});

describe('in a procedure', () => {
  const bond = (openedDays: number | null) => aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' }, enter: ['batch', 'expiry', 'opened'], openedDays });
  const since = (walk: Walk): string => said(walk.outlook('501').cartridge?.heldSince ?? null);
  const open = (walk: Walk, opened: string): Walk => {
    walk.enters('tomek', '07:55', { kind: 'enter', job: '501', what: 'batch', text: '55-B', more: [{ what: 'expiry', text: '03/27' }, { what: 'opened', text: opened }] });
    walk.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    return walk;
  };

  it('the card\'s limit counts where it is the earlier one, and where the procedure has none', () => {
    expect(since(open(Walk.through(bond(60)), '2026-01-20'))).toBe('08:00');
    expect(since(open(Walk.through(bond(null)), '2026-01-20'))).toBe('08:00');
    expect(since(open(Walk.through(bond(60)), '2026-02-20'))).toBe('never');
  });

  it('the procedure\'s is kept where that is the earlier one', () => {
    const walk = Walk.through(bond(7));
    expect(() => open(walk, '2026-02-20')).toThrow('step-blocked');
    expect(since(late(Walk.through(bond(7)), '2026-02-20'))).toBe('08:05');
  });

  const late = (walk: Walk, opened: string): Walk => {
    walk.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    walk.enters('tomek', '08:05', { kind: 'enter', job: '501', what: 'batch', text: '55-B', more: [{ what: 'expiry', text: '03/27' }, { what: 'opened', text: opened }] });
    return walk;
  };

  it('what is typed with the paste is entered for the step', () => {
    const walk = Walk.through(bond(28));
    walk.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1', label: GOOD });
    expect(walk.stands('bond', '08:01')).toBe('done 08:00 tomek');
  });

  it('one word of the foreman is about the step and the bead', () => {
    const overridden = late(Walk.through(bond(28)), '2025-12-01');
    overridden.enters('ines', '08:10', { kind: 'override', job: '501', step: 'bond', reason: 'maker says so' });
    expect(since(overridden)).toBe('never');
    const released = late(Walk.through(bond(28)), '2025-12-01');
    released.enters('ines', '08:10', { kind: 'release', job: '501', reason: 'maker says so' });
    expect([since(released), released.stands('bond', '08:11')]).toEqual(['never', 'overridden 08:10 ines']);
  });

  it('what was let go on before the paste is not asked again', () => {
    const walk = Walk.through(bond(28));
    walk.enters('tomek', '07:55', { kind: 'enter', job: '501', what: 'expiry', text: '01/26', more: [{ what: 'batch', text: '55-B' }, { what: 'opened', text: '2026-03-01' }] });
    walk.enters('ines', '07:56', { kind: 'override', job: '501', step: 'bond', reason: 'maker says so' });
    walk.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(since(walk)).toBe('never');
  });
});

describe('without anything laid from it', () => {
  it('there is nothing to enter it for', () => {
    const shift = new Shift();
    expect(code(shift.says('tomek', '08:00', { kind: 'enter', job: '501', what: 'batch', text: '55-B' }))).toBe('unknown-job');
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(code(shift.says('tomek', '08:01', { kind: 'enter', job: '501', what: 'metal', text: '19' }))).toBe('no-procedure');
  });
});
