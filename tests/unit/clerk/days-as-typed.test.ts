import { DateTime } from 'luxon';
import { expect, it } from 'vitest';
import { celsius, instant, minutes } from '../../../src/cure/units.js';
import { lampName, personId } from '../../../src/repair/ids.js';
import type { OpeningHours, Person, Shop, ShopShift } from '../../../src/repair/shop.js';
import { DeskDay } from '../../support/desk-day.js';
import { exampleShop, weekdays } from '../../support/example-shop.js';
import { missedIn, type TypedRow } from '../../support/typed-rows.js';

// Days and messages as they are typed in shops: common practice, no source. Shops, people, jobs and figures are invented.

const person = (id: string, role: Person['role']): Person => ({ id: personId(id), name: id.charAt(0).toUpperCase() + id.slice(1), role, chatId: null, language: 'en', unit: null });
const lamps = (...names: string[]): Pick<Shop, 'lamps' | 'pads'> => ({ lamps: names.map(lampName), pads: [] });

it('two people, one lamp: what they type gets what they need', () => {
  const shop = { hours: weekdays('08:00', '17:00'), ...lamps('A'), air: null, people: [person('olly', 'foreman'), person('petra', 'technician')], rhythm: { ...exampleShop().rhythm, stillOn: minutes(40) } };
  const rows: TypedRow[] = [
    ['08:12', 'olly', 'air 14', 'Air 14 °C noted 08:12', 'P1 needs 15 °C', 'nothing would count at 14 °C'],
    ['08:55', 'olly', 'paste 31 p1 air 19 now', '31 P1 paste on 08:55', 'Air 19 °C', 'may still be colder: measure', 'by 09:55 (60 min', '[Closed]'],
    ['09:34', 'petra', 'olly says its shut 31', '31 closed 09:34. 39 of 60 min used.'],
    ['09:52', 'olly', '31 lmp 35 startd 10 min ago', '31 lamp 35 °C since 09:42', 'Take one reading', 'until then only the air counts', '[It is P2]'],
    ['09:53', 'olly', 'no its p2 not p1', '31 is P2, not P1 (changed 09:53)', 'Handling strength 11:02 by the clock'],
    ['10:22', 'bot', 'still-on olly', '31 still on? lamp 35 °C', '[On]', '[Off]', '[Not sure]'],
    ['10:40', 'olly', 'on', '31 on 10:40, thanks', 'Handling strength 11:02'],
    ['11:02', 'bot', 'handling olly', '31 handling strength due 11:02 by the clock', 'witness bead at the coldest spot', '[Hard]', '[Soft]', '[Later 10]'],
    ['11:09', 'olly', 'hrd', '31 handling strength confirmed 11:09 by Olly', 'if the repair method agrees', 'lamp 55 °C for 130 min', '[Turned up]'],
    ['11:14', 'olly', 'up', '31 lamp 55 °C since 11:14', 'Full strength 13:24'],
    ['11:31', 'petra', 'can i sand 31', '31 NOT yet. Full 13:24 earliest', 'Squeeze-out clogs paper'],
    ['12:03', 'petra', 'im here', '31 attended by Petra now', '-with the lamp past closing'],
    ['12:50', 'olly', 'on'],
    ['13:24', 'bot', 'full olly', '31 full strength due 13:24 by the clock', 'Lamp off', '[Hard]', '[Soft]'],
    ['13:30', 'olly', 'hrd', '31 full strength confirmed 13:30 by Olly', 'Lamp off'],
    ['13:31', 'olly', 'off 31'],
    ['15:40', 'petra', 'cure 33 f1 lamp 60'],
    ['16:10', 'petra', 'read 33 60'],
    ['16:40', 'olly', 'wats open', '33 sanding time 16:55, Petra', 'Nothing runs after 17:00'],
  ];
  expect(missedIn(rows, new DeskDay(shop))).toEqual([]);
});

it('twelve bays, three lamps: what they type gets what they need', () => {
  const shop = { night: celsius(16), ...lamps('L1', 'L2', 'L3'), people: [person('ines', 'foreman'), ...['ana', 'mo', 'dee', 'kit'].map((id) => person(id, 'technician'))] };
  const rows: TypedRow[] = [
    ['Tue 10:40', 'mo', 'cure 402 p1 air 20'],
    ['Tue 15:40', 'mo', 'hard 402'],
    ['Wed 08:00', 'mo', 'air 20'],
    ['Wed 11:00', 'ana', 'cure 417 f1'],
    ['Wed 17:00', 'ana', 'cure 388 t1'],
    ['Thu 06:20', 'kit', 'cure 421 p1 lamp 30 L3'],
    ['Thu 06:20', 'kit', 'kit stays 421'],
    ['Thu 06:20', 'kit', 'read 421 30'],
    ['Thu 07:30', 'bot', 'bundle channel', '2 checks due, 1 asleep', '417 check now, sanding time due Wed 18:23', '402 check now, full strength due 05:45', '388 asleep'],
    ['Thu 07:33', 'ines', 'who waits', /417 check now.*\n402 check now.*\n421 handling strength 08:50, Kit, lamp L3 30 °C.*\n388 asleep, sanding time/],
    ['Thu 07:40', 'ana', '402 hard', '402 full strength confirmed 07:40 by Ana (due 05:45)'],
    ['Thu 07:40', 'mo', '402 still soft bottom corner', '402 full strength: two answers, Ana said otherwise. Held as soft', 'The foreman settles it'],
    ['Thu 07:40', 'bot', 'decision ines', 'two answers, held as soft', 'Ana hard 07:40, Mo soft 07:40', '[Hard]', '[Soft]'],
    ['Thu 07:46', 'ines', '402 soft. lamp 2h', '402 soft noted', 'check again 09:46', 'Which lamp, and until when?', '[L1 65 °C]', '[L2 65 °C]', '-[L3'],
    ['Thu 08:03', 'dee', 'start 471 p1 lamp 30', 'No open job 471', '[417]', '[421]', '[New 471]'],
    ['Thu 08:04', 'dee', 'cure 421 P1 lamp 30', '421 j1: P1 runs already since 06:20', '[Other joint]'],
    ['Thu 08:20', 'kit', 'lamp 140', '140 what?', '140 °F = 60 °C', 'Nothing counted yet', '[140 °F]'],
    ['Thu 08:50', 'bot', 'handling kit', '421 handling strength due 08:50', '[Hard]', '[Soft]'],
    ['Thu 09:00', 'bot', 'handling kit', 'No answer for 10 min'],
    ['Thu 09:20', 'bot', 'handling kit', 'No answer for 30 min'],
    ['Thu 09:40', 'bot', 'handling ines', '421 handling strength check waits since 08:50, Kit has not answered'],
    ['Thu 09:41', 'ines', 'dee do 421', "421 is Dee's now; Dee is told", 'due 08:50'],
    ['Thu 09:41', 'bot', 'handover kit', "421 is Dee's now (Ines 09:41)"],
    ['Thu 10:12', 'kit', 'read 421 30,5', '421 reading 30.5 °C'],
    ['Thu 10:13', 'kit', 'read 421 88', '421 TOO HOT 88 °C, limit 85 °C', 'Lamp off or back now', 'The foreman is told; the cure is held', '[Lamp off]', '[Typing error]'],
    ['Thu 10:13', 'bot', 'safety ines', '421 TOO HOT 88 °C'],
    ['Thu 10:14', 'kit', 'sory 58', '421 reading 58 °C, corrected from 88 °C', '-HELD'],
    ['Thu 08:30', 'mo', 'cure 433 p1 lamp 30 L2'],
    ['Thu 08:30', 'mo', 'read 433 30'],
    ['Thu 11:01', 'mo', 'hard 433'],
    ['Thu 11:41', 'mo', 'lamp 433 65 L2'],
    ['Thu 11:50', 'mo', 'read 433 65'],
    ['Thu 13:05', 'mo', 'l2 was off!! dont know when', '433 lamp found off 13:05: heat counts only to 11:50', 'Full strength', '(was ', 'take a reading', '[On]'],
    ['Thu 13:10', 'mo', 'on'],
    ['Thu 13:25', 'mo', 'read 433 65', 'Full strength 14:', 'by the clock'],
    ['Thu 15:58', 'dee', 'start 430 p1 lamp 30', 'the shop closes 17:00, and no lamp runs alone. Who stays? Nothing stored yet', '[I stay]', '[Air only]'],
  ];
  const inOrder = rows.map((row, index) => ({ row, index })).sort((one, other) => DAYS.indexOf(one.row[0].slice(0, 3)) - DAYS.indexOf(other.row[0].slice(0, 3)) || one.row[0].localeCompare(other.row[0]) || one.index - other.index).map(({ row }) => row);
  expect(missedIn(inOrder, new DeskDay(shop, 'Tue 07:00'))).toEqual([]);
});

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu'];

const shift = (name: string, begins: number, ends: number, ...people: string[]): ShopShift => ({ name, days: [1, 2, 3, 4, 5, 6, 7], begins: begins * 60, ends: ends * 60, people: people.map(personId) });

/** The night in which the clocks go back: 24 and 25 October 2026. */
const thatNight = (when: string) => instant(DateTime.fromISO(`2026-10-${when >= '12:00' ? 24 : 25}T${when}`, { zone: 'Europe/Berlin' }).toMillis());

it('a night shift takes over while the clocks go back: what they type gets what they need', () => {
  const open: OpeningHours = { opens: 0, closes: 1440 };
  const shop = {
    zone: 'Europe/Berlin',
    hours: { 1: open, 2: open, 3: open, 4: open, 5: open, 6: open, 7: open },
    ...lamps('L1', 'L2', 'L3'),
    people: [...['ines', 'bo', 'sam'].map((id) => person(id, 'foreman'))],
    shifts: [shift('day', 14, 22, 'ines'), shift('night', 22, 30, 'bo'), shift('early', 6, 14, 'sam')],
  };
  const rows: TypedRow[] = [
    ['17:00', 'ines', 'cure 612 t1'],
    ['17:31', 'ines', 'soft 612'],
    ['17:47', 'ines', 'soft 612'],
    ['19:55', 'ines', 'cure 607 p1 lamp 65 L3'],
    ['19:55', 'ines', 'read 607 65'],
    ['20:05', 'ines', 'cure 604 p1 lamp 30 L2'],
    ['20:05', 'ines', 'read 604 30'],
    ['20:21', 'ines', '607 hard'],
    ['20:57', 'ines', 'on 604'],
    ['21:10', 'ines', 'cure 609 p2 lamp 35 L1'],
    ['21:16', 'ines', '607 hard', 'full strength confirmed 21:16'],
    ['21:16', 'ines', 'off 607'],
    ['21:17', 'ines', 'cure 607 j2 f1 lamp 30 L3'],
    ['21:17', 'ines', 'read 607 j2 32'],
    ['21:45', 'bot', 'handover ines', 'Your shift ends 22:00, still running: 604, 607, 609, 612. Who takes over?', '[Bo]'],
    ['21:50', 'ines', 'bo takes all xcept 612', 'Offered to Bo: 604, 607, 609', 'stay yours until Bo accepts', '612 stays with you'],
    ['21:50', 'bot', 'handover bo', '[Accept]'],
    ['22:04', 'bo', 'ok', 'Accepted 22:04', 'Next for Bo: 609 handling strength 22:30; 604 handling strength 22:35'],
    ['22:05', 'bo', 'on 607 j2'],
    ['22:35', 'bot', 'handling bo', '604 handling strength due 22:35', '[Hard]', '[Soft]'],
    ['22:36', 'bo', '604 hard'],
    ['22:37', 'bo', '609 hard'],
    ['22:50', 'bo', 'paste 615 p1'],
    ['23:00', 'bo', 'on 607 j2'],
    ['23:10', 'bo', 'up 609'],
    ['23:30', 'bo', '615 closed now air 20', '615 closed 23:30', 'Handling strength Sun 03:30 new time'],
    ['23:50', 'bo', 'on 607 j2'],
    ['00:10', 'bo', '607 filler done?', '607 j2 F1', 'Sanding time 00:', '607 P1: full strength confirmed', 'by Ines'],
    ['00:15', 'bo', 'on 609'],
    ['01:15', 'bo', 'on 609'],
    ['01:52', 'down', ''],
    ['01:52', 'bot', 'full bo', '609 full strength due 01:20', 'I was down', '[Hard]', '[Lamp off]'],
    ['01:55', 'bo', 'heatng is off, 11 deg', 'Air 11 °C noted 01:55', '615 handling strength asleep, too cold (needs 15 °C), 48 % of the wait'],
    ['05:50', 'bo', 'handover', /612 HELD, soft twice, foreman decides.*\n607 j2 check now[^]*615 asleep, handling strength, 48 % of the wait/],
    ['05:52', 'bo', 'sam takes all', 'Offered to Sam: 604, 607, 609, 615'],
    ['05:58', 'sam', 'accept', 'Accepted 05:58'],
    ['05:58', 'bo', 'accept', 'Already accepted by Sam 05:58. Nothing changed'],
  ];
  expect(missedIn(rows, new DeskDay(shop, '16:00', thatNight))).toEqual([]);
});

it('what trips people up is asked about or read as meant', () => {
  const rows: TypedRow[] = [
    ['11:00', 'tomek', 'paste 501 p1'],
    ['11:05', 'tomek', 'closed 501 11.40', '11:40 is still to come (now 11:05). Which time? Nothing stored', '[Now]', '[Yesterday]'],
    ['11:10', 'tomek', 'paste 501 p1', '501 j1: P1 runs already since 11:00', '[2nd cartridge]', '[Other joint]'],
    ['11:12', 'tomek', '501 second cartridge', '501 second cartridge 11:12; the open time goes on from 11:00', 'Close the panel by 12:00'],
    ['11:13', 'tomek', 'closed 501 11:11', 'Nothing stored'],
    ['11:20', 'tomek', 'closed 501', '501 closed 11:20', 'Handling strength earliest 16:20'],
    ['11:21', 'tomek', '501 j2 closed p1', '501 j2 closed 11:21'],
    ['11:22', 'tomek', 'lamp 501 30 A', '501: which joint?', '[j1]', '[j2]'],
    ['11:22', 'tomek', 'lamp 501 j1 30 A', '501 lamp A 30 °C since 11:22'],
    ['11:25', 'tomek', 'lamp 501 j1 covers half', '501 lamp covers only part: what lies beside it counts air', '[All covered]'],
    ['11:40', 'tomek', 'read 501 j1 30', 'it does not count', '[On]'],
    ['11:42', 'tomek', 'on 501 j1', '501 on 11:42, thanks'],
    ['11:43', 'tomek', 'off A', '501 lamp off 11:43: air counts since', '[On]'],
    ['13:41', 'tomek', 'closed 502 p1 1.30', '502 closed 13:30'],
  ];
  expect(missedIn(rows, new DeskDay())).toEqual([]);
});

it('a check put off three times goes to the foreman', () => {
  const rows: TypedRow[] = [
    ['08:00', 'tomek', 'cure 501 t1'],
    ['08:30', 'bot', 'sand tomek', '[Later 10]'],
    ['08:31', 'tomek', 'later', '501 asked again in 10 min'],
    ['08:41', 'bot', 'sand tomek'],
    ['08:42', 'tomek', 'later', '501 asked again in 10 min'],
    ['08:52', 'bot', 'sand tomek'],
    ['08:53', 'tomek', 'later', '501 put off again: the foreman is asked in 10 min'],
    ['09:03', 'bot', 'sand ines', '501 sanding time', 'Tomek has not answered', '[Hard]', '[Soft]'],
  ];
  expect(missedIn(rows, new DeskDay())).toEqual([]);
});

it.each<readonly [Person['language'], TypedRow[]]>([
  ['de', [
    ['08:00', 'kim', 'luft 14', 'P1 braucht 15 °C', 'bei 14 °C würde nichts zählen'],
    ['08:10', 'kim', 'kleber 31 p1 luft 19', '31 P1', 'Luft 19 °C; das Blech kann noch kälter sein: messen'],
    ['08:20', 'kim', 'zweite kartusche 31', '31 zweite Kartusche 08:20; die offene Zeit läuft weiter ab 08:10'],
    ['08:40', 'kim', '31 zu', '30 von 60 min gebraucht'],
    ['08:41', 'kim', 'strahler 31 35 A', '[Es ist P2]'],
    ['08:42', 'kim', 'bin da', '31 Kim ist jetzt dabei'],
    ['08:43', 'kim', 'strahler 31 deckt nur halb', 'Strahler deckt nur einen Teil', '[Alles bedeckt]'],
    ['08:50', 'kim', 'härten 32 t1 luft 20'],
    ['09:20', 'kim', '32 weich, strahler', 'Welcher Strahler, und bis wann?', '[A 50 °C]'],
  ]],
  ['es', [
    ['08:00', 'kim', 'aire 14', 'P1 necesita 15 °C', 'a 14 °C no contaría nada'],
    ['08:10', 'kim', 'adhesivo 31 p1 aire 19', '31 P1', 'Aire 19 °C; el metal puede estar más frío: mide'],
    ['08:20', 'kim', 'segundo cartucho 31', '31 segundo cartucho 08:20; el tiempo abierto sigue desde las 08:10'],
    ['08:40', 'kim', '31 cerrado', '30 de 60 min usados'],
    ['08:41', 'kim', 'lámpara 31 35 A', '[Es P2]'],
    ['08:42', 'kim', 'estoy aquí', '31 atendida por Kim ahora'],
    ['08:43', 'kim', 'la lámpara 31 cubre solo la mitad', 'la lámpara cubre solo una parte', '[Todo cubierto]'],
    ['08:50', 'kim', 'curar 32 t1 aire 20'],
    ['09:20', 'kim', '32 blando, lámpara', '¿Qué lámpara y hasta cuándo?', '[A 50 °C]'],
  ]],
])('the same in %s', (language, rows) => {
  expect(missedIn(rows, new DeskDay({ ...lamps('A', 'B'), people: [{ ...person('kim', 'technician'), language }] }))).toEqual([]);
});
