import { describe, expect, it } from 'vitest';
import { on, said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

/** P1 with 30 °C at the joint: handling 150 min after closing. */
function warmP1(at: string, job = '501', shift = new Shift()): Shift {
  shift.enters('tomek', at, { kind: 'cure', job, card: 'P1' });
  shift.enters('tomek', at, { kind: 'read', job, value: warm(30) });
  return shift;
}

describe('too hot', () => {
  function hot(): Shift {
    const shift = warmP1('09:00');
    shift.enters('tomek', '09:10', { kind: 'lamp', job: '501', setting: warm(65) });
    shift.enters('tomek', '09:30', { kind: 'read', job: '501', value: warm(88) });
    return shift;
  }

  it('is said at once to owner and foreman, every 5 min for half an hour, then every 15, day and night', () => {
    const shift = hot();
    shift.until('10:31');
    const owner = shift.posts.filter((post) => post.kind === 'safety' && post.to === 'tomek').map((post) => said(post.saidAt));
    expect(owner).toEqual(['09:30', '09:35', '09:40', '09:45', '09:50', '09:55', '10:00', '10:15', '10:30']);
    expect(shift.posts.filter((post) => post.to === 'ines')).toHaveLength(owner.length);
    shift.until('17:31');
    expect(shift.posts.filter((post) => post.kind === 'safety').at(-1)).toMatchObject({ saidAt: on('17:30'), route: 'alone' });
  });

  it('reaches everybody of a shop without shifts, while it is open', () => {
    const shift = warmP1('16:00');
    shift.enters('tomek', '16:40', { kind: 'read', job: '501', value: warm(88) });
    shift.until('Tue 07:31');
    const heard = (who: string): string[] => shift.posts.filter((post) => post.to === who).map((post) => said(post.saidAt));
    expect(heard('wren')).toEqual(['16:40', '16:45', '16:50', '16:55', 'Tue 07:30']);
    expect(heard('ines').slice(0, 6)).toEqual(['16:40', '16:45', '16:50', '16:55', '17:00', '17:05']);
  });

  it('stays quiet about everything else until the foreman decides', () => {
    const shift = hot();
    shift.enters('tomek', '09:32', { kind: 'off', job: '501' });
    shift.until('16:00');
    expect(shift.heard()).toEqual(['09:30 safety tomek', '09:30 safety ines', '09:30 safety wren']);
    shift.enters('ines', '16:01', { kind: 'release', job: '501' });
    shift.until('16:02');
    expect(shift.heard('handling')).toEqual(['16:01 handling tomek']);
  });

  it('is corrected by taking the reading back', () => {
    const shift = hot();
    shift.enters('tomek', '09:31', { kind: 'undo' });
    shift.enters('tomek', '09:31', { kind: 'read', job: '501', value: warm(58) });
    shift.until('10:00');
    expect(shift.heard('safety')).toEqual(['09:30 safety tomek', '09:30 safety ines', '09:30 safety wren']);
    expect(shift.outlook('501').overMaximum).toBeNull();
  });

  it('is at once again for another reading, however lately the last alarm was', () => {
    const shift = hot();
    shift.enters('tomek', '09:31', { kind: 'undo' });
    shift.enters('tomek', '09:32', { kind: 'read', job: '501', value: warm(90) });
    shift.until('09:33');
    expect(shift.heard('safety').slice(3)).toEqual(['09:32 safety tomek', '09:32 safety ines', '09:32 safety wren']);
  });

  it('is nothing to a cure that began on the same joint afterwards', () => {
    const shift = warmP1('09:00');
    shift.enters('tomek', '09:10', { kind: 'read', job: '501', value: warm(80) });
    shift.enters('ines', '09:59', { kind: 'override', job: '501', step: 'fill', reason: 'other end of the seam' });
    shift.enters('tomek', '10:00', { kind: 'cure', job: '501', card: 'F1' });
    expect(shift.outlook('501').cure.card.name).toBe('F1');
    expect(shift.outlook('501').overMaximum).toBeNull();
    expect(shift.outlook('501').heat.counted).toBeNull();
  });
});
