import { describe, expect, it } from 'vitest';
import { standsStill } from '../../../src/repair/job-hold.js';
import { waitingList } from '../../../src/repair/waiting.js';
import { on } from '../../support/joint.js';
import { warm } from '../../support/shift.js';
import { Walk } from '../../support/walk.js';

const job = '501';

/** K: lamp 30 °C for 60 min: handling at 10:00. */
function running(): Walk {
  const walk = new Walk([]);
  walk.enters('tomek', '09:00', { kind: 'cure', job, card: 'K', setting: warm(30) });
  return walk;
}

describe('a whole job that is held', () => {
  it('rings for no strength until it is released, then once, with its true time, and repeats from there', () => {
    const walk = running();
    walk.enters('ines', '09:30', { kind: 'hold', job, reason: 'part recalled' });
    walk.until('12:40');
    expect(walk.heard('handling')).toEqual([]);
    walk.enters('ines', '12:40', { kind: 'release', job, reason: 'part is fine' });
    walk.until('12:45');
    expect(walk.heard('handling')).toEqual(['12:40 handling tomek']);
    expect(walk.posts.filter(({ kind }) => kind === 'handling').map(({ dueAt }) => dueAt)).toEqual([on('10:00')]);
    walk.until('14:00');
    expect(walk.heard('handling')).toEqual(['12:40 handling tomek', '12:50 handling tomek', '13:10 handling tomek', '13:30 handling ines']);
  });

  it('what was said before it goes on where it stood', () => {
    const walk = running();
    walk.until('10:05');
    walk.enters('ines', '10:06', { kind: 'hold', job, reason: 'part recalled' });
    walk.until('11:00');
    walk.enters('ines', '11:00', { kind: 'release', job, reason: 'part is fine' });
    walk.until('11:05');
    expect(walk.heard('handling')).toEqual(['10:00 handling tomek', '11:00 handling tomek']);
  });

  it('a release that came before the due time moves nothing', () => {
    const walk = running();
    walk.enters('ines', '09:10', { kind: 'hold', job, reason: 'part recalled' });
    walk.enters('ines', '09:20', { kind: 'release', job, reason: 'part is fine' });
    walk.until('10:01');
    expect(walk.heard('handling')).toEqual(['10:00 handling tomek']);
  });

  it('too much heat, the lamp, and the open limit never wait', () => {
    const walk = running();
    walk.enters('tomek', '09:05', { kind: 'paste', job, joint: 'j2', card: 'P1' });
    walk.enters('ines', '09:06', { kind: 'hold', job, reason: 'part recalled' });
    walk.until('10:02');
    expect(walk.heard('open-limit')).toContain('09:55 open-limit tomek');
    expect(walk.heard('still-on')).not.toEqual([]);
    walk.enters('tomek', '10:03', { kind: 'read', job, joint: 'j2', value: warm(90), yes: true });
    walk.until('10:04');
    expect(walk.heard('safety').slice(0, 2).sort()).toEqual(['10:03 safety ines', '10:03 safety tomek']);
  });

  it('stands among the holds of the list', () => {
    const walk = running();
    walk.enters('tomek', '09:01', { kind: 'cure', job: '502', card: 'K', setting: warm(30) });
    walk.enters('ines', '09:30', { kind: 'hold', job: '502', reason: 'part recalled' });
    expect(standsStill(walk.outlook('502').cure.jobHolds)).toBe(true);
    const list = waitingList([...walk.outlooks('501'), ...walk.outlooks('502')], on('09:31'));
    expect(list.map(({ outlook, state }) => `${outlook.cure.job} ${state}`)).toEqual(['502 held', '501 running']);
  });
});
