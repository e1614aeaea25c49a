import { describe, expect, it } from 'vitest';
import { composeRefusal } from '../../../src/reply/compose/refusal.js';
import { toText } from '../../../src/reply/to-text.js';
import { on } from '../../support/joint.js';
import { Shift } from '../../support/shift.js';

/** 501 with these cards, `W1` or `W1 j2`. */
function running(...cards: readonly string[]): Shift {
  const shift = new Shift();
  for (const [index, said] of cards.entries()) {
    const [card = '', joint = 'j1'] = said.split(' ');
    shift.enters('tomek', `08:0${index}`, { kind: 'cure', job: '501', card, joint, yes: true });
  }
  return shift;
}

const scrapped = (shift: Shift): string[] => shift.outlooks('501').flatMap(({ cure }) => (cure.scrapped ? [`${cure.card.name} ${cure.ref.joint}`] : []));

describe('scrap with a card in front of the reason', () => {
  it('asks where that card does not run, and scraps nothing else', () => {
    const shift = running('W1');
    const decision = shift.says('tomek', '09:00', { kind: 'scrap', job: '501', reason: 'P1 bad mix' });
    expect(decision).toEqual({ ok: false, refusal: { code: 'which-cure', job: '501', named: 'P1', choices: [{ joint: 'j1', card: 'W1', line: 'scrap 501 j1 W1 bad mix' }] } });
    expect(scrapped(shift)).toEqual([]);
    const answer = decision.ok ? expect.fail() : composeRefusal(decision.refusal, { shop: shift.shop, now: on('09:00') });
    expect([toText(answer), answer.buttons]).toEqual(['501: no P1 runs there. Which cure? Nothing stored yet.', [{ label: 'W1 j1', line: 'scrap 501 j1 W1 bad mix' }]]);
  });

  it.each([
    ['the only one', ['W1'], 'w1: bad mix', ['W1 j1']],
    ['the other one on the same joint', ['P1', 'W1'], 'P1 bad mix', ['P1 j1']],
    ['the one on the other joint', ['P1', 'W1 j2'], 'W1 bad mix', ['W1 j2']],
    ['any reason that begins otherwise', ['W1'], 'bad P1', ['W1 j1']],
    ['no reason', ['W1'], '', ['W1 j1']],
  ] as const)('scraps the cure that is meant: %s', (_name, cards, reason, expected) => {
    const shift = running(...cards);
    shift.enters('tomek', '09:00', { kind: 'scrap', job: '501', reason });
    expect(scrapped(shift)).toEqual(expected);
  });

  it('does not go back to what was scrapped before', () => {
    const shift = running('P1', 'W1');
    shift.enters('tomek', '09:00', { kind: 'scrap', job: '501', reason: 'P1' });
    expect(shift.says('tomek', '09:01', { kind: 'scrap', job: '501', reason: 'P1' })).toMatchObject({ refusal: { code: 'which-cure' } });
    expect(scrapped(shift)).toEqual(['P1 j1']);
  });
});
