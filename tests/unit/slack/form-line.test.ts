import { describe, expect, it } from 'vitest';
import { FIELDS } from '../../../src/chat/slack/form-fields.js';
import type { FormValues } from '../../../src/chat/slack/form-fields.js';
import { formLine } from '../../../src/chat/slack/form-line.js';
import { readLine } from '../../../src/grammar/read-line.js';
import { SHOP } from '../grammar/line-file.js';

const EMPTY: FormValues = { job: null, joint: null, card: null, depth: null, heat: null, setting: null, when: null, time: null };
const FILLED: FormValues = { ...EMPTY, job: '501', card: 'P2', heat: 'lamp A', setting: '35', when: '0' };

describe('the line of a form', () => {
  it.each([
    [{}, 'cure 501 P2 lamp A 35'],
    [{ heat: 'lamp', when: '15' }, 'cure 501 P2 lamp 35 15 min ago'],
    [{ heat: 'air', setting: null, when: '5' }, 'cure 501 P2 5 min ago'],
    [{ joint: '2', heat: 'pad H1', setting: '60 °C' }, 'cure 501 j2 P2 pad H1 60C'],
    [{ joint: 'J2', setting: '95F' }, 'cure 501 j2 P2 lamp A 95F'],
    [{ when: '15', time: '13:40' }, 'cure 501 P2 lamp A 35 at 13:40'],
    [{ when: '15', time: '13.40' }, 'cure 501 P2 lamp A 35 at 13.40'],
    [{ when: '15', time: '25 min ago' }, 'cure 501 P2 lamp A 35 25 min ago'],
    [{ card: 'K', heat: 'air', setting: null, depth: '4,5 mm' }, 'cure 501 K 4,5 mm'],
  ])('with %j is one that could have been typed: %s', (change, line) => {
    expect(formLine({ ...FILLED, ...change }, {})).toEqual({ ok: true, line });
    expect(readLine(line, SHOP)).toMatchObject({ ok: true, command: { kind: 'cure', job: '501' } });
  });

  it.each([
    [{ job: null }, 'job'],
    [{ job: '501; undo' }, 'job'],
    [{ joint: 'left' }, 'joint'],
    [{ card: null }, 'card'],
    [{ depth: 'deep' }, 'depth'],
    [{ setting: null }, 'setting'],
    [{ setting: 'hot' }, 'setting'],
    [{ heat: 'air' }, 'heat'],
  ] as const)('with %j has a fault at %s', (change, field) => {
    const read = formLine({ ...FILLED, ...change }, {});
    expect(read.ok ? [] : Object.keys(read.errors)).toEqual([field]);
  });

  it('names all faults of an empty form at once', () => {
    const read = formLine(EMPTY, {});
    expect(read.ok ? [] : FIELDS.filter((field) => read.errors[field] !== undefined)).toEqual(['job', 'card']);
  });
});
