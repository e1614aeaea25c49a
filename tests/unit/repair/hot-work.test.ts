import { describe, expect, it } from 'vitest';
import { minutes } from '../../../src/cure/units.js';
import { jobNo, jointNo, stepId } from '../../../src/repair/ids.js';
import type { Procedure, ProcedureStep } from '../../../src/repair/procedure.js';
import { FIRE_WATCH } from '../../../src/repair/watch-card.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

/** P1 on 504, closed at 09:00 under a joint read at 65 °C: full 80 min later. */
function closedCar(shift = new Shift()): Shift {
  shift.enters('tomek', '09:00', { kind: 'cure', job: '504', card: 'P1' });
  shift.enters('tomek', '09:00', { kind: 'read', job: '504', value: warm(65) });
  return shift;
}

const step: ProcedureStep = { id: stepId('weld-edge'), joint: jointNo('j2'), act: 'Weld the edge', role: 'technician', needs: [], done: { by: 'word' }, enter: [], openedDays: null, taps: [], cautions: ['weld-wet'], sign: null, starts: ['fire-watch'] };
const procedure: Procedure = { name: 'wet-edge', title: 'edge beside wet paste', version: 'test', example: false, steps: [step] };

function planned(shift: Shift): Shift {
  shift.enter('ines', on('08:00'), [{ job: jobNo('504'), happenedAt: on('08:00'), fact: { type: 'procedure-begun', procedure } }]);
  return shift;
}

describe('hot work beside a cure without confirmed full strength', () => {
  it('is told to the foreman once, at once', () => {
    const shift = closedCar();
    shift.enters('tomek', '09:30', { kind: 'weld', job: '504' });
    shift.until('09:31');
    expect(shift.heard('decision')).toEqual(['09:30 decision ines']);
    shift.until('09:59');
    expect(shift.heard('decision')).toHaveLength(1);
  });

  it('is told while the foreman is busy too', () => {
    const shift = closedCar();
    shift.enters('ines', '09:20', { kind: 'busy', minutes: minutes(60) });
    shift.enters('tomek', '09:30', { kind: 'weld', job: '504' });
    shift.until('09:31');
    expect(shift.heard('decision')).toEqual(['09:30 decision ines']);
  });

  it('is nothing to tell whoever is the foreman', () => {
    const shift = closedCar();
    shift.enters('ines', '09:30', { kind: 'weld', job: '504' });
    shift.until('09:59');
    expect(shift.heard('decision')).toEqual([]);
  });

  it('is nothing to tell once a person has confirmed full strength', () => {
    const shift = closedCar();
    shift.enters('tomek', '10:25', { kind: 'check', job: '504', milestone: 'full', result: 'hard' });
    shift.enters('tomek', '10:30', { kind: 'weld', job: '504' });
    shift.until('10:59');
    expect(shift.heard('decision')).toEqual([]);
  });

  it('is planned where the procedure plans it wet for that joint, and only until it is done there', () => {
    const shift = closedCar(planned(new Shift()));
    shift.enters('tomek', '09:30', { kind: 'weld', job: '504', joint: 'j2' });
    shift.until('09:59');
    expect(shift.heard('decision')).toEqual([]);
    shift.enters('tomek', '10:00', { kind: 'done', job: '504', step: 'weld-edge' });
    shift.enters('tomek', '10:05', { kind: 'weld', job: '504', joint: 'j2' });
    shift.until('10:10');
    expect(shift.heard('decision')).toEqual(['10:05 decision ines']);
  });

  it('is not planned for another joint of the same car', () => {
    const shift = closedCar(planned(new Shift()));
    shift.enters('tomek', '09:30', { kind: 'weld', job: '504', joint: 'j1' });
    shift.until('09:31');
    expect(shift.heard('decision')).toEqual(['09:30 decision ines']);
  });

  it('counts as wet without a plan only while the paste there is open', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'paste', job: '504', card: 'P1' });
    shift.enters('tomek', '09:10', { kind: 'weld', job: '504' });
    shift.enters('tomek', '09:20', { kind: 'closed', job: '504' });
    shift.until('09:21');
    expect(shift.heard('decision')).toEqual([]);
    shift.enters('tomek', '09:30', { kind: 'weld', job: '504' });
    shift.until('09:31');
    expect(shift.heard('decision')).toEqual(['09:30 decision ines']);
  });
});

describe('hot work on a car with wax in it', () => {
  function waxed(): Shift {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '7220', card: 'W1' });
    shift.enters('tomek', '09:40', { kind: 'weld', job: '7220' });
    return shift;
  }

  it('is an alarm to owner and foreman at once, every 5 min, until it is taken back', () => {
    const shift = waxed();
    shift.until('09:51');
    expect(shift.heard('safety').filter((post) => post.endsWith('ines'))).toEqual(['09:40 safety ines', '09:45 safety ines', '09:50 safety ines']);
    shift.enters('ines', '09:52', { kind: 'undo', entry: shift.outlook('7220').cure.hotWork[0]?.entry ?? null });
    const said = shift.posts.length;
    shift.until('10:30');
    expect(shift.posts).toHaveLength(said);
    expect(shift.outlooks('7220').map(({ cure }) => cure.card.name)).toEqual(['W1']);
  });

  it('ends with the end of the work, and the fire watch follows', () => {
    const shift = waxed();
    shift.enters('tomek', '09:44', { kind: 'done', job: '7220', step: 'weld' });
    shift.until('10:40');
    expect(shift.heard('safety')).toHaveLength(3);
    expect(shift.outlook('7220').milestones.map(({ check }) => check.dueAt)).toEqual([on('10:44')]);
  });

  it('goes on for ever: dry wax burns as well', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '7220', card: 'W1' });
    shift.enters('tomek', 'Thu 09:40', { kind: 'weld', job: '7220' });
    expect(shift.outlook('7220').cure.hotWork.map(({ ban }) => ban?.material)).toEqual(['W1']);
  });

  it('is none where the wax came later', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'weld', job: '7220' });
    shift.enters('tomek', '09:10', { kind: 'done', job: '7220', step: 'weld' });
    shift.enters('tomek', '09:20', { kind: 'cure', job: '7220', card: 'W1' });
    shift.until('09:40');
    expect(shift.heard('safety')).toEqual([]);
  });

  it('comes from a step of the procedure as well, whatever was sprayed', () => {
    const shift = new Shift();
    const waxing: ProcedureStep = { ...step, id: stepId('wax'), act: 'Cavity wax', cautions: ['wax'], starts: ['heat-ban'] };
    shift.enter('ines', on('08:00'), [{ job: jobNo('7220'), happenedAt: on('08:00'), fact: { type: 'procedure-begun', procedure: { ...procedure, steps: [waxing] } } }]);
    shift.enters('tomek', '09:00', { kind: 'done', job: '7220', step: 'wax' });
    shift.enters('tomek', '09:40', { kind: 'weld', job: '7220' });
    shift.until('09:41');
    expect(shift.heard('safety')).toEqual(['09:40 safety tomek', '09:40 safety ines', '09:40 safety wren']);
    expect(shift.outlook('7220').cure.card.name).toBe(FIRE_WATCH);
  });
});
