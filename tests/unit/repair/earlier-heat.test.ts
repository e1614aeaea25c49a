import { expect, it } from 'vitest';
import { lampName } from '../../../src/repair/ids.js';
import { Shift, warm } from '../../support/shift.js';

const withLampYesterday = (): Shift => {
  const shift = new Shift();
  shift.enters('tomek', 'Tue 13:00', { kind: 'cure', job: '501', card: 'F1' });
  shift.enters('tomek', 'Tue 13:30', { kind: 'lamp', job: '501', setting: warm(60), lamp: lampName('B') });
  shift.enters('tomek', 'Tue 13:55', { kind: 'read', job: '501', value: warm(60) });
  shift.enters('tomek', 'Tue 15:00', { kind: 'check', job: '501', result: 'hard' });
  return shift;
};

it('a cure that begins the day after knows nothing of a lamp that nobody noted as off', () => {
  const shift = withLampYesterday();
  shift.enters('tomek', 'Wed 09:00', { kind: 'cure', job: '501', card: 'P1' });
  const outlook = shift.outlook('501');
  expect([outlook.heat.lamp, outlook.cure.heat]).toEqual(['never', []]);
  shift.until('Wed 11:00');
  expect(shift.heard('reading')).toEqual(['Tue 13:50 reading tomek']);
});

it('a cure that begins on the same day has the lamp that is still on', () => {
  const shift = withLampYesterday();
  shift.enters('tomek', 'Tue 15:10', { kind: 'cure', job: '501', card: 'P1' });
  expect(shift.outlook('501').heat.lamp).toBe('on');
});

it('the lamp counts again from where somebody sees it on', () => {
  const shift = withLampYesterday();
  shift.enters('tomek', 'Wed 09:00', { kind: 'cure', job: '501', card: 'P2' });
  shift.enters('tomek', 'Wed 09:10', { kind: 'lamp', job: '501', setting: warm(35), lamp: lampName('B') });
  expect(shift.due('501', 'handling')).toBe('Wed 10:30');
});
