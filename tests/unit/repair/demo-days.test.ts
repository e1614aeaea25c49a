import { expect, it } from 'vitest';
import { lampName } from '../../../src/repair/ids.js';
import { milestoneShare } from '../../../src/cure/forecast.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

// Our own demo scenario with invented figures; the sums are redone by hand in the comments.

it('follows 7203, a roof skin with P1 on two lamps that failed', () => {
  const shift = new Shift();
  // It is warned of the open limit and closed in time.
  shift.enters('tomek', 'Tue 08:40', { kind: 'paste', job: '7203', card: 'P1' });
  expect(shift.outlook('7203').open).toMatchObject({ kind: 'limit', at: on('Tue 09:40') });
  shift.enters('tomek', 'Tue 09:15', { kind: 'closed', job: '7203' });
  expect(shift.heard()).toEqual([]);
  // It reaches handling at 12:03 with one reading: 35 of 300 min at 20 °C, 88.33 % of 150 min at 30 °C.
  shift.enters('tomek', 'Tue 09:25', { kind: 'lamp', job: '7203', setting: warm(30), lamp: lampName('A') });
  shift.enters('tomek', 'Tue 09:50', { kind: 'read', job: '7203', value: warm(30) });
  expect(shift.due('7203', 'handling')).toBe('Tue 12:03');
  // It goes back to the last sign of life when the lamp is found off, and is due at 12:43.
  shift.enters('wren', 'Tue 10:20', { kind: 'on', job: '7203' });
  shift.enters('wren', 'Tue 11:24', { kind: 'off', lamp: lampName('A'), since: 'unknown' });
  shift.enters('tomek', 'Tue 11:40', { kind: 'read', job: '7203', value: warm(30) });
  expect(shift.due('7203', 'handling')).toBe('Tue 12:43');
  // It asks at 12:43 and 12:53, takes the check, and is full at 14:19 with 65 °C.
  shift.enters('tomek', 'Tue 12:55', { kind: 'check', job: '7203', result: 'hard' });
  expect(shift.heard('handling')).toEqual(['Tue 12:43 handling tomek', 'Tue 12:53 handling tomek']);
  expect(shift.says('wren', 'Tue 12:58', { kind: 'lamp', job: '7203', setting: warm(149) })).toMatchObject({ ok: false, refusal: { code: 'which-unit', asCelsius: 65 } });
  shift.enters('wren', 'Tue 12:58', { kind: 'lamp', job: '7203', setting: warm(149, 'F') });
  shift.enters('wren', 'Tue 13:12', { kind: 'read', job: '7203', value: warm(65) });
  expect(shift.due('7203', 'full')).toBe('Tue 14:19');
});

it('follows 7208, a sliding door with the lamp recipe P2', () => {
  const shift = new Shift();
  // It is due 80 min after the lamp was switched on.
  shift.enters('tomek', 'Tue 10:05', { kind: 'cure', job: '7208', card: 'P2' });
  expect(shift.due('7208', 'handling')).toBe('never');
  shift.enters('tomek', 'Tue 10:10', { kind: 'lamp', job: '7208', setting: warm(35), lamp: lampName('B') });
  expect(shift.due('7208', 'handling')).toBe('Tue 11:30');
  // It is held as soft on two answers and looked at again 25 % of 80 min later.
  shift.enters('wren', 'Tue 11:30:00', { kind: 'check', job: '7208', result: 'hard' });
  shift.enters('tomek', 'Tue 11:30:08', { kind: 'check', job: '7208', result: 'soft' });
  expect(shift.due('7208', 'handling')).toBe('Tue 11:50');
  shift.until('Tue 11:31');
  expect(shift.posts.filter((post) => post.kind === 'decision').map((post) => post.to)).toEqual(['ines', 'wren']);
  shift.enters('tomek', 'Tue 11:52', { kind: 'check', job: '7208', result: 'hard' });
  shift.enters('tomek', 'Tue 11:58', { kind: 'lamp', job: '7208' });
  expect(shift.due('7208', 'full')).toBe('Tue 14:08');
  // It adds the missing 15 min and 20 min to warm up again.
  shift.enters('tomek', 'Tue 12:20', { kind: 'off', job: '7208' });
  expect(shift.due('7208', 'full')).toBe('never');
  shift.enters('tomek', 'Tue 12:35', { kind: 'on', job: '7208' });
  expect(shift.due('7208', 'full')).toBe('Tue 14:43');
});

it('follows 7214, a boot floor with P1 that stands through the night', () => {
  const shift = new Shift();
  // It has a third of the wait behind it at closing time and sleeps.
  shift.enters('ines', 'Tue 15:20', { kind: 'cure', job: '7214', card: 'P1' });
  const handling = shift.outlook('7214').milestones.find((one) => one.kind === 'handling');
  expect(handling?.forecast.dueAt).toBeNull();
  if (handling === undefined) throw new Error('no handling');
  expect(milestoneShare(handling.forecast, on('Tue 17:00'))).toBeCloseTo(100 / 300, 12);
  expect(milestoneShare(handling.forecast, on('Wed 07:30'))).toBeCloseTo(100 / 300, 12);
  // It is due at 10:08: 33.33 %, then 75 of 300 min at 20 °C, then 62.5 of 150 min at 30 °C.
  shift.enters('ines', 'Wed 07:50', { kind: 'air', value: warm(20) });
  shift.enters('ines', 'Wed 08:40', { kind: 'lamp', job: '7214', setting: warm(30), lamp: lampName('A') });
  shift.enters('ines', 'Wed 09:05', { kind: 'read', job: '7214', value: warm(30) });
  expect(shift.due('7214', 'handling')).toBe('Wed 10:08');
  // It says at 10:20, when the bot is up again, what was due at 10:08, once.
  shift.until('Wed 09:55');
  shift.wakesUp('Wed 10:20');
  expect(shift.posts.filter((post) => post.kind === 'handling').map((post) => [post.saidAt, post.dueAt])).toEqual([[on('Wed 10:20'), on('Wed 10:08')]]);
  shift.enters('ines', 'Wed 10:22', { kind: 'check', job: '7214', result: 'hard' });
  // It is full at 11:53 with 65 °C at 10:46.
  shift.enters('ines', 'Wed 10:30', { kind: 'lamp', job: '7214', setting: warm(65) });
  shift.enters('ines', 'Wed 10:46', { kind: 'read', job: '7214', value: warm(65) });
  expect(shift.due('7214', 'full')).toBe('Wed 11:53');
});

it('follows 7220, a cab corner with filler F1 and then wax W1', () => {
  const shift = new Shift();
  // It would be sandable at 17:10, which is after closing.
  shift.enters('tomek', 'Wed 10:10', { kind: 'cure', job: '7220', card: 'F1' });
  shift.enters('tomek', 'Wed 10:10', { kind: 'air', value: warm(20) });
  // 410 of 420 min are over at 17:00.
  const sand = shift.outlook('7220').milestones.find((one) => one.kind === 'sand');
  expect(sand?.forecast.dueAt).toBeNull();
  expect(sand === undefined ? null : milestoneShare(sand.forecast, on('Wed 17:00'))).toBeCloseTo(410 / 420, 12);
  // It is due at 14:16 under the lamp: 225 of 420 min at 20 °C, then 20.9 of 45 min at 60 °C.
  shift.enters('ines', 'Wed 13:30', { kind: 'lamp', job: '7220', setting: warm(60), lamp: lampName('B') });
  shift.enters('ines', 'Wed 13:55', { kind: 'read', job: '7220', value: warm(60) });
  expect(shift.due('7220', 'sand')).toBe('Wed 14:16');
  // It drips no more 3 h after the wax; dry needs 20 h above 15 °C: 8 h, 9.5 h, and 2.5 h on a heated Saturday.
  shift.enters('tomek', 'Wed 14:20', { kind: 'check', job: '7220', result: 'hard' });
  shift.enters('tomek', 'Thu 09:00', { kind: 'cure', job: '7220', card: 'W1' });
  expect(shift.due('7220', 'drip-free')).toBe('Thu 12:00');
  const saturday = new Shift({ hours: { ...shift.shop.hours, 6: { opens: 450, closes: 780 } } });
  saturday.enters('tomek', 'Thu 09:00', { kind: 'cure', job: '7220', card: 'W1' });
  for (const day of ['Fri', 'Sat']) saturday.enters('tomek', `${day} 07:30`, { kind: 'air', value: warm(20) });
  expect(saturday.due('7220', 'dry')).toBe('Sat 10:00');
});
