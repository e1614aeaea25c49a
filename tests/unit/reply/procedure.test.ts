import { describe, expect, it } from 'vitest';
import { celsius, minutes } from '../../../src/cure/units.js';
import { isJobCommand } from '../../../src/repair/commands.js';
import { entryNo, jointNo, personId, stepId } from '../../../src/repair/ids.js';
import { nextSteps } from '../../../src/repair/next-steps.js';
import type { Answer } from '../../../src/reply/answer.js';
import { cautionLine } from '../../../src/reply/compose/cautions.js';
import { composeJobEntry } from '../../../src/reply/compose/job-entry.js';
import { composeNext, composeReleased } from '../../../src/reply/compose/procedure.js';
import { composeWhen, safetyTail } from '../../../src/reply/compose/questions.js';
import { composeRefusal } from '../../../src/reply/compose/refusal.js';
import { withStanding } from '../../../src/reply/compose/standing.js';
import { toText } from '../../../src/reply/to-text.js';
import { on } from '../../support/joint.js';
import { warm } from '../../support/shift.js';
import { after, aProcedure, aStep, Walk } from '../../support/walk.js';

const job = '501';
const lines = (answer: Answer): string[] => toText(answer).split('\n');
const buttons = (answer: Answer): string[] => answer.buttons.map(({ label, line }) => `${label}: ${line}`);

/** The answer to a command about the steps, as the desk would give it. */
function hears(walk: Walk, who: string, when: string, short: Parameters<Walk['says']>[2]): Answer {
  const setting = { shop: walk.shop, now: on(when) };
  const command = walk.command(short, on(when));
  const decision = walk.says(who, when, short);
  if (!decision.ok) return composeRefusal(decision.refusal, setting);
  if (!isJobCommand(command)) throw new Error(`${short.kind} is no command about a job`);
  const entry = decision.facts.length === 0 ? null : (walk.facts.at(-1)?.entry ?? entryNo(0));
  return composeJobEntry({ command, by: personId(who), facts: decision.facts, notes: decision.notes, entry, job: walk.job(job), outlooks: walk.outlooks(job), air: walk.air() }, setting);
}

function next(walk: Walk, when: string): Answer {
  const found = nextSteps({ kind: 'next', job: null, joint: null }, walk.situation('tomek', on(when)));
  return found.ok ? composeNext(found.next, { shop: walk.shop, now: on(when) }) : composeRefusal(found.refusal, { shop: walk.shop, now: on(when) });
}

const clean = aStep('clean', { act: 'Wipe in one direction', cautions: ['solvent'] });
const within = aStep('prime', { needs: [{ need: 'not-before', step: stepId('clean'), minutes: minutes(10) }] });

describe('the answer to an entry about a step', () => {
  it('job first, what was noted, the next thing to do with its caution, the tail once a job', () => {
    const walk = new Walk([aProcedure([clean, within])]);
    const begun = hears(walk, 'tomek', '08:00', { kind: 'begin', job, procedure: 'panel' });
    expect(lines(begun)).toEqual(['501 panel begun 08:00, Tomek: outer panel, 2 steps.', `Next: clean: Wipe in one direction. Technician or above. ${cautionLine('solvent', {})}`, safetyTail({})]);
    expect(buttons(begun)).toEqual(['Done: done 501 clean', 'Undo: undo 1']);
    walk.enters('tomek', '08:01', { kind: 'undo', entry: null });
    expect(lines(hears(walk, 'tomek', '08:02', { kind: 'begin', job, procedure: 'panel' }))).not.toContain(safetyTail({}));
    expect(lines(hears(walk, 'tomek', '08:10', { kind: 'done', job, step: 'clean' }))).toEqual(['501 clean done 08:10, Tomek.', 'prime waits: not before 08:20 (after clean).']);
    expect(lines(hears(walk, 'ines', '08:11', { kind: 'done', job, step: 'clean' }))[0]).toBe('501 clean is done already: 08:10, Tomek.');
  });

  it('says that an example is one', () => {
    const walk = new Walk([aProcedure([clean], { example: true })]);
    expect(lines(hears(walk, 'tomek', '08:00', { kind: 'begin', job, procedure: 'panel' })).at(-1)).toBe("panel is an example procedure, not the vehicle maker's method.");
  });

  it('taps, figures and the signature are asked for one after the other', () => {
    const walk = Walk.through(aStep('bond', { taps: ['both components flow', 'bead binned'], enter: ['batch'], sign: ['foreman'] }));
    const first = hears(walk, 'tomek', '08:05', { kind: 'tap', job, step: 'bond', tap: 0 });
    expect(lines(first)).toEqual(['501 bond: “both components flow”, Tomek 08:05.', 'Next: bond: still tap “bead binned”; enter batch.']);
    expect(buttons(first)).toEqual(['Bead binned: tap 501 bond 2', 'Undo: undo 2']);
    const missing = hears(walk, 'tomek', '08:06', { kind: 'done', job, step: 'bond' });
    expect([lines(missing), buttons(missing)]).toEqual([['501 bond: first tap “bead binned”, enter batch. Nothing stored yet.'], ['Bead binned: tap 501 bond 2']]);
    walk.enters('tomek', '08:07', { kind: 'tap', job, step: 'bond', tap: 1 });
    expect(lines(hears(walk, 'tomek', '08:08', { kind: 'enter', job, what: 'batch', text: '55-B' }))[0]).toBe('501 bond: batch 55-B noted, Tomek.');
    const done = hears(walk, 'tomek', '08:09', { kind: 'done', job, step: 'bond' });
    expect([lines(done)[1], buttons(done)[0]]).toEqual(['Next: bond was done 08:09, still: sign: foreman.', 'Sign: sign 501 bond']);
    expect(lines(hears(walk, 'ines', '08:10', { kind: 'sign', job, step: 'bond' }))).toEqual(['501 bond signed 08:10, Ines (foreman).', 'Nothing is left to do in this procedure.']);
  });

  it('an expired label is a hold that only the foreman lifts, and the override is shown from then on', () => {
    const walk = Walk.through(aStep('cartridge', { enter: ['expiry'] }), aStep('bond', { needs: after('cartridge') }));
    const expired = hears(walk, 'tomek', '08:05', { kind: 'enter', job, what: 'expiry', text: '02/2026' });
    expect([expired.tone, lines(expired)]).toEqual(['alarm', ['501 cartridge: expired: HOLD, 02/2026. Take a new one and enter its date; only the foreman can go on with this one, with a reason.']]);
    expect(lines(hears(walk, 'tomek', '08:06', { kind: 'done', job, step: 'cartridge' }))).toEqual(['501 cartridge NOT yet: expired: HOLD (02/2026), only the foreman can go on, with a reason. Nothing stored.']);
    expect(lines(hears(walk, 'ines', '08:07', { kind: 'override', job, step: 'cartridge', reason: 'sheet gives three months more' }))[0]).toBe('501 cartridge overridden 08:07, Ines, past this only: expired (02/2026). It may go on; every answer about the job shows it.');
    const shown = 'Overridden: cartridge, Ines 08:07: “sheet gives three months more”.';
    expect(lines(hears(walk, 'tomek', '08:08', { kind: 'done', job, step: 'cartridge' }))).toContain(shown);
    expect(lines(next(walk, '08:09'))).toContain(shown);
    walk.enters('tomek', '08:10', { kind: 'cure', job, card: 'P1' });
    expect(lines(withStanding(composeWhen(walk.outlook(job), { shop: walk.shop, now: on('08:11') }), walk.job(job), { shop: walk.shop, now: on('08:11') }))).toContain(shown);
  });
});

describe('what comes next', () => {
  it('at most three open steps and the first that waits, in six lines', () => {
    const waits = aStep('clamps-off', { needs: [{ need: 'confirmed', joint: jointNo('j1'), milestone: 'handling' }] });
    const walk = Walk.through(clean, aStep('b'), aStep('c'), aStep('d'), waits);
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'K', setting: warm(30) });
    expect(lines(next(walk, '08:06'))).toEqual([
      `501 clean: Wipe in one direction. Technician or above. ${cautionLine('solvent', {})}`,
      'b: Work at b. Technician or above.',
      'c: Work at c. Technician or above. And 1 more.',
      'clamps-off waits: handling strength on j1 is not confirmed (earliest 09:05).',
    ]);
    expect(buttons(next(walk, '08:06'))).toEqual(['Done clean: done 501 clean', 'Done b: done 501 b', 'Done c: done 501 c']);
    expect(lines(next(walk, '09:20')).at(-1)).toBe('clamps-off waits: handling strength on j1 is not confirmed, due since 09:05: check it.');
  });

  it('without a procedure it offers those that can be begun', () => {
    const walk = new Walk([aProcedure([clean])]);
    walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'P1' });
    const found = nextSteps({ kind: 'next', job: walk.job(job).no, joint: null }, walk.situation('tomek', on('08:05')));
    const said = found.ok ? null : composeRefusal(found.refusal, { shop: walk.shop, now: on('08:05') });
    expect(said === null ? [] : [...lines(said), ...buttons(said)]).toEqual(['501 has begun no procedure. Begin one? panel. Nothing stored.', 'Panel: begin 501 panel']);
  });

  it('says what the book shows by itself, and why else a step waits', () => {
    const walk = Walk.through(
      aStep('set', { joint: 'j1', done: { by: 'entry', entry: 'closed' } }),
      aStep('bond', { needs: [{ need: 'dew-margin' }, { need: 'joint-below', joint: jointNo('j1'), temperature: celsius(40) }] }),
    );
    walk.enters('tomek', '08:01', { kind: 'air', value: warm(18), humidity: 70 });
    expect(lines(next(walk, '08:02'))).toEqual(['501 set: Work at set. Technician or above. Type `closed 501 j1` when it happens.', 'bond waits: read air with humidity and metal.']);
    expect(buttons(next(walk, '08:02'))).toEqual(['Closed: closed 501 j1']);
    walk.enters('tomek', '08:03', { kind: 'cure', job, card: 'P1', setting: warm(60) });
    walk.enters('tomek', '08:04', { kind: 'read', job, value: warm(15) });
    // Dew point of 18 °C and 70 %: 12.4 °C (Magnus).
    expect(lines(next(walk, '08:05'))).toEqual(['501 bond waits: HOLD: metal only 2.6 °C above the dew point of 12.4 °C, 3 °C needed; j1 has to read below 40 °C.']);
  });
});

describe('a job that is held', () => {
  it('answers HELD with the reason and offers nothing until the release', () => {
    const walk = Walk.through(clean);
    walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'K', setting: warm(30) });
    const held = hears(walk, 'quinn', '08:10', { kind: 'hold', job, reason: 'odd smell' });
    expect([held.tone, lines(held)]).toEqual(['alarm', ['501 HELD 08:10, Quinn: “odd smell”. Nothing goes on until the foreman releases it: `release 501 reason`.']]);
    expect(lines(hears(walk, 'tomek', '08:11', { kind: 'done', job, step: 'clean' }))).toEqual(['501 HELD since 08:10 by Quinn: “odd smell”. Only the foreman releases it (Ines). Nothing stored.']);
    expect(lines(next(walk, '08:12'))[0]).toMatch(/^501 HELD since 08:10 by Quinn: “odd smell”/);
    const when = withStanding(composeWhen(walk.outlook(job), { shop: walk.shop, now: on('09:10') }), walk.job(job), { shop: walk.shop, now: on('09:10') });
    expect([lines(when)[0]?.slice(0, 20), when.buttons]).toEqual(['501 HELD since 08:10', []]);
    walk.enters('ines', '09:12', { kind: 'release', job, reason: 'aired well' });
    expect(lines(composeReleased(walk.job(job), { shop: walk.shop, now: on('09:12') }))).toEqual(['501 released 09:12, Ines: “aired well”.']);
    expect(lines(next(walk, '09:13'))[0]).toMatch(/^501 clean/);
  });
});

describe('refusals', () => {
  it.each<[string, (walk: Walk) => Answer, string]>([
    ['who may', (walk) => hears(walk, 'wren', '08:05', { kind: 'done', job, step: 'clean' }), '501 clean: that is for technician or foreman (Ines, Tomek). Nothing stored.'],
    ['the order', (walk) => hears(walk, 'tomek', '08:05', { kind: 'done', job, step: 'prime' }), '501 prime NOT yet: after clean. Nothing stored.'],
    ['a name that is none', (walk) => hears(walk, 'tomek', '08:05', { kind: 'done', job, step: 'varnish' }), '501: no step varnish here. Which one? Nothing stored yet.'],
    ['another procedure', (walk) => hears(walk, 'tomek', '08:05', { kind: 'begin', job, procedure: 'panel' }), '501: panel runs since 08:00. Go on with it: `next 501`. Nothing stored.'],
    ['a reason that is none', (walk) => hears(walk, 'ines', '08:05', { kind: 'override', job, step: 'prime', reason: '.' }), 'Write the reason behind it, in words: it stays in the record. Nothing stored.'],
    ['a figure that is none', (walk) => hears(walk, 'tomek', '08:05', { kind: 'enter', job, what: 'batch', text: '55-B' }), '501: no step asks for batch. Nothing stored.'],
  ])('%s', (_, heard, expected) => {
    expect(lines(heard(Walk.through(clean, within)))[0]).toBe(expected);
  });

  it('filler over an unconfirmed bond', () => {
    const walk = new Walk([]);
    walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'K' });
    const said = hears(walk, 'tomek', '08:05', { kind: 'cure', job, joint: 'j2', card: 'F1' });
    expect(lines(said)[0]).toMatch(/^501 HOLD: full strength of K on j1 is not confirmed.*Only the foreman can go on: `override 501 fill reason`/);
  });
});

describe('hot work that is over, and whose step stands back', () => {
  const twoWelds = (): Walk => {
    const walk = Walk.through(aStep('weld-left', { joint: 'j1' }), aStep('weld-right', { joint: 'j2' }));
    walk.enters('tomek', '08:20', { kind: 'weld', job });
    return walk;
  };

  it('says that the watch starts and only the step is not noted, with a button for each step', () => {
    const said = hears(twoWelds(), 'tomek', '08:40', { kind: 'done', job, step: 'weld' });
    expect(lines(said)[0]).toMatch(/^501 hot work over 08:40\. Fire watch 09:40/);
    expect(lines(said).at(-1)).toBe('501: which step? The step itself is not noted.');
    expect(buttons(said)).toEqual(expect.arrayContaining(['Weld-left: done 501 weld-left', 'Weld-right: done 501 weld-right']));
    expect(lines(said).join()).not.toContain('Nothing stored');
  });

  it('stores nothing, and says so, where no hot work goes on', () => {
    const walk = Walk.through(aStep('weld-left', { joint: 'j1' }), aStep('weld-right', { joint: 'j2' }));
    expect(lines(hears(walk, 'tomek', '08:40', { kind: 'done', job, step: 'weld' }))).toEqual(['501: which step? Nothing stored yet.']);
  });
});
