import fc from 'fast-check';
import { celsius, minutes } from '../../src/cure/units.js';
import { jointNo } from '../../src/repair/ids.js';
import type { DoneBy, Need, ProcedureStep } from '../../src/repair/procedure.js';
import type { Role } from '../../src/repair/shop.js';
import { aStep } from './walk.js';

const J1 = jointNo('j1');

/** Conditions that look at the car instead of at another step. */
const ofTheCar = fc.constantFrom<Need>(
  { need: 'confirmed', joint: J1, milestone: 'handling' },
  { need: 'joint-below', joint: J1, temperature: celsius(40) },
  { need: 'dew-margin' },
  { need: 'cures-done' },
);

/** Steps point only to earlier ones, so that no order goes in a circle. */
const needOf = (earlier: readonly ProcedureStep[]): fc.Arbitrary<Need> => {
  const [first] = earlier;
  if (first === undefined) return ofTheCar;
  const step = fc.constantFrom(...earlier.map(({ id }) => id));
  return fc.oneof(
    { weight: 3, arbitrary: step.map((id): Need => ({ need: 'step', step: id })) },
    { weight: 1, arbitrary: fc.tuple(step, fc.integer({ min: 5, max: 60 })).map(([id, length]): Need => ({ need: 'within', step: id, minutes: minutes(length) })) },
    { weight: 1, arbitrary: fc.tuple(step, fc.integer({ min: 1, max: 30 })).map(([id, length]): Need => ({ need: 'not-before', step: id, minutes: minutes(length) })) },
    { weight: 1, arbitrary: ofTheCar },
  );
};

/** What the book shows by itself is shown by one step only. */
const BY_BOOK: readonly DoneBy[] = [{ by: 'entry', entry: 'closed' }, { by: 'check', milestone: 'handling' }, { by: 'entry', entry: 'lamp-set' }];

const shape = fc.record({
  byBook: fc.boolean(),
  needs: fc.nat({ max: 2 }),
  taps: fc.constantFrom<string[]>([], [], ['one'], ['one', 'two']),
  expiry: fc.nat({ max: 3 }).map((one) => one === 0),
  role: fc.constantFrom<ProcedureStep['role']>('apprentice', 'technician', 'technician', 'foreman'),
  sign: fc.constantFrom<readonly Role[] | null>(null, null, null, ['foreman'], ['foreman', 'quality'], ['technician']),
});

/** Up to five steps in an order without circles. */
export const randomSteps: fc.Arbitrary<readonly ProcedureStep[]> = fc.array(shape, { minLength: 1, maxLength: 5 }).chain((shapes) =>
  shapes.reduce<fc.Arbitrary<readonly ProcedureStep[]>>(
    (before, { byBook, needs, taps, expiry, role, sign }, index) =>
      before.chain((earlier) =>
        fc.array(needOf(earlier), { minLength: needs, maxLength: needs }).map((conditions) => {
          const done = byBook ? BY_BOOK[index] : undefined;
          return [...earlier, aStep(`step-${index}`, { needs: conditions, taps, role, sign, enter: expiry ? ['expiry'] : [], joint: 'j1', ...(done === undefined ? {} : { done }) })];
        }),
      ),
    fc.constant([]),
  ),
);
