import { describe, expect, it } from 'vitest';
import { jobNo, personId } from '../../../src/repair/ids.js';
import type { Answer } from '../../../src/reply/answer.js';
import { composeJobEntry } from '../../../src/reply/compose/job-entry.js';
import { composePost } from '../../../src/reply/compose/post.js';
import { settingFor } from '../../../src/reply/compose/setting-for.js';
import { toText } from '../../../src/reply/to-text.js';
import { on } from '../../support/joint.js';
import { procedureNamed } from '../../support/procedure-shelf.js';
import { Shift } from '../../support/shift.js';

/** A car in the example procedure whose wet edge was welded, and whose cured edge burns before its turn. */
function burning(): Shift {
  const shift = new Shift();
  shift.enter('ines', on('08:00'), [{ job: jobNo('601'), happenedAt: on('08:00'), fact: { type: 'procedure-begun', procedure: procedureNamed('bonded-panel') } }]);
  shift.enters('tomek', '09:00', { kind: 'weld', job: '601', joint: 'j2' });
  shift.enters('tomek', '09:06', { kind: 'done', job: '601', joint: 'j2', step: 'weld' });
  shift.enters('tomek', '09:26', { kind: 'weld', job: '601', joint: 'j3' });
  return shift;
}

describe('a second weld, out of its turn', () => {
  it.each([{ step: 'weld' }, { step: 'weld', joint: 'j3' }, { step: 'weld-after' }])('is ended by %o, and the step it is refused for is said', (said) => {
    const shift = burning();
    const decision = shift.enters('tomek', '10:06', { kind: 'done', job: '601', ...said });
    expect(shift.due('601', 'fire-watch')).toBe('11:06');
    expect(decision).toMatchObject({ ok: true, notes: [{ note: 'step-refused' }] });
    shift.until('11:05');
    expect(shift.heard('fire-watch')).toEqual([]);
  });

  it('announces no watch over while it goes on, and asks for its end with its own joint', () => {
    const shift = burning();
    shift.until('10:26');
    const asked = shift.posts.filter(({ kind }) => kind === 'fire-watch');
    expect(asked.map(({ to }) => to)).toContain('tomek');
    const [first] = asked;
    if (first === undefined) throw new Error('nothing asked');
    const answer = composePost(first, shift.outlook('601'), 'in time', settingFor(first.to, { shop: shift.shop, now: on('10:26') }));
    expect(toText(answer)).toMatch(/hot work still going on\?/);
    expect(answer.buttons.map(({ line }) => line)).toContain('done 601 j3 weld');
  });

  it('names its own joint in the answer to its beginning, and says that it is out of turn', () => {
    const answer = begun(burning(), '601', '09:26');
    expect(toText(answer)).toMatch(/Over\? `?done 601 j3 weld/);
    expect(toText(answer)).toMatch(/HOLD: weld-after out of turn/);
    expect(answer.buttons.map(({ line }) => line)).toContain('done 601 j3 weld');
  });

  it('is out of turn before the plan is signed, at a joint or anywhere', () => {
    for (const joint of ['j3', undefined]) {
      const shift = new Shift();
      shift.enter('ines', on('08:00'), [{ job: jobNo('710'), happenedAt: on('08:00'), fact: { type: 'procedure-begun', procedure: procedureNamed('bonded-panel') } }]);
      shift.enters('tomek', '08:10', { kind: 'weld', job: '710', ...(joint === undefined ? {} : { joint }) });
      expect(toText(begun(shift, '710', '08:10'))).toMatch(/out of turn/);
    }
  });
});

/** The answer to the last hot work that began. */
function begun(shift: Shift, job: string, time: string): Answer {
  const when = { earliest: on(time), latest: on(time), stated: false, confirmed: false };
  const entry = shift.facts.findLast(({ fact }) => fact.type === 'weld-begun')?.entry ?? null;
  const entered = { command: { kind: 'weld', job: jobNo(job), joint: null, when }, by: personId('tomek'), facts: [], notes: [], entry, job: shift.job(job), outlooks: shift.outlooks(job), air: [] } as const;
  return composeJobEntry(entered, settingFor(personId('tomek'), { shop: shift.shop, now: on(time) }));
}
