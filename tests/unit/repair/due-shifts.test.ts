import { describe, expect, it } from 'vitest';
import { minutes } from '../../../src/cure/units.js';
import { jobNo, personId } from '../../../src/repair/ids.js';
import type { Person, ShopShift } from '../../../src/repair/shop.js';
import { exampleShop, weekdays } from '../../support/example-shop.js';
import { said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const bo: Person = { id: personId('bo'), name: 'Bo', role: 'foreman', chatId: null, language: 'en', unit: null };
const sam: Person = { id: personId('sam'), name: 'Sam', role: 'technician', chatId: null, language: 'en', unit: null };
const EVERY_DAY = [1, 2, 3, 4, 5, 6, 7];
const shiftOf = (name: string, begins: number, ends: number, ...people: string[]): ShopShift => ({ name, days: EVERY_DAY, begins: begins * 60, ends: ends * 60, people: people.map(personId) });

/** Early 06-14 with Ines (foreman) and Tomek, late 14-22 with Wren, night 22-06 with Bo (foreman) and Sam; heated day and night. */
const EARLY = shiftOf('early', 6, 14, 'ines', 'tomek');
const LATE = shiftOf('late', 14, 22, 'wren');
const NIGHT = shiftOf('night', 22, 30, 'bo', 'sam');

const shop = (...shifts: ShopShift[]): Shift => new Shift({ people: [...exampleShop().people, bo, sam], hours: weekdays('07:30', '17:00'), shifts });

/** P1 with 30 °C at the joint: handling 150 min after closing. */
function warmP1(shift: Shift, at: string, who = 'tomek', job = '501'): Shift {
  shift.enters(who, at, { kind: 'cure', job, card: 'P1' });
  shift.enters(who, at, { kind: 'read', job, value: warm(30) });
  return shift;
}

describe('a check that comes due', () => {
  it('goes to the owner on shift, and up to the foreman on duty', () => {
    const shift = warmP1(shop(EARLY, NIGHT), '09:33');
    shift.until('13:59');
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek', '12:13 handling tomek', '12:33 handling tomek', '12:53 handling ines']);
  });

  it('goes to the foreman on duty when the shift of its owner is over', () => {
    const shift = warmP1(shop(shiftOf('short', 6, 12, 'tomek'), shiftOf('long', 6, 14, 'ines')), '09:33');
    shift.until('12:30');
    expect(shift.heard('handling')).toEqual(['12:03 handling ines', '12:13 handling ines']);
  });

  it('waits for the opening where nobody is there, and leads the list then', () => {
    const shift = warmP1(shop(shiftOf('day', 8, 14, 'ines', 'tomek')), '13:00');
    shift.until('Tue 07:29');
    expect(shift.heard('handling')).toEqual([]);
    expect(shift.plan().filter((one) => one.kind === 'handling')).toMatchObject([{ route: 'bundle', to: 'tomek' }]);
  });

  it('reaches the foreman, alone, whose shift begins as the shop opens, when nobody answered in the night', () => {
    const shift = new Shift({ people: [...exampleShop().people, bo, sam], hours: weekdays('06:00', '22:00'), shifts: [EARLY, shiftOf('night', 22, 30, 'sam')] });
    shift.enters('sam', '22:10', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('sam', '22:10', { kind: 'read', job: '501', value: warm(65) });
    shift.until('Tue 06:30');
    expect(shift.posts.filter(({ kind, step }) => kind === 'handling' && step === 3).map(({ saidAt, to, route }) => `${said(saidAt)} ${to} ${route}`)).toEqual(['Tue 06:00 ines alone']);
  });

  it('waits for the shift of its owner where that begins before the opening', () => {
    const shift = warmP1(shop(shiftOf('dawn', 6, 14, 'tomek')), '13:00');
    shift.until('Tue 06:05');
    expect(shift.heard('handling')).toEqual(['Tue 06:00 handling tomek']);
  });

  it('is asked in the night of whoever works then, though the shop is closed', () => {
    const shift = shop(NIGHT);
    shift.enters('sam', '22:00', { kind: 'cure', job: '501', card: 'P2', setting: warm(35) });
    shift.enters('sam', '22:00', { kind: 'stay', job: '501' });
    shift.until('23:40');
    expect(shift.heard('handling')).toEqual(['23:20 handling sam', '23:30 handling sam']);
  });

  it('ends with the foreman, once', () => {
    const shift = warmP1(shop(EARLY), '06:00');
    shift.until('13:59');
    expect(shift.heard('handling')).toHaveLength(4);
    shift.until('Thu 05:00');
    expect(shift.heard('handling')).toHaveLength(4);
  });
});

describe('a handover', () => {
  const offered = (): Shift => {
    const shift = warmP1(shop(EARLY, LATE, NIGHT), '12:00');
    shift.enters('tomek', '13:50', { kind: 'handover', to: 'wren', except: [] });
    return shift;
  };

  it('counts from the acceptance: until then both hear, once the shift of the giver is over', () => {
    const shift = offered();
    shift.until('14:45');
    expect(shift.heard('handling').sort()).toEqual(['14:30 handling tomek', '14:30 handling wren', '14:40 handling tomek', '14:40 handling wren']);
  });

  it('says to the second what only the first has heard when the bot went down between the two', () => {
    const shift = offered();
    shift.until('14:29');
    const [first] = shift.plan().filter((one) => one.kind === 'handling');
    if (first === undefined) throw new Error('nothing planned');
    shift.enter('clerk', first.ringAt, [{ job: jobNo('501'), happenedAt: first.ringAt, fact: { type: 'reminder-raised', cure: first.cure, kind: first.kind, round: first.round, step: first.step, dueAt: first.dueAt, to: first.to } }]);
    expect(shift.plan().filter((one) => one.kind === 'handling')).toMatchObject([{ step: 0, to: first.to === 'wren' ? 'tomek' : 'wren' }]);
  });

  it('to a foreman does not make two out of the one step that is for the foreman, whoever comes on duty', () => {
    const shift = warmP1(shop(shiftOf('short', 6, 12, 'tomek'), shiftOf('long', 6, 14, 'bo'), shiftOf('late', 13, 20, 'ines')), '09:33');
    shift.enters('tomek', '11:50', { kind: 'handover', to: 'bo', except: [] });
    shift.enters('wren', '13:00', { kind: 'busy', minutes: minutes(5) });
    shift.until('13:59');
    expect(shift.posts.filter((post) => post.kind === 'handling' && post.step === 3).map((post) => `${said(post.saidAt)} ${post.to}`)).toEqual(['12:53 bo']);
  });

  it('makes the taker the owner', () => {
    const shift = offered();
    shift.enters('wren', '14:05', { kind: 'accept' });
    shift.until('14:35');
    expect(shift.outlook('501').cure.owner).toBe('wren');
    expect(shift.heard('handling')).toEqual(['14:30 handling wren']);
  });

  it('that is taken back leaves everything as it was', () => {
    const shift = offered();
    shift.enters('wren', '14:05', { kind: 'accept' });
    shift.enters('wren', '14:06', { kind: 'undo' });
    expect(shift.outlook('501').cure.owner).toBe('tomek');
    expect(shift.people().offers.map((offer) => offer.accepted)).toEqual([null]);
  });
});

describe('what cannot wait', () => {
  it('open limits come at once to owner, foreman and everyone at work when the owner is not', () => {
    const shift = shop(shiftOf('short', 6, 12, 'tomek'), shiftOf('long', 6, 22, 'wren', 'sam'));
    shift.enters('tomek', '11:30', { kind: 'paste', job: '501', card: 'P1' });
    shift.until('12:31');
    expect(shift.heard('open-limit').sort()).toEqual(['12:20', '12:30'].flatMap((at) => ['ines', 'sam', 'tomek', 'wren'].map((to) => `${at} open-limit ${to}`)));
  });

  it('too much heat comes to owner and foreman at once, to everyone at work, and to others when their shift begins', () => {
    const shift = warmP1(shop(EARLY, LATE), '13:40');
    shift.enters('tomek', '13:50', { kind: 'read', job: '501', value: warm(88) });
    shift.until('13:50');
    expect(shift.heard('safety').sort()).toEqual(['13:50 safety ines', '13:50 safety tomek']);
    shift.until('14:01');
    expect(shift.heard('safety').filter((one) => one.endsWith('wren'))).toEqual(['14:00 safety wren']);
  });

  it('a decision is asked of the foreman on duty', () => {
    const shift = shop(EARLY, NIGHT);
    shift.enters('sam', '22:10', { kind: 'paste', job: '501', card: 'P1' });
    shift.until('23:30');
    expect(shift.heard('decision')).toEqual(['23:10 decision bo']);
  });
});

describe('busy', () => {
  it('holds back what can wait, which then rings once', () => {
    const shift = warmP1(new Shift(), '09:33');
    shift.enters('tomek', '11:55', { kind: 'busy', minutes: minutes(25) });
    shift.until('12:25');
    expect(shift.heard('handling')).toEqual(['12:20 handling tomek']);
  });

  it('never keeps it from the foreman longer than silence would', () => {
    const shift = warmP1(new Shift(), '09:33');
    shift.enters('tomek', '11:55', { kind: 'busy', minutes: minutes(120) });
    shift.until('13:50');
    expect(shift.heard('handling')).toEqual(['12:53 handling ines']);
  });

  it('that began after the first message shortens no wait for the foreman either', () => {
    const shift = warmP1(new Shift(), '09:33');
    shift.enters('tomek', '12:05', { kind: 'busy', minutes: minutes(30) });
    shift.until('14:00');
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek', '12:35 handling tomek', '12:53 handling ines']);
  });

  it('does not hold back the open limit, nor too much heat', () => {
    const shift = warmP1(new Shift(), '09:00');
    shift.enters('tomek', '09:00', { kind: 'paste', job: '502', card: 'P1' });
    shift.enters('tomek', '09:10', { kind: 'busy', minutes: minutes(90) });
    shift.enters('wren', '09:40', { kind: 'read', job: '501', value: warm(88) });
    shift.until('10:00');
    expect(shift.heard('open-limit')).toEqual(['09:50 open-limit tomek', '10:00 open-limit tomek']);
    expect(shift.heard('safety').filter((one) => one.endsWith('tomek'))[0]).toBe('09:40 safety tomek');
  });

  it('ends when it is said anew, or taken back', () => {
    const shift = warmP1(new Shift(), '09:33');
    shift.enters('tomek', '11:55', { kind: 'busy', minutes: minutes(60) });
    shift.enters('tomek', '12:00', { kind: 'busy', minutes: minutes(5) });
    shift.enters('tomek', '12:01', { kind: 'undo' });
    shift.enters('tomek', '12:02', { kind: 'busy', minutes: minutes(5) });
    shift.until('12:10');
    expect(shift.heard('handling')).toEqual(['12:07 handling tomek']);
  });

  it('in the evening leaves it to the opening, and does not wake the foreman instead', () => {
    const shift = warmP1(new Shift(), '14:25');
    shift.enters('tomek', '16:50', { kind: 'busy', minutes: minutes(60) });
    shift.until('Tue 07:29');
    expect(shift.heard('handling')).toEqual([]);
    expect(shift.plan().filter((one) => one.kind === 'handling')).toMatchObject([{ route: 'bundle', to: 'tomek', step: 0 }]);
  });
});

describe('the first check of an apprentice', () => {
  it('leaves the check due; the second tap is asked of the foreman where the owner is the apprentice', () => {
    const shift = warmP1(new Shift(), '09:33', 'wren');
    expect(shift.enters('wren', '12:05', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ facts: [{ fact: { role: 'apprentice' } }], notes: [{ note: 'first-check' }] });
    shift.until('12:20');
    expect(shift.heard('handling')).toEqual(['12:03 handling wren', '12:13 handling ines']);
    shift.enters('tomek', '12:21', { kind: 'check', job: '501', result: 'hard' });
    shift.until('16:00');
    expect(shift.heard('handling')).toHaveLength(2);
    expect(shift.outlook('501').milestones[0]?.check).toMatchObject({ phase: 'confirmed', answer: { by: 'tomek' } });
  });

  it('goes on to be asked of the owner where that is somebody else', () => {
    const shift = warmP1(new Shift(), '09:33');
    shift.enters('wren', '12:05', { kind: 'check', job: '501', result: 'hard' });
    shift.until('12:20');
    expect(shift.heard('handling')).toEqual(['12:03 handling tomek', '12:13 handling tomek']);
  });
});
