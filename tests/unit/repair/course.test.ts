import { describe, expect, it } from 'vitest';
import { celsius, minutes } from '../../../src/cure/units.js';
import { courseOf } from '../../../src/repair/course.js';
import { jointNo, lampName, stepId } from '../../../src/repair/ids.js';
import type { Need } from '../../../src/repair/procedure.js';
import { Shift, warm } from '../../support/shift.js';
import { after, aStep, Walk } from '../../support/walk.js';

const J1 = jointNo('j1');
const within = (step: string, length: number): Need => ({ need: 'within', step: stepId(step), minutes: minutes(length) });
const notBefore = (step: string, length: number): Need => ({ need: 'not-before', step: stepId(step), minutes: minutes(length) });
const job = '501';

describe('a job without a procedure', () => {
  it('has no course', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job, card: 'P1' });
    expect(courseOf(shift.job(job), shift.outlooks(job), shift.shop, shift.air())).toBeNull();
  });
});

describe('the order of steps', () => {
  it('opens a step when the one before is done, by whom and when', () => {
    const walk = Walk.through(aStep('dry-fit'), aStep('clean', { needs: after('dry-fit') }));
    expect(walk.stands('dry-fit', '08:01')).toBe('open');
    expect(walk.stands('clean', '08:01')).toBe('blocked step dry-fit');
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'dry-fit' });
    expect(walk.stands('dry-fit', '08:21')).toBe('done 08:20 tomek');
    expect(walk.stands('clean', '08:21')).toBe('open');
  });

  it('a late entry counts from when it happened', () => {
    const walk = Walk.through(aStep('dry-fit'), aStep('bond', { joint: 'j1', needs: after('dry-fit'), done: { by: 'entry', entry: 'pasted' } }));
    walk.enters('tomek', '08:30', { kind: 'paste', job, card: 'P1' });
    expect(walk.stands('bond', '08:31')).toBe('blocked out-of-turn (step dry-fit)');
    walk.enters('tomek', '08:32', { kind: 'done', job, step: 'dry-fit', at: '08:10' });
    expect(walk.stands('bond', '08:33')).toBe('done 08:30 tomek');
  });

  it('undo closes again what it opened, and what came of it', () => {
    const walk = Walk.through(aStep('dry-fit'), aStep('clean', { needs: after('dry-fit') }));
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'dry-fit' });
    walk.enters('tomek', '08:21', { kind: 'undo', entry: null });
    expect(walk.stands('dry-fit', '08:22')).toBe('open');
    expect(walk.stands('clean', '08:22')).toBe('blocked step dry-fit');
  });

  it('steps that wait for each other in a circle never open', () => {
    const walk = Walk.through(aStep('a', { needs: after('b') }), aStep('b', { needs: after('a') }));
    expect(walk.stands('a', '08:01')).toBe('blocked step b');
    expect(walk.stands('b', '08:01')).toBe('blocked step a');
  });

  it('nothing that was said before a second procedure counts for it', () => {
    const walk = Walk.through(aStep('clean'));
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'clean' });
    walk.enters('tomek', '09:00', { kind: 'begin', job, procedure: 'panel' });
    expect(walk.stands('clean', '09:01')).toBe('open');
  });
});

describe('taps, figures and the signature', () => {
  const bond = aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' }, taps: ['both components flow', 'bead binned'], enter: ['batch'] });

  it('keep a step from being done, whether they come before or after the work', () => {
    const walk = Walk.through(bond, aStep('set', { needs: after('bond') }));
    walk.enters('tomek', '08:10', { kind: 'tap', job, step: 'bond', tap: 0 });
    walk.enters('tomek', '08:20', { kind: 'paste', job, card: 'P1' });
    expect(walk.stands('bond', '08:21')).toBe('open, done 08:20, tap 1 batch');
    expect(walk.stands('set', '08:21')).toBe('blocked step bond');
    walk.enters('wren', '08:22', { kind: 'tap', job, step: 'bond', tap: 1 });
    walk.enters('tomek', '08:23', { kind: 'enter', job, what: 'batch', text: '55-B' });
    expect(walk.stands('bond', '08:24')).toBe('done 08:20 tomek');
    expect(walk.stands('set', '08:24')).toBe('open');
  });

  it('belong to one doing: after a scrapped paste they are asked for again', () => {
    const walk = Walk.through(bond);
    for (const tap of [0, 1]) walk.enters('tomek', '08:10', { kind: 'tap', job, step: 'bond', tap });
    walk.enters('tomek', '08:11', { kind: 'enter', job, what: 'batch', text: '55-B' });
    walk.enters('tomek', '08:20', { kind: 'paste', job, card: 'P1' });
    expect(walk.stands('bond', '08:21')).toBe('done 08:20 tomek');
    walk.enters('tomek', '08:30', { kind: 'scrap', job, reason: 'wrong mixer' });
    expect(walk.stands('bond', '08:31')).toBe('open, tap 0 tap 1 batch');
  });

  it('a hold point opens the next step only when somebody who may has signed', () => {
    const walk = Walk.through(aStep('dry-fit', { sign: ['foreman', 'quality'] }), aStep('clean', { needs: after('dry-fit') }));
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'dry-fit' });
    expect(walk.stands('dry-fit', '08:21')).toBe('open, done 08:20, sign');
    expect(walk.stands('clean', '08:21')).toBe('blocked step dry-fit');
    walk.enters('quinn', '08:30', { kind: 'sign', job, step: 'dry-fit' });
    expect(walk.stands('dry-fit', '08:31')).toBe('signed 08:30 quinn');
    expect(walk.stands('clean', '08:31')).toBe('open');
  });

  it('work behind a hold point that was signed only afterwards was out of turn', () => {
    const walk = Walk.through(aStep('dry-fit', { sign: ['foreman'] }), aStep('bond', { joint: 'j1', needs: after('dry-fit'), done: { by: 'entry', entry: 'pasted' } }));
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'dry-fit' });
    walk.enters('tomek', '08:25', { kind: 'paste', job, card: 'P1' });
    walk.enters('ines', '08:30', { kind: 'sign', job, step: 'dry-fit' });
    expect(walk.stands('bond', '08:31')).toBe('blocked out-of-turn (step dry-fit)');
  });
});

describe('what the book shows by itself', () => {
  it('closing, the lamp and a check that a person confirmed', () => {
    const walk = Walk.through(
      aStep('set', { joint: 'j1', done: { by: 'entry', entry: 'closed' } }),
      aStep('heat', { joint: 'j1', done: { by: 'entry', entry: 'lamp-set' } }),
      aStep('check', { joint: 'j1', done: { by: 'check', milestone: 'handling' } }),
      aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' } }),
      aStep('other', { joint: 'j2', done: { by: 'entry', entry: 'closed' } }),
    );
    // K: lamp 30 °C for 60 min.
    walk.enters('tomek', '08:10', { kind: 'cure', job, card: 'K', setting: warm(30) });
    expect(['set', 'heat', 'check', 'other'].map((step) => walk.stands(step, '09:15'))).toEqual(['done 08:10 tomek', 'done 08:10 tomek', 'open', 'open']);
    walk.enters('tomek', '09:20', { kind: 'check', job, milestone: 'handling', result: 'hard' });
    expect(walk.stands('check', '09:21')).toBe('done 09:20 tomek');
    // A panel that was closed has paste on it, whether that was entered or not.
    expect(walk.stands('bond', '09:21')).toBe('done 08:10 tomek');
  });
});

describe('a strength that a person confirmed', () => {
  it('keeps a step closed until then, and says when it is due', () => {
    const walk = Walk.through(aStep('clamps-off', { joint: 'j1', needs: [{ need: 'confirmed', joint: J1, milestone: 'handling' }] }));
    expect(walk.stands('clamps-off', '08:05')).toBe('blocked confirmed');
    walk.enters('tomek', '08:10', { kind: 'cure', job, card: 'K', setting: warm(30) });
    expect(walk.stands('clamps-off', '09:30')).toBe('blocked confirmed 09:10');
    walk.enters('tomek', '09:31', { kind: 'check', job, milestone: 'handling', result: 'hard' });
    expect(walk.stands('clamps-off', '09:32')).toBe('open');
  });

  it('nothing on the car may wait for it any more', () => {
    const walk = Walk.through(aStep('bake', { needs: [{ need: 'cures-done' }] }));
    expect(walk.stands('bake', '08:05')).toBe('open');
    walk.enters('tomek', '08:10', { kind: 'cure', job, joint: 'j1', card: 'F1' });
    // F1 at 20 °C: 420 min.
    expect(walk.stands('bake', '08:11')).toBe('blocked cures 15:10');
    walk.enters('tomek', '15:12', { kind: 'check', job, milestone: 'sand', result: 'hard' });
    expect(walk.stands('bake', '15:13')).toBe('open');
  });
});

describe('times between steps', () => {
  const steps = [aStep('clean'), aStep('prime', { needs: [within('clean', 45), notBefore('clean', 5)] })];

  it('not before: to the minute, rounded up', () => {
    const walk = Walk.through(...steps);
    walk.enters('tomek', '08:20:30', { kind: 'done', job, step: 'clean' });
    expect(walk.stands('prime', '08:25')).toBe('blocked not-before clean 08:26');
    expect(walk.stands('prime', '08:26')).toBe('open');
  });

  it('within: after it the other step opens again', () => {
    const walk = Walk.through(...steps);
    walk.enters('tomek', '08:20:30', { kind: 'done', job, step: 'clean' });
    expect(walk.stands('prime', '09:05')).toBe('open');
    expect(walk.stands('prime', '09:06')).toBe('blocked again clean');
    expect(walk.stands('clean', '09:05')).toBe('done 08:20:30 tomek');
    expect(walk.stands('clean', '09:06')).toBe('again');
  });

  it('and a step that followed in time keeps the other closed', () => {
    const walk = Walk.through(...steps);
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'clean' });
    walk.enters('tomek', '08:40', { kind: 'done', job, step: 'prime' });
    expect(walk.stands('clean', '12:00')).toBe('done 08:20 tomek');
    expect(walk.stands('prime', '12:00')).toBe('done 08:40 tomek');
  });

  it('cleaned again, the new time counts', () => {
    const walk = Walk.through(...steps);
    walk.enters('tomek', '08:20', { kind: 'done', job, step: 'clean' });
    walk.enters('tomek', '10:00', { kind: 'done', job, step: 'clean' });
    expect(walk.stands('clean', '10:01')).toBe('done 10:00 tomek');
    expect(walk.stands('prime', '10:01')).toBe('blocked not-before clean 10:05');
    expect(walk.stands('prime', '10:45')).toBe('open');
  });
});

describe('a joint that has to be cold', () => {
  const steps = [aStep('grind', { needs: [{ need: 'joint-below', joint: J1, temperature: celsius(40) }] })];

  it('is open without heat, closed under the lamp, and open by a reading after it', () => {
    const walk = Walk.through(...steps);
    expect(walk.stands('grind', '08:05')).toBe('open');
    walk.enters('tomek', '08:10', { kind: 'cure', job, card: 'P1', setting: warm(60) });
    expect(walk.stands('grind', '08:15')).toBe('blocked too-hot');
    walk.enters('tomek', '08:16', { kind: 'read', job, value: warm(25) });
    // Still warming up under a lamp at 60 °C.
    expect(walk.stands('grind', '08:17')).toBe('blocked too-hot');
    walk.enters('tomek', '09:00', { kind: 'off', job });
    expect(walk.stands('grind', '09:01')).toBe('blocked too-hot');
    walk.enters('tomek', '09:30', { kind: 'read', job, value: warm(38), method: 'bare' });
    expect(walk.stands('grind', '09:31')).toBe('blocked too-hot');
    walk.enters('tomek', '09:32', { kind: 'read', job, value: warm(39.5), method: 'tape' });
    expect(walk.stands('grind', '09:33')).toBe('open');
  });

  it('a lamp that is colder than that keeps nobody waiting once it was read', () => {
    const walk = Walk.through(...steps);
    walk.enters('tomek', '08:10', { kind: 'cure', job, card: 'P1', setting: warm(30), lamp: lampName('A') });
    expect(walk.stands('grind', '08:15')).toBe('blocked too-hot');
    walk.enters('tomek', '08:16', { kind: 'read', job, value: warm(30) });
    expect(walk.stands('grind', '08:17')).toBe('open');
  });
});

describe('metal and the dew point', () => {
  const steps = [aStep('climate', { enter: ['air', 'metal'] }), aStep('bond', { needs: [{ need: 'dew-margin' }] })];

  it('unknown keeps it closed; far enough opens it; too close is a hold', () => {
    const walk = Walk.through(...steps);
    expect(walk.stands('bond', '08:05')).toBe('blocked dew-unknown');
    walk.enters('tomek', '08:06', { kind: 'air', value: warm(18), humidity: 70 });
    expect(walk.stands('bond', '08:07')).toBe('blocked dew-unknown');
    // Dew point of 18 °C and 70 %: 12.4 °C (Magnus).
    walk.enters('tomek', '08:08', { kind: 'enter', job, what: 'metal', text: '15' });
    expect(walk.stands('bond', '08:09')).toBe('blocked dew');
    walk.enters('tomek', '08:20', { kind: 'enter', job, what: 'metal', text: '16,5' });
    expect(walk.stands('bond', '08:21')).toBe('open');
    // The shop's own reading stands for the air of the step.
    expect(walk.stands('climate', '08:21')).toBe('open');
    // Three hours later nobody knows the air any more.
    expect(walk.stands('bond', '11:07')).toBe('blocked dew-unknown');
  });
});

describe('a label that is out of date', () => {
  it('holds the step until a new one is entered', () => {
    const walk = Walk.through(aStep('cartridge', { enter: ['expiry'] }));
    walk.enters('tomek', '08:05', { kind: 'enter', job, what: 'expiry', text: '02/2026' });
    expect(walk.stands('cartridge', '08:06')).toBe('blocked expired');
    walk.enters('tomek', '08:07', { kind: 'enter', job, what: 'expiry', text: '03/2026' });
    expect(walk.stands('cartridge', '08:08')).toBe('open');
  });

  it('entered only after the paste, it was out of turn', () => {
    const walk = Walk.through(aStep('bond', { joint: 'j1', done: { by: 'entry', entry: 'pasted' }, enter: ['expiry'] }));
    walk.enters('tomek', '08:20', { kind: 'paste', job, card: 'P1' });
    walk.enters('tomek', '08:21', { kind: 'enter', job, what: 'expiry', text: '2026-03-01' });
    expect(walk.stands('bond', '08:22')).toBe('blocked out-of-turn (expired)');
    walk.enters('ines', '08:30', { kind: 'override', job, step: 'bond', reason: 'sheet gives three months more' });
    expect(walk.stands('bond', '08:31')).toBe('overridden 08:30 ines');
  });
});
