import { describe, expect, it } from 'vitest';
import { lampName } from '../../../src/repair/ids.js';
import { said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

/** P1 with 30 °C at the joint: handling 150 min after closing. */
function warmP1(at: string, job = '501', shift = new Shift()): Shift {
  shift.enters('tomek', at, { kind: 'cure', job, card: 'P1' });
  shift.enters('tomek', at, { kind: 'read', job, value: warm(30) });
  return shift;
}

describe('a check that nobody answers', () => {
  it('is asked at due, +10, +30, once of the foreman at +50, and never confirms itself', () => {
    const shift = warmP1('09:33');
    shift.until('16:59');
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek', '12:13 handling tomek', '12:33 handling tomek', '12:53 handling ines']);
    expect(shift.outlook('501').milestones[0]?.check.phase).toBe('open');
  });

  it('counts its repeats from the late first post when the bot was down', () => {
    const shift = warmP1('09:33');
    shift.until('11:50');
    shift.wakesUp('12:20');
    expect(shift.heard('handling')).toEqual(['12:20 handling tomek']);
    expect(shift.posts.filter((post) => post.kind === 'handling').map((post) => said(post.dueAt))).toEqual(['12:03']);
    shift.until('16:00');
    expect(shift.heard('handling').slice(1)).toEqual(['12:30 handling tomek', '12:50 handling tomek', '13:10 handling ines']);
  });

  it('stops when it is answered', () => {
    const shift = warmP1('09:33');
    shift.enters('tomek', '12:05', { kind: 'check', job: '501', result: 'hard' });
    shift.until('16:00');
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek']);
  });

  it('is asked anew when the forecast moves behind the post', () => {
    const shift = warmP1('09:33');
    shift.enters('tomek', '12:04', { kind: 'off', job: '501', at: '12:00' });
    shift.until('12:30');
    // 147 of 150 min were counted until 12:00; 2 % of 300 min at 20 °C are 6 min.
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek', '12:06 handling tomek', '12:16 handling tomek']);
  });
});

describe('later', () => {
  it('comes back after ten minutes, and the third time to the foreman, once', () => {
    const shift = warmP1('09:33');
    for (const at of ['12:04', '12:16', '12:27']) shift.enters('tomek', at, { kind: 'later', job: '501' });
    shift.until('16:00');
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek', '12:14 handling tomek', '12:26 handling tomek', '12:37 handling ines']);
  });

  it('comes back after the foreman was asked, too', () => {
    const shift = warmP1('09:33');
    shift.enters('ines', '12:54', { kind: 'later', job: '501' });
    shift.until('16:00');
    expect(shift.heard('handling').slice(3)).toEqual(['12:53 handling ines', '13:04 handling ines']);
  });

  it('is one for three quick taps', () => {
    const shift = warmP1('09:33');
    for (const at of ['12:04', '12:04:01', '12:04:02']) shift.enters('tomek', at, { kind: 'later', job: '501' });
    shift.until('12:20');
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek', '12:14 handling tomek']);
  });
});

describe('questions about the lamp', () => {
  function lamp(): Shift {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(30), lamp: lampName('A') });
    return shift;
  }

  it('ask for a reading after 20 min, with repeats', () => {
    const shift = lamp();
    shift.until('11:00');
    expect(shift.heard('reading')).toEqual(['09:20 reading tomek', '09:30 reading tomek', '09:50 reading tomek', '10:10 reading ines']);
  });

  it('ask at most hourly whether it is still on, the third time the foreman, and then no more', () => {
    const shift = lamp();
    shift.enters('tomek', '09:10', { kind: 'read', job: '501', value: warm(20) });
    shift.until('13:30');
    expect(shift.heard('still-on')).toEqual(['10:10 still-on tomek', '11:10 still-on tomek', '12:10 still-on ines']);
  });

  it('begin anew with every sign of life', () => {
    const shift = lamp();
    shift.enters('tomek', '09:10', { kind: 'read', job: '501', value: warm(20) });
    shift.enters('wren', '10:30', { kind: 'on', job: '501' });
    shift.until('11:45');
    expect(shift.heard('still-on')).toEqual(['10:10 still-on tomek', '11:30 still-on tomek']);
  });

  it('are asked of metal that is warmer than the air, whoever lit what; never of bare metal that nobody heats', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '09:10', { kind: 'read', job: '501', value: warm(40) });
    shift.enters('wren', '09:00', { kind: 'air', value: warm(18), humidity: 70 });
    shift.enters('wren', '09:00', { kind: 'paste', job: '502', card: 'P1' });
    shift.enters('wren', '09:01', { kind: 'read', job: '502', value: warm(13) });
    shift.enters('wren', '09:20', { kind: 'closed', job: '502' });
    shift.until('10:20');
    expect(shift.heard('still-on')).toEqual(['10:10 still-on tomek']);
  });

  it('end at closing time', () => {
    const shift = new Shift();
    shift.enters('tomek', '15:30', { kind: 'cure', job: '501', card: 'P2', setting: warm(35) });
    shift.enters('tomek', '15:40', { kind: 'off', job: '501' });
    shift.enters('tomek', '16:20', { kind: 'on', job: '501' });
    shift.until('Tue 07:29');
    expect(shift.heard()).toEqual([]);
  });

  it('remind of the next stage after the check', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'K', setting: warm(30) });
    shift.enters('tomek', '10:04', { kind: 'check', job: '501', result: 'hard' });
    shift.until('10:20');
    expect(shift.heard()).toEqual(['10:00 handling tomek', '10:14 stage tomek']);
    shift.enters('tomek', '10:20', { kind: 'lamp', job: '501' });
    shift.until('12:00');
    expect(shift.heard('stage', 'full')).toEqual(['10:14 stage tomek', '11:50 full tomek', '12:00 full tomek']);
  });

  it('remind of it again, under a name of its own, when the check was doubted in between', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'K', setting: warm(30) });
    shift.enters('tomek', '10:04', { kind: 'check', job: '501', result: 'hard' });
    shift.enters('wren', '10:15', { kind: 'check', job: '501', result: 'soft' });
    // Tomek's own hard does not settle it; whoever said soft does.
    shift.enters('tomek', '10:30', { kind: 'check', job: '501', result: 'hard' });
    shift.enters('wren', '10:31', { kind: 'check', job: '501', result: 'hard' });
    // An apprentice's hard is a first check.
    shift.enters('tomek', '10:31', { kind: 'check', job: '501', result: 'hard' });
    shift.until('10:42');
    expect(shift.heard('stage')).toEqual(['10:14 stage tomek', '10:41 stage tomek']);
  });
});

describe('a plan', () => {
  it('asks the foreman once for two answers, tells whoever said hard, and once more for a second soft', () => {
    const shift = warmP1('09:33');
    shift.enters('wren', '12:03:10', { kind: 'check', job: '501', result: 'hard' });
    shift.enters('tomek', '12:03:12', { kind: 'check', job: '501', result: 'soft' });
    shift.until('12:40');
    expect(shift.heard('decision')).toEqual(['12:03:12 decision ines', '12:03:12 decision wren']);
    shift.enters('tomek', '12:42', { kind: 'check', job: '501', result: 'soft' });
    shift.until('16:00');
    expect(shift.heard('decision')).toEqual(['12:03:12 decision ines', '12:03:12 decision wren', '12:42 decision ines']);
  });

  it('asks twice within one minute under two names', () => {
    const shift = warmP1('09:33');
    shift.enters('wren', '12:45:02', { kind: 'check', job: '501', result: 'soft', at: '12:04' });
    shift.enters('tomek', '12:45:04', { kind: 'check', job: '501', result: 'hard', at: '12:05' });
    shift.until('12:45:05');
    shift.enters('tomek', '12:45:30', { kind: 'check', job: '501', result: 'soft' });
    shift.until('12:46');
    expect(shift.heard('decision')).toEqual(['12:45:04 decision ines', '12:45:30 decision ines']);
  });

  it('is empty for what was scrapped', () => {
    const shift = warmP1('09:33');
    shift.enters('tomek', '10:00', { kind: 'scrap', job: '501' });
    expect(shift.plan()).toEqual([]);
  });

  it('does not ask for handling once full is due', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '09:00', { kind: 'read', job: '501', value: warm(65) });
    shift.until('10:15');
    // Handling is due at 09:25 and full at 10:20; the foreman's turn would be 10:15.
    shift.until('11:30');
    expect(shift.heard('handling', 'full')).toEqual(['09:25 handling tomek', '09:35 handling tomek', '09:55 handling tomek', '10:15 handling ines', '10:20 full tomek', '10:30 full tomek', '10:50 full tomek', '11:10 full ines']);
  });
});
