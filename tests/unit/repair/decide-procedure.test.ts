import { describe, expect, it } from 'vitest';
import { celsius, minutes } from '../../../src/cure/units.js';
import type { Decision } from '../../../src/repair/decision.js';
import { bansOn, carBans, type BannedDeed } from '../../../src/repair/car-bans.js';
import { jointNo, stepId } from '../../../src/repair/ids.js';
import { nextSteps } from '../../../src/repair/next-steps.js';
import { on, said } from '../../support/joint.js';
import { warm } from '../../support/shift.js';
import { after, aProcedure, aStep, code, Walk } from '../../support/walk.js';

const job = '501';
const lines = (decision: Decision): string[] => (!decision.ok && 'choices' in decision.refusal ? decision.refusal.choices.map(({ line }) => line) : []);
const notes = (decision: Decision): string[] => (decision.ok ? decision.notes.map(({ note }) => note) : []);

describe('begin', () => {
  const two = [aProcedure([aStep('a')]), aProcedure([aStep('b')], { name: 'glass', title: 'windscreen' })];

  it('freezes the procedure into the job', () => {
    const walk = new Walk(two);
    walk.enters('wren', '08:00', { kind: 'begin', job, procedure: 'glass' });
    expect(walk.course().procedure).toEqual(two[1]);
  });

  it.each<[string, string | null]>([['GLASS', 'glass'], ['wind', 'glass'], ['glas', 'glass'], ['pannel', 'panel']])('understands %s', (typed, expected) => {
    const walk = new Walk(two);
    walk.enters('tomek', '08:00', { kind: 'begin', job, procedure: typed });
    expect(walk.course().procedure.name).toBe(expected);
  });

  it('asks where none is named, even if there is only one, and where there is none of that name', () => {
    const only = new Walk([aProcedure([aStep('a')])]).says('tomek', '08:00', { kind: 'begin', job, procedure: null });
    expect([code(only), lines(only)]).toEqual(['which-procedure', ['begin 501 panel']]);
    const other = new Walk(two).says('tomek', '08:00', { kind: 'begin', job, procedure: 'sill' });
    expect([code(other), lines(other)]).toEqual(['which-procedure', ['begin 501 panel', 'begin 501 glass']]);
    expect(code(new Walk([]).says('tomek', '08:00', { kind: 'begin', job, procedure: null }))).toBe('no-procedures');
  });

  it('is refused while another runs, and possible after its last step', () => {
    const walk = new Walk(two);
    walk.enters('tomek', '08:00', { kind: 'begin', job, procedure: 'panel' });
    expect(code(walk.says('tomek', '08:01', { kind: 'begin', job, procedure: 'glass' }))).toBe('procedure-runs');
    walk.enters('tomek', '08:02', { kind: 'done', job, step: 'a' });
    expect(code(walk.says('tomek', '08:03', { kind: 'begin', job, procedure: 'glass' }))).toBe('ok');
  });
});

describe('done', () => {
  const notBefore = aStep('prime', { needs: [{ need: 'not-before', step: stepId('clean'), minutes: minutes(10) }] });

  it('finds the step by its name, its beginning, and within one slip', () => {
    for (const typed of ['dry-fit', 'Dry Fit', 'dry', 'dri-fit', 'work at dry']) {
      const walk = Walk.through(aStep('dry-fit'), aStep('clean'));
      walk.enters('tomek', '08:10', { kind: 'done', job, step: typed });
      expect(walk.stands('dry-fit', '08:11')).toBe('done 08:10 tomek');
    }
  });

  it('asks where two could be meant, and tells them apart by the joint', () => {
    const walk = Walk.through(aStep('weld-left', { joint: 'j1' }), aStep('weld-right', { joint: 'j2' }));
    const two = walk.says('tomek', '08:10', { kind: 'done', job, step: 'weld' });
    expect([code(two), lines(two)]).toEqual(['which-step', ['done 501 weld-left', 'done 501 weld-right']]);
    expect(code(walk.says('tomek', '08:11', { kind: 'done', job, joint: 'j2', step: 'weld' }))).toBe('ok');
    expect(walk.stands('weld-right', '08:12')).toBe('done 08:11 tomek');
  });

  it('without a name: the only step that is open for this person', () => {
    const walk = Walk.through(aStep('plan', { role: 'foreman' }), aStep('mask', { role: 'apprentice' }));
    walk.enters('wren', '08:10', { kind: 'done', job, step: null });
    expect(walk.stands('mask', '08:11')).toBe('done 08:10 wren');
    expect(code(walk.says('wren', '08:12', { kind: 'done', job, step: null }))).toBe('nothing-open');
    walk.enters('ines', '08:13', { kind: 'done', job, step: null });
    expect(walk.stands('plan', '08:14')).toBe('done 08:13 ines');
  });

  it('out of turn: refused with the reason and the minute at which it may open', () => {
    const walk = Walk.through(aStep('clean'), notBefore);
    const early = walk.says('tomek', '08:05', { kind: 'done', job, step: 'prime' });
    expect(!early.ok && early.refusal.code === 'step-blocked' ? early.refusal.blocks.map(({ why }) => why) : []).toEqual(['step']);
    walk.enters('tomek', '08:10', { kind: 'done', job, step: 'clean' });
    const soon = walk.says('tomek', '08:15', { kind: 'done', job, step: 'prime' });
    expect(!soon.ok && soon.refusal.code === 'step-blocked' ? soon.refusal.blocks.map(({ opensAt }) => said(opensAt)) : []).toEqual(['08:20']);
    // Nor by saying that it was earlier, or later.
    expect(code(walk.says('tomek', '08:25', { kind: 'done', job, step: 'prime', at: '08:19' }))).toBe('step-blocked');
    expect(code(walk.says('tomek', '08:25', { kind: 'done', job, step: 'prime', at: '08:40' }))).toBe('future');
    expect(code(walk.says('tomek', '08:25', { kind: 'done', job, step: 'prime', at: '08:20' }))).toBe('ok');
  });

  it.each<[string, string, () => Decision]>([
    ['step-role', 'an apprentice', () => Walk.through(aStep('clean')).says('wren', '08:10', { kind: 'done', job, step: 'clean' })],
    ['wrong-role', 'whoever looks at quality', () => Walk.through(aStep('clean')).says('quinn', '08:10', { kind: 'done', job, step: 'clean' })],
    ['step-missing', 'a tap is left', () => Walk.through(aStep('clean', { taps: ['two cloths'] })).says('tomek', '08:10', { kind: 'done', job, step: 'clean' })],
    ['step-missing', 'a figure is left', () => Walk.through(aStep('clean', { enter: ['batch'] })).says('tomek', '08:10', { kind: 'done', job, step: 'clean' })],
    ['step-by-book', 'the book shows it', () => Walk.through(aStep('set', { joint: 'j1', done: { by: 'entry', entry: 'closed' } })).says('tomek', '08:10', { kind: 'done', job, step: 'set' })],
    ['which-step', 'no such step', () => Walk.through(aStep('clean')).says('tomek', '08:10', { kind: 'done', job, step: 'varnish' })],
    ['no-procedure', 'none was begun', () => { const walk = new Walk([]); walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'P1' }); return walk.says('tomek', '08:10', { kind: 'done', job, step: 'clean' }); }],
    ['unknown-job', 'no such job', () => Walk.through(aStep('clean')).says('tomek', '08:10', { kind: 'done', job: '777', step: 'clean' })],
    ['nothing-begun', 'nobody begun anything', () => new Walk([]).says('tomek', '08:10', { kind: 'done', step: 'clean' })],
  ])('%s: %s', (expected, _, decision) => {
    expect(code(decision())).toBe(expected);
  });

  it('twice is once', () => {
    const walk = Walk.through(aStep('clean'), aStep('prime'));
    walk.enters('tomek', '08:10', { kind: 'done', job, step: 'clean' });
    const again = walk.says('ines', '08:11', { kind: 'done', job, step: 'clean' });
    expect([again.ok && again.facts.length, notes(again)]).toEqual([0, ['step-already']]);
  });

  it('of a range of time: what must follow soon counts from the earlier end, a wait from the later one, both ask', () => {
    const within = aStep('bond', { needs: [{ need: 'within', step: stepId('clean'), minutes: minutes(45) }] });
    const told = { kind: 'done', job, step: 'clean', from: '08:10', at: '08:20' } as const;
    const soon = Walk.through(aStep('clean'), within);
    soon.enters('tomek', '08:30', told);
    expect(soon.stands('clean', '08:31')).toBe('done 08:10 tomek');
    const waits = Walk.through(aStep('clean'), notBefore);
    waits.enters('tomek', '08:30', told);
    expect(waits.stands('clean', '08:31')).toBe('done 08:20 tomek');
    const both = Walk.through(aStep('clean'), within, notBefore).says('tomek', '08:30', told);
    expect(code(both)).toBe('one-moment');
  });
});

describe('sign', () => {
  const signed = aStep('dry-fit', { sign: ['foreman', 'quality'], taps: ['gap even'] });

  it('only by those who may, only after the work', () => {
    const walk = Walk.through(signed);
    expect(code(walk.says('tomek', '08:05', { kind: 'sign', job, step: 'dry-fit' }))).toBe('step-role');
    expect(code(walk.says('quinn', '08:05', { kind: 'sign', job, step: 'dry-fit' }))).toBe('not-done-yet');
    expect(code(walk.says('ines', '08:06', { kind: 'sign', job, step: 'dry-fit' }))).toBe('step-missing');
    walk.enters('tomek', '08:07', { kind: 'tap', job, step: 'dry-fit', tap: 0 });
    walk.enters('tomek', '08:08', { kind: 'done', job, step: 'dry-fit' });
    walk.enters('quinn', '08:09', { kind: 'sign', job, step: null });
    expect(walk.stands('dry-fit', '08:10')).toBe('signed 08:09 quinn');
    expect(notes(walk.says('ines', '08:11', { kind: 'sign', job, step: 'dry-fit' }))).toEqual(['step-already']);
  });

  it('says that it is done as well, where only that was missing', () => {
    const walk = Walk.through(aStep('plan', { sign: ['foreman'] }));
    walk.enters('ines', '08:05', { kind: 'sign', job, step: 'plan' });
    expect(walk.stands('plan', '08:06')).toBe('signed 08:05 ines');
    expect(code(Walk.through(aStep('clean')).says('ines', '08:05', { kind: 'sign', job, step: 'clean' }))).toBe('no-hold-point');
  });
});

describe('tap and enter', () => {
  it('a tap is counted once, and must be one of the step', () => {
    const walk = Walk.through(aStep('plan'), aStep('bond', { taps: ['both flow'], needs: after('plan') }));
    expect(code(walk.says('tomek', '08:05', { kind: 'tap', job, step: 'bond', tap: 0 }))).toBe('step-blocked');
    walk.enters('tomek', '08:06', { kind: 'done', job, step: 'plan' });
    expect(code(walk.says('tomek', '08:07', { kind: 'tap', job, step: 'bond', tap: 1 }))).toBe('unknown-tap');
    walk.enters('tomek', '08:08', { kind: 'tap', job, step: 'bond', tap: 0 });
    expect(notes(walk.says('wren', '08:09', { kind: 'tap', job, step: 'bond', tap: 0 }))).toEqual(['already-so']);
  });

  it.each<[string, 'expiry' | 'opened' | 'air' | 'metal' | 'batch', string]>([
    ['ok', 'batch', '55-B'],
    ['ok', 'expiry', '31.12.2026'],
    ['ok', 'expiry', '3/27'],
    ['odd-figure', 'expiry', 'soon'],
    ['odd-figure', 'expiry', '2026-13-01'],
    ['ok', 'opened', '2026-02-27'],
    ['odd-figure', 'opened', '2026-03-09'],
    ['ok', 'air', '19 rh 55'],
    ['ok', 'air', '19,5 55%'],
    ['odd-figure', 'air', '190'],
    ['ok', 'metal', '64F'],
    ['odd-figure', 'metal', 'cold'],
    ['odd-figure', 'batch', '  '],
  ])('%s: %s %s', (expected, what, text) => {
    expect(code(Walk.through(aStep('bond', { enter: [what] })).says('tomek', '08:05', { kind: 'enter', job, what, text }))).toBe(expected);
  });

  it('a figure that nobody asked for has no place', () => {
    expect(code(Walk.through(aStep('bond')).says('tomek', '08:05', { kind: 'enter', job, what: 'batch', text: '55-B' }))).toBe('not-asked-for');
  });

  it('says what the dates on a label mean', () => {
    const walk = Walk.through(aStep('bond', { enter: ['expiry', 'opened'] }));
    expect(notes(walk.enters('tomek', '08:05', { kind: 'enter', job, what: 'expiry', text: '02/2026' }))).toEqual(['label-held']);
    // Day or month first: the earlier of the two counts.
    expect(notes(walk.enters('tomek', '08:06', { kind: 'enter', job, what: 'expiry', text: '01/12/2026' }))).toEqual(['label-held']);
    expect(notes(walk.enters('tomek', '08:07', { kind: 'enter', job, what: 'opened', text: '2025-12-31' }))).toEqual(['opened-long-ago']);
    expect(notes(walk.enters('tomek', '08:08', { kind: 'enter', job, what: 'opened', text: '2026-01-01' }))).toEqual([]);
  });
});

describe('hold and release', () => {
  it('stops every step and every hard until the foreman releases the job', () => {
    const walk = Walk.through(aStep('clean'));
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'K', setting: warm(30) });
    expect(code(walk.says('tomek', '08:30', { kind: 'hold', job, reason: 'odd smell' }))).toBe('wrong-role');
    expect(code(walk.says('quinn', '08:30', { kind: 'hold', job, reason: 'x' }))).toBe('reason-missing');
    walk.enters('quinn', '08:31', { kind: 'hold', job, reason: 'odd smell' });
    expect(notes(walk.says('ines', '08:32', { kind: 'hold', job, reason: 'odd smell' }))).toEqual(['already-so']);
    expect(code(walk.says('tomek', '09:10', { kind: 'done', job, step: 'clean' }))).toBe('job-held');
    expect(code(walk.says('tomek', '09:10', { kind: 'check', job, milestone: 'handling', result: 'hard' }))).toBe('job-held');
    expect(code(walk.says('quinn', '09:11', { kind: 'release', job, reason: 'aired' }))).toBe('foreman-only');
    walk.enters('ines', '09:12', { kind: 'release', job, reason: 'aired' });
    expect(code(walk.says('tomek', '09:13', { kind: 'check', job, milestone: 'handling', result: 'hard' }))).toBe('ok');
    expect(code(walk.says('tomek', '09:14', { kind: 'done', job, step: 'clean' }))).toBe('ok');
    expect(code(walk.says('ines', '09:15', { kind: 'release', job, reason: 'again' }))).toBe('nothing-held');
  });
});

describe('override', () => {
  it('is the foreman\'s, with a reason in words, and only where something stands against it', () => {
    const walk = Walk.through(aStep('cartridge', { enter: ['expiry'] }), aStep('clean'));
    walk.enters('tomek', '08:05', { kind: 'enter', job, what: 'expiry', text: '2026-01' });
    expect(code(walk.says('tomek', '08:06', { kind: 'override', job, step: 'cartridge', reason: 'no other here' }))).toBe('foreman-only');
    expect(code(walk.says('ines', '08:06', { kind: 'override', job, step: 'cartridge', reason: 'ok' }))).toBe('reason-missing');
    expect(code(walk.says('ines', '08:06', { kind: 'override', job, step: 'clean', reason: 'no other here' }))).toBe('nothing-held');
    walk.enters('ines', '08:07', { kind: 'override', job, step: null, reason: 'no other here' });
    walk.enters('tomek', '08:08', { kind: 'done', job, step: 'cartridge' });
    expect(walk.stands('cartridge', '08:09')).toBe('overridden 08:07 ines');
  });

  it('lifts what stood against it then, and nothing that comes later', () => {
    const walk = Walk.through(aStep('clean'), aStep('bond', { needs: [...after('clean'), { need: 'joint-below', joint: jointNo('j1'), temperature: celsius(40) }] }));
    walk.enters('ines', '08:05', { kind: 'override', job, step: 'bond', reason: 'was cleaned yesterday' });
    expect(walk.stands('bond', '08:06')).toBe('open');
    walk.enters('tomek', '08:10', { kind: 'cure', job, card: 'P1', setting: warm(60) });
    expect(walk.stands('bond', '08:11')).toBe('blocked too-hot');
  });

  it('stands for a signature that nobody gave', () => {
    const walk = Walk.through(aStep('dry-fit', { sign: ['quality'] }));
    walk.enters('tomek', '08:05', { kind: 'done', job, step: 'dry-fit' });
    walk.enters('ines', '08:06', { kind: 'override', job, step: null, reason: 'quality is ill today' });
    expect(walk.stands('dry-fit', '08:07')).toBe('overridden 08:06 ines');
  });
});

describe('what comes next', () => {
  it('is open side by side, and of the rest the first that waits for a known time', () => {
    const confirmed = aStep('clamps-off', { needs: [{ need: 'confirmed', joint: jointNo('j1'), milestone: 'handling' }] });
    const walk = Walk.through(aStep('a'), aStep('b'), aStep('c', { needs: after('a') }), confirmed);
    const next = (when: string): string[] => {
      const found = nextSteps({ kind: 'next', job: null, joint: null }, walk.situation('tomek', on(when)));
      return found.ok ? [...found.next.open.map(({ step }) => step.id), `waits ${found.next.blocked?.step.id ?? '-'}`] : [found.refusal.code];
    };
    expect(next('08:04')).toEqual(['a', 'b', 'waits -']);
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'K', setting: warm(30) });
    expect(next('08:06')).toEqual(['a', 'b', 'waits clamps-off']);
  });
});

describe('bans across the car', () => {
  const bans = (walk: Walk, deed: BannedDeed): string[] =>
    bansOn(deed, carBans(walk.job(job), walk.outlooks(job))).map((ban) => (ban.grade === 'stop' ? `stop ${ban.material}` : `hold ${ban.waits.outlook.cure.card.name} ${ban.waits.milestone}`));

  it('after wax neither weld nor bake, by its card or by the step', () => {
    const card = new Walk([]);
    card.enters('tomek', '08:00', { kind: 'cure', job, card: 'W1' });
    expect(bans(card, 'weld')).toEqual(['stop W1']);
    expect(bans(card, 'bake')[0]).toBe('stop W1');
    const step = Walk.through(aStep('wax', { starts: ['heat-ban'], act: 'Spray the cavity' }));
    expect(bans(step, 'weld')).toEqual([]);
    step.enters('tomek', '08:10', { kind: 'done', job, step: 'wax' });
    expect(bans(step, 'weld')).toEqual(['stop Spray the cavity']);
    expect(bans(step, 'bake')).toEqual(['stop Spray the cavity']);
  });

  it('no bake while something waits for strength, no sanding before its check', () => {
    const walk = new Walk([]);
    walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'F1' });
    expect(bans(walk, 'bake')).toEqual(['hold F1 sand']);
    expect(bans(walk, 'sand')).toEqual(['hold F1 sand']);
    expect(bans(walk, 'weld')).toEqual([]);
    walk.enters('tomek', '15:01', { kind: 'check', job, milestone: 'sand', result: 'hard' });
    expect([...bans(walk, 'bake'), ...bans(walk, 'sand')]).toEqual([]);
  });

  it('a coat whose time in the oven is still to come keeps nobody from the oven', () => {
    const walk = new Walk([]);
    walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'C1' });
    expect(bans(walk, 'bake')).toEqual(['hold C1 flash-off']);
    walk.enters('tomek', '08:13', { kind: 'check', job, milestone: 'flash-off', result: 'hard' });
    expect(bans(walk, 'bake')).toEqual([]);
  });

  it('no filler over a bond that nobody confirmed, unless the foreman lets it go on', () => {
    const walk = new Walk([]);
    walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'P1' });
    const filler = { kind: 'cure', job, joint: 'j2', card: 'F1' } as const;
    expect(code(walk.says('tomek', '08:30', filler))).toBe('bond-unconfirmed');
    expect(code(walk.says('tomek', '08:31', { kind: 'override', job, step: 'fill', reason: 'other end of the car' }))).toBe('foreman-only');
    walk.enters('ines', '08:31', { kind: 'override', job, step: 'fill', reason: 'other end of the car' });
    expect(code(walk.says('tomek', '08:32', filler))).toBe('ok');
    expect(code(walk.says('ines', '08:33', { kind: 'override', job, step: 'fill', reason: 'other end of the car' }))).toBe('nothing-held');
    // The next bond is another matter.
    walk.enters('tomek', '08:40', { kind: 'paste', job, joint: 'j3', card: 'P1' });
    expect(bans(walk, 'fill')).toEqual(['hold P1 full']);
  });
});
