import { describe, expect, it } from 'vitest';
import { describeProblem } from '../../../src/config/file-problem.js';
import { readProcedures } from '../../../src/config/procedures-file.js';
import type { ProcedureStep } from '../../../src/repair/procedure.js';
import { writtenFiles } from '../../support/written-files.js';

const HEAD = 'procedure: patch\ntitle: sill patch\nversion: "1"\nsteps:\n';
const GOOD = `${HEAD}  - { step: plan, do: Read the method }\n  - { step: bond, joint: j1, do: Paste on, after: [plan], done: paste }\n`;
const steps = (...lines: readonly string[]): string => `${HEAD}${lines.map((line) => `  - { ${line} }\n`).join('')}`;
const PLAN = 'step: plan, do: Read';

function problems(files: Readonly<Record<string, string>>): string[] {
  const read = readProcedures(writtenFiles(files));
  return read.ok ? [] : read.problems.map(describeProblem);
}

function stepsOf(text: string): readonly ProcedureStep[] {
  const read = readProcedures(writtenFiles({ 'a.yaml': text }));
  if (!read.ok) throw new Error(read.problems.map(describeProblem).join('\n'));
  return read.procedures.flatMap((procedure) => procedure.steps);
}

describe('a folder of procedures', () => {
  it('is read whole, sorted by name', () => {
    const read = readProcedures(writtenFiles({ 'b.yaml': GOOD, 'a.yml': GOOD.replace('patch', 'sill'), 'note.txt': 'x' }));
    expect(read).toMatchObject({ ok: true, procedures: [{ name: 'patch', title: 'sill patch', version: '1', example: false }, { name: 'sill' }] });
  });

  it('is refused whole when one procedure is wrong, with all that is wrong in every file', () => {
    expect(problems({ 'a.yaml': GOOD, 'b.yaml': GOOD.replace('[plan]', '[plam]').replace('patch', 'b'), 'c.yaml': GOOD.replace('done: paste', 'done: glue').replace('patch', 'c') })).toEqual([
      'b.yaml line 6, steps no. 2.after no. 1: plam is no step of this procedure; did you mean plan?',
      'c.yaml line 6, steps no. 2.done: must be paste, closed, lamp or a check such as check handling; leave it out where somebody says that it is done',
    ]);
  });

  it('refuses one name in two files', () => {
    expect(problems({ 'a.yaml': GOOD, 'b.yaml': `# second\n${GOOD}` })).toEqual(['b.yaml line 2, procedure: patch is the name of the procedure in a.yaml already']);
  });

  it('says so when there is no folder or no procedure in it', () => {
    expect(readProcedures('/nowhere/procedures')).toMatchObject({ ok: false, problems: [{ file: '/nowhere/procedures', line: null, problem: 'cannot be read as a folder of procedures (there is no such file or folder)' }] });
    expect(problems({ 'note.txt': 'x' })).toEqual([expect.stringContaining('holds no procedure (*.yaml)')]);
  });
});

describe('a step', () => {
  it('is for a technician, about the whole car, by word and without anything more, unless it says so', () => {
    expect(stepsOf(steps(PLAN))).toEqual([{ id: 'plan', joint: null, act: 'Read', role: 'technician', needs: [], done: { by: 'word' }, enter: [], openedDays: null, taps: [], cautions: [], sign: null, starts: [] }]);
  });

  it('states everything that it waits for', () => {
    const bond = 'step: bond, joint: j1, do: Glue, after: [plan], within: { plan: 3 h }, not-before: { plan: 5 }, dew-margin: true, done: paste';
    const hard = 'step: hard, joint: j1, do: Press, done: check handling';
    const weld = 'step: weld, joint: j2, do: Weld, role: foreman, confirmed: [j1 handling, j1 full], joint-below: { j1: 40 }, cures-done: true, caution: [weld-after], starts: [fire-watch]';
    const [, second, third, fourth] = stepsOf(steps(PLAN, bond, hard, weld));
    expect(second).toMatchObject({ joint: 'j1', done: { by: 'entry', entry: 'pasted' }, needs: [{ need: 'step', step: 'plan' }, { need: 'dew-margin' }, { need: 'within', step: 'plan', minutes: 180 }, { need: 'not-before', step: 'plan', minutes: 5 }] });
    expect(third?.done).toEqual({ by: 'check', milestone: 'handling' });
    expect(fourth).toMatchObject({
      role: 'foreman',
      needs: [{ need: 'confirmed', joint: 'j1', milestone: 'handling' }, { need: 'confirmed', joint: 'j1', milestone: 'full' }, { need: 'joint-below', joint: 'j1', temperature: 40 }, { need: 'cures-done' }],
      cautions: ['weld-after'],
      starts: ['fire-watch'],
    });
  });

  it.each([['closed', 'closed'], ['lamp', 'lamp-set']])('that is done by %s is shown by that entry', (done, entry) => {
    expect(stepsOf(steps(`step: a, joint: j1, do: It, done: ${done}`))[0]?.done).toEqual({ by: 'entry', entry });
  });

  it('takes one milestone without a list', () => {
    expect(stepsOf(steps('step: a, joint: j1, do: It, confirmed: j1 full'))[0]?.needs).toEqual([{ need: 'confirmed', joint: 'j1', milestone: 'full' }]);
  });

  it('has what is entered, tapped and signed', () => {
    expect(stepsOf(steps('step: a, do: It, enter: [batch, air], taps: [both flow], sign: [quality, foreman]'))[0]).toMatchObject({ enter: ['batch', 'air'], taps: ['both flow'], sign: ['quality', 'foreman'] });
  });
});

describe('a procedure is refused', () => {
  it.each([
    ['a step that is not there', steps(PLAN, 'step: bond, do: It, after: [plan, dry-fit]'), 'a.yaml line 6, steps no. 2.after no. 2: dry-fit is no step of this procedure; known are plan, bond'],
    ['a mistyped step in within', steps(PLAN, 'step: bond, do: It, within: { paln: 5 }'), 'line 6, steps no. 2.within.paln: paln is no step of this procedure; did you mean plan?'],
    ['a mistyped step in not-before', steps(PLAN, 'step: bond, do: It, not-before: { plant: 5 }'), 'line 6, steps no. 2.not-before.plant: plant is no step of this procedure; did you mean plan?'],
    ['a circle', steps('step: a, do: It, after: [c]', 'step: b, do: It, after: [a]', 'step: c, do: It, not-before: { b: 5 }'), 'a.yaml line 5, steps no. 1: goes in a circle: a waits for c, c waits for b, b waits for a; take one of them out'],
    ['a circle of one', steps(PLAN, 'step: b, do: It, after: [b]'), 'line 6, steps no. 2: goes in a circle: b waits for b; take one of them out'],
    ['a circle over a check', steps('step: a, joint: j1, do: It, confirmed: j1 full', 'step: b, joint: j1, do: Press, after: [a], done: check full'), 'line 5, steps no. 1: goes in a circle: a waits for b, b waits for a'],
    ['a step twice', steps(PLAN, PLAN), 'line 6, steps no. 2.step: plan is the name of step no. 1 already: give this one another'],
    ['an unknown caution', steps('step: a, do: It, caution: [lamp, welding-wet]'), 'line 5, steps no. 1.caution no. 2: welding-wet is no caution; did you mean weld-wet?'],
    ['a mistyped role', steps('step: a, do: It, role: technican'), 'line 5, steps no. 1.role: technican is no role for doing a step; did you mean technician?'],
    ['a role that does no step', steps('step: a, do: It, role: quality'), 'line 5, steps no. 1.role: quality is no role for doing a step; known are apprentice, technician, foreman'],
    ['a milestone', steps('step: a, joint: j1, do: It, confirmed: j1 handlin'), 'line 5, steps no. 1.confirmed: handlin is no milestone; did you mean handling?'],
    ['a milestone in a list', steps('step: a, joint: j1, do: It, confirmed: [j1 full, j1 ful]'), 'line 5, steps no. 1.confirmed no. 2: ful is no milestone; did you mean full?'],
    ['a milestone without its joint', steps('step: a, joint: j1, do: It, confirmed: handling'), 'line 5, steps no. 1.confirmed: must be a joint and its milestone such as j1 handling'],
    ['a check of no milestone', steps('step: a, joint: j1, do: It, done: check hndling'), 'line 5, steps no. 1.done: hndling is no milestone; did you mean handling?'],
    ['a check without a milestone', steps('step: a, joint: j1, do: It, done: check'), 'line 5, steps no. 1.done: must be paste, closed, lamp or a check'],
    ['a joint of no step', steps('step: a, joint: j1, do: It, confirmed: j3 full'), 'line 5, steps no. 1.confirmed: no step is about j3: the joints here are j1'],
    ['a temperature of no joint', steps('step: a, do: It, joint-below: { j3: 40 }'), 'line 5, steps no. 1.joint-below.j3: no step is about j3: give a step its joint'],
    ['something that is no joint', steps('step: a, joint: sill, do: It'), 'line 5, steps no. 1.joint: must be a joint such as j1'],
    ['an entry about no joint', steps('step: a, do: It, done: paste'), 'line 5, steps no. 1.done: is an entry about one joint: write which, such as joint: j1'],
    ['one entry for two steps', steps('step: a, joint: j1, do: It, done: lamp', 'step: b, joint: j1, do: It, done: lamp'), 'line 6, steps no. 2.done: shows already that a is done, and the book could not tell the two apart'],
    ['a hold point that nobody may sign', steps('step: a, do: It, sign: []'), 'line 5, steps no. 1.sign: is a hold point that nobody may sign: write a role such as [foreman], or leave it out'],
    ['a hold point for the apprentice', steps('step: a, do: It, sign: [apprentice]'), 'line 5, steps no. 1.sign no. 1: must not be apprentice, who may not sign a hold point: write foreman'],
    ['a mistyped signer', steps('step: a, do: It, sign: [forman]'), 'line 5, steps no. 1.sign no. 1: forman is no role; did you mean foreman?'],
    ['no steps', HEAD.replace('steps:\n', 'steps: []\n'), 'line 4, steps: has no step: a procedure is a list of at least one'],
    ['nothing under steps', HEAD, 'line 4, steps: must be a list such as'],
    ['no steps at all', HEAD.replace('steps:\n', ''), 'line 1, steps: is missing: a list such as'],
    ['a mistyped key of a step', steps('step: a, do: It, cautoin: [lamp]'), 'line 5, steps no. 1.cautoin: is not known here; did you mean caution?'],
    ['a mistyped key of the file', `${GOOD}exmaple: true\n`, 'line 7, exmaple: is not known here; did you mean example?'],
    ['a step without what to do', steps('step: a'), 'line 5, steps no. 1.do: is missing: what to do, in one line'],
    ['what to do over two lines', steps('step: a, do: "It\\nand more"'), 'line 5, steps no. 1.do: must stand on one line'],
    ['a step that reads like a joint', steps('step: j1, do: It'), 'line 5, steps no. 1.step: reads like the number of a joint'],
    ['a name with a space', GOOD.replace('procedure: patch', 'procedure: sill patch'), 'line 1, procedure: must begin with a small letter'],
    ['something to enter that is nothing', steps('step: a, do: It, enter: [bacth]'), 'line 5, steps no. 1.enter no. 1: bacth is no thing to enter; did you mean batch?'],
    ['a start of nothing', steps('step: a, do: It, starts: [fire]'), 'line 5, steps no. 1.starts no. 1: fire is no thing that a step starts; known are fire-watch, heat-ban'],
    ['a time in other words', steps(PLAN, 'step: b, do: It, within: { plan: soon }'), 'line 6, steps no. 2.within.plan: must be minutes, or a time such as 36 h'],
    ['hot work that the order lets come after wax', steps('step: weld, do: Weld, starts: [fire-watch]', 'step: bake, do: Bake, caution: [bake]', 'step: wax, do: Wax, after: [bake], starts: [heat-ban]'), 'line 7, steps no. 3.starts: bans heat while weld may still come: write it into after'],
  ])('for %s', (_, text, expected) => {
    const said = problems({ 'a.yaml': text });
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(expected);
  });

  it('for each of several circles once', () => {
    expect(problems({ 'a.yaml': steps('step: a, do: It, after: [b]', 'step: b, do: It, after: [a]', 'step: c, do: It, after: [d, a]', 'step: d, do: It, after: [c]') })).toEqual([
      expect.stringContaining('a waits for b, b waits for a;'),
      expect.stringContaining('c waits for d, d waits for c;'),
    ]);
  });

  it('with every mistake that can be seen at once', () => {
    expect(problems({ 'a.yaml': steps('step: a, do: It, after: [x], within: { y: 5 }', 'step: a, do: It, done: closed') })).toHaveLength(4);
  });
});
