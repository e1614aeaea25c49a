import { describe, expect, it } from 'vitest';
import { readFact, writeFact } from '../../../src/store/fact-schema.js';
import { CARD, CURE, EVERY_FACT } from '../../contract/store-samples.js';

describe('facts as text', () => {
  it.each(EVERY_FACT.map((fact) => [fact.type, fact] as const))('%s comes back as it went in', (_type, fact) => {
    expect(readFact(writeFact(fact), 'here')).toStrictEqual(fact);
  });

  it.each([
    ['not JSON', '{"type":'],
    ['an unheard-of type', '{"type":"telepathy"}'],
    ['a missing part', '{"type":"closed"}'],
    ['a part too much', JSON.stringify({ type: 'closed', cure: CURE, mood: 'good' })],
    ['a part too much in the card', JSON.stringify({ type: 'cure-opened', cure: CURE, owner: 'ana', card: { ...CARD, colour: 'red' } })],
    ['an unknown rate law', JSON.stringify({ type: 'cure-opened', cure: CURE, owner: 'ana', card: { ...CARD, milestones: [{ kind: 'full', laws: [{ law: 'hope' }] }] } })],
    ['a temperature in words', '{"type":"air","value":"warm","typed":{"value":20,"unit":null},"humidity":null}'],
  ])('%s is refused, and the place is named', (_what, text) => {
    expect(() => readFact(text, 'Fact 12 (entry 3)')).toThrow(/^Fact 12 \(entry 3\) in the book /);
  });
});
