import { describe, expect, it } from 'vitest';
import { shopWithPeople } from '../../../src/clerk/shop-in.js';
import { minutes } from '../../../src/cure/units.js';
import { decide } from '../../../src/repair/decide.js';
import { entryNo, jobNo, personId } from '../../../src/repair/ids.js';
import { roleOf } from '../../../src/repair/people.js';
import { composeJobEntry } from '../../../src/reply/compose/job-entry.js';
import { composeRefusal } from '../../../src/reply/compose/refusal.js';
import { composeOffer, composeStranger } from '../../../src/reply/compose/people.js';
import { toText } from '../../../src/reply/to-text.js';
import { isJobCommand, type EntryCommand } from '../../../src/repair/commands.js';
import { exampleShop } from '../../support/example-shop.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

/** 501 and 502 are Tomek's, 503 is Wren's. */
function floor(): Shift {
  const shift = new Shift({ people: [...exampleShop().people, { id: personId('olga'), name: 'Olga', role: 'owner', chatId: null, language: 'en', unit: null }] });
  for (const [who, job] of [['tomek', '501'], ['tomek', '502'], ['wren', '503']] as const) shift.enters(who, '09:00', { kind: 'cure', job, card: 'P1' });
  return shift;
}

const refused = (shift: Shift, who: string, short: Parameters<Shift['says']>[2]): string => {
  const decision = shift.says(who, '10:00', short);
  return decision.ok ? 'ok' : decision.refusal.code;
};

const answered = (shift: Shift, who: string, at: string, short: Parameters<Shift['says']>[2], jobs: readonly string[]): string => {
  const command: EntryCommand = shift.command(short, on(at));
  const decision = shift.says(who, at, short);
  const setting = { shop: shift.shop, now: on(at) };
  if (!decision.ok) return toText(composeRefusal(decision.refusal, setting));
  if (!isJobCommand(command)) throw new Error('not about people');
  return toText(composeJobEntry({ command, by: personId(who), facts: decision.facts, notes: decision.notes, entry: entryNo(9), job: null, outlooks: jobs.flatMap((no) => shift.outlooks(no)), air: [] }, setting));
};

describe('hand', () => {
  it('makes every cure of the job somebody else\'s', () => {
    const shift = floor();
    shift.enters('ines', '10:00', { kind: 'hand', job: '501', to: 'Wren' });
    expect([shift.outlook('501').cure.owner, shift.outlook('502').cure.owner]).toEqual(['wren', 'tomek']);
  });

  it('is about what stands in the book: a cure begun later is whose it is', () => {
    const shift = floor();
    shift.enters('ines', '10:00', { kind: 'hand', job: '501', to: 'wren' });
    shift.enters('tomek', '10:30', { kind: 'cure', job: '501', joint: 'j2', card: 'P1', at: '09:55' });
    expect(shift.outlooks('501').map((outlook) => outlook.cure.owner)).toEqual(['wren', 'tomek']);
  });

  it('without a job is the only one of one\'s own; of several it asks', () => {
    expect(floor().enters('wren', '10:00', { kind: 'hand', to: 'tomek' })).toMatchObject({ facts: [{ job: '503', fact: { type: 'handed', to: 'tomek' } }] });
    expect(refused(floor(), 'tomek', { kind: 'hand', to: 'wren' })).toBe('which-job');
  });

  it.each([
    ['nobody of the shop', { kind: 'hand', job: '501', to: 'sma' }, 'unknown-person'],
    ['the owner, who works at no car', { kind: 'hand', job: '501', to: 'olga' }, 'cannot-take'],
    ['an unknown job', { kind: 'hand', job: '777', to: 'wren' }, 'unknown-job'],
  ] as const)('is refused for %s', (_, short, code) => {
    expect(refused(floor(), 'tomek', short)).toBe(code);
  });

  it('to whoever has it already changes nothing', () => {
    expect(floor().says('ines', '10:00', { kind: 'hand', job: '501', to: 'tomek' })).toMatchObject({ ok: true, facts: [], notes: [{ note: 'already-so' }] });
  });
});

describe('handover and accept', () => {
  const offered = (): Shift => {
    const shift = floor();
    shift.enters('tomek', '10:00', { kind: 'handover', to: 'wren', except: [jobNo('502')] });
    return shift;
  };

  it('offers the giver\'s open jobs but those that stay, and changes no owner', () => {
    const shift = offered();
    expect(shift.facts.at(-1)?.fact).toEqual({ type: 'handover-offered', to: 'wren', jobs: ['501'] });
    expect(shift.outlook('501').cure.owner).toBe('tomek');
  });

  it('is accepted once, by whom it was offered to', () => {
    const shift = offered();
    expect(refused(shift, 'ines', { kind: 'accept' })).toBe('offered-to-another');
    shift.enters('wren', '10:04', { kind: 'accept' });
    expect(shift.outlook('501').cure.owner).toBe('wren');
    for (const who of ['wren', 'tomek']) expect(shift.says(who, '10:05', { kind: 'accept' })).toMatchObject({ ok: true, facts: [], notes: [{ note: 'already-accepted', by: 'wren', at: on('10:04') }] });
  });

  it('takes over only what is still the giver\'s', () => {
    const shift = floor();
    shift.enters('tomek', '10:00', { kind: 'handover', to: 'wren', except: [] });
    shift.enters('ines', '10:01', { kind: 'hand', job: '501', to: 'ines' });
    shift.enters('tomek', '10:02', { kind: 'scrap', job: '502' });
    expect(shift.enters('wren', '10:04', { kind: 'accept' })).toMatchObject({ facts: [{ fact: { type: 'handover-accepted' } }] });
    expect(shift.outlook('501').cure.owner).toBe('ines');
  });

  it('the newest offer is the one that is accepted', () => {
    const shift = floor();
    shift.enters('tomek', '10:00', { kind: 'handover', to: 'wren', except: [jobNo('502')] });
    shift.enters('tomek', '10:01', { kind: 'handover', to: 'wren', except: [jobNo('501')] });
    shift.enters('wren', '10:04', { kind: 'accept' });
    expect([shift.outlook('501').cure.owner, shift.outlook('502').cure.owner]).toEqual(['tomek', 'wren']);
  });

  it('accepts what each giver has offered, all of it', () => {
    const shift = floor();
    shift.enters('tomek', '10:00', { kind: 'handover', to: 'ines', except: [] });
    shift.enters('wren', '10:01', { kind: 'handover', to: 'ines', except: [] });
    expect(answered(shift, 'ines', '10:04', { kind: 'accept' }, ['501', '502', '503'])).toMatch(/^Accepted 10:04: 501, 502, 503\./);
    expect(['501', '502', '503'].map((job) => shift.outlook(job).cure.owner)).toEqual(['ines', 'ines', 'ines']);
  });

  it.each([
    ['accept with nothing offered', 'wren', { kind: 'accept' }, 'nothing-offered'],
    ['handover to oneself', 'tomek', { kind: 'handover', to: 'tomek', except: [] }, 'to-yourself'],
    ['handover with nothing of one\'s own', 'ines', { kind: 'handover', to: 'wren', except: [] }, 'nothing-to-hand'],
    ['handover but for somebody else\'s job', 'tomek', { kind: 'handover', to: 'wren', except: [jobNo('503')] }, 'not-in-handover'],
    ['handover of everything that stays', 'wren', { kind: 'handover', to: 'tomek', except: [jobNo('503')] }, 'nothing-to-hand'],
  ] as const)('%s is refused', (_, who, short, code) => {
    expect(refused(floor(), who, short)).toBe(code);
  });

  it('lists what comes next, worst first, in at most four lines', () => {
    const shift = floor();
    shift.enters('tomek', '09:30', { kind: 'read', job: '502', value: warm(30) });
    const text = answered(shift, 'tomek', '12:10', { kind: 'handover', to: 'wren', except: [] }, ['501', '502']);
    expect(text).toMatch(/^Offered to Wren: 501, 502\. They stay yours until Wren accepts\./);
    expect(text).toMatch(/Next for Wren: 502 check now, handling strength due 11:45 \(25 min ago\); 501 handling strength 14:00\./);
    expect(text.split('\n').length).toBeLessThanOrEqual(4);
    expect(answered(shift, 'wren', '12:12', { kind: 'accept' }, ['501', '502'])).toMatch(/^Accepted 12:12: 501, 502\.\nNext for Wren: 502/);
    expect(answered(shift, 'wren', '12:13', { kind: 'accept' }, [])).toBe('Already accepted by Wren 12:12. Nothing changed.');
  });

  it('is asked of the taker with a button', () => {
    const shift = floor();
    expect(composeOffer(personId('tomek'), [jobNo('501')], shift.outlooks('501'), { shop: shift.shop, now: on('10:00') })).toMatchObject({ tone: 'question', buttons: [{ label: 'Accept', line: 'accept' }] });
  });
});

describe('busy', () => {
  it('says until when', () => {
    expect(answered(floor(), 'tomek', '10:00', { kind: 'busy', minutes: minutes(30) }, [])).toMatch(/^Tomek busy until 10:30: what can wait waits\./);
  });

  it('has an end', () => {
    expect(answered(floor(), 'tomek', '10:00', { kind: 'busy', minutes: minutes(2000) }, [])).toMatch(/^At most 12 h/);
  });
});

describe('a stranger', () => {
  const guests = [{ id: personId('u0sam'), name: 'Sam' }];
  const knowsSam = (): Shift => new Shift({ guests });

  it('may not enter, and is told whom to ask', () => {
    const shift = knowsSam();
    const decision = shift.says('u0sam', '10:00', { kind: 'cure', job: '501', card: 'P1' });
    if (decision.ok) throw new Error('entered');
    expect(toText(composeRefusal(decision.refusal, { shop: shift.shop, now: on('10:00') }))).toMatch(/Sam, you are not on the shop's list.*nothing is stored.*Ask Ines to type `adopt u0sam technician`/);
    expect(composeStranger(personId('u0sam'), { shop: shift.shop, now: on('10:00') }).buttons.map((one) => one.line)).toEqual(['adopt u0sam technician', 'adopt u0sam apprentice', 'refuse u0sam']);
  });

  it('counts as one of the shop\'s people once the foreman took them on', () => {
    const shift = knowsSam();
    shift.enters('ines', '10:00', { kind: 'adopt', person: 'sam', role: null });
    const shop = shopWithPeople(shift.shop, shift.people().adopted, guests);
    expect([roleOf(shop, personId('u0sam')), shop.people.at(-1)?.name, shop.guests]).toEqual(['technician', 'Sam', []]);
    expect(decide(shift.command({ kind: 'cure', job: '501', card: 'P1' }, on('10:01')), { ...shift.situation('u0sam', on('10:01')), shop })).toMatchObject({ ok: true });
  });

  it('has the role given last, until that is taken back; shop.yaml has the last word', () => {
    const shift = knowsSam();
    shift.enters('ines', '10:00', { kind: 'adopt', person: 'Sam', role: 'technician' });
    shift.enters('ines', '10:01', { kind: 'adopt', person: 'Sam', role: 'apprentice' });
    const role = (): string => roleOf(shopWithPeople(shift.shop, shift.people().adopted, guests), personId('u0sam'));
    expect(role()).toBe('apprentice');
    shift.enters('ines', '10:02', { kind: 'undo' });
    expect(role()).toBe('technician');
    expect(shopWithPeople(shift.shop, [{ person: personId('wren'), name: 'Wren', role: 'foreman' }], []).people).toEqual(shift.shop.people);
  });

  it('is taken on by nobody else, and only when somebody of that name has spoken here', () => {
    expect(refused(knowsSam(), 'tomek', { kind: 'adopt', person: 'sam', role: null })).toBe('foreman-only');
    expect(refused(knowsSam(), 'ines', { kind: 'adopt', person: 'sma', role: null })).toBe('unknown-person');
    expect(knowsSam().says('ines', '10:00', { kind: 'adopt', person: 'wren', role: 'foreman' })).toMatchObject({ ok: true, facts: [] });
  });
});
