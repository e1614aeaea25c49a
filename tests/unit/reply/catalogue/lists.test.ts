import { describe, expect, it } from 'vitest';
import { later } from '../../../../src/cure/units.js';
import { jobNo, lampName, personId } from '../../../../src/repair/ids.js';
import type { Reminder } from '../../../../src/repair/reminder.js';
import type { Language } from '../../../../src/repair/shop.js';
import { waitingList, type Waiting } from '../../../../src/repair/waiting.js';
import type { Answer } from '../../../../src/reply/answer.js';
import { composeHome } from '../../../../src/reply/compose/home.js';
import { composeLamps } from '../../../../src/reply/compose/lamps.js';
import { composeBundle, composeWaiting } from '../../../../src/reply/compose/lists.js';
import { composeHanded, composeOffer, composeStranger } from '../../../../src/reply/compose/people.js';
import { composeSheet } from '../../../../src/reply/compose/sheet.js';
import { takeoverLines } from '../../../../src/reply/compose/takeover.js';
import { composeTogether } from '../../../../src/reply/compose/together.js';
import type { Setting } from '../../../../src/reply/compose/words.js';
import { toText } from '../../../../src/reply/to-text.js';
import { on } from '../../../support/joint.js';
import { Shift, warm } from '../../../support/shift.js';

const lines = (answer: Answer): string[] => toText(answer).split('\n');

/** 501 due under lamp A, 502 in the air, 503 open. */
const shift = new Shift();
shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P2', setting: warm(35), lamp: lampName('A') });
shift.enters('wren', '08:30', { kind: 'cure', job: '502', card: 'P1' });
shift.enters('tomek', '09:00', { kind: 'paste', job: '503', card: 'P1' });
shift.until('09:30');

const NOW = on('09:30');
const outlooks = shift.jobs().flatMap((job) => shift.outlooks(job));
const list: Waiting[] = waitingList(outlooks, NOW);
const setting = (language: Language): Setting => ({ shop: shift.shop, now: NOW, language });
const DE = setting('de');
const ES = setting('es');
const CARDS_DE = 'P2, P1 sind Beispielkarten, nicht deine Datenblätter.';
const CARDS_ES = 'P2, P1 son fichas de ejemplo, no tus hojas de datos.';

describe('the cars that wait', () => {
  it('are listed in German', () => {
    expect(lines(composeWaiting(list, DE, [personId('kim')]))).toEqual([
      '501 jetzt prüfen, Handfestigkeit fällig 09:20 (vor 10 min), Tomek, Strahler A 35 °C',
      '503 Blech schließen bis 10:00, Tomek, Luft 20 °C',
      '502 Handfestigkeit 13:30, Wren, Luft 20 °C',
      'Will etwas eingeben, für den Meister: Kim (`adopt kim` oder `refuse kim`).',
      CARDS_DE,
    ]);
  });

  it('are listed in Spanish', () => {
    expect(lines(composeWaiting(list, ES))).toEqual([
      '501 comprobar ya, resistencia de manipulación: toca desde 09:20 (hace 10 min), Tomek, lámpara A 35 °C',
      '503 cerrar el panel antes de 10:00, Tomek, aire 20 °C',
      '502 resistencia de manipulación 13:30, Wren, aire 20 °C',
      CARDS_ES,
    ]);
    expect(lines(composeWaiting([], ES))).toEqual(['Ningún coche espera un curado.']);
  });

  it('are counted at opening and at closing', () => {
    const bundle = (bell: 'opening' | 'closing', language: Language): string[] => {
      const said = composeBundle({ bell, at: NOW }, list, later(NOW, on('18:00')), setting(language));
      return said === null ? [] : lines(said.answer);
    };
    expect([bundle('opening', 'de').at(0), bundle('opening', 'de').at(-2)]).toEqual(['Werkstatt öffnet. 1 Prüfung fällig, 0 schlafen, 2 laufen.', 'Zuerst die Werkstattluft messen: bis dahin zählt die Nachteinstellung.']);
    expect([bundle('closing', 'es').at(0), bundle('closing', 'es').at(-2)]).toEqual(['Cierre. Toca 1 prueba, 0 duermen, antes de abrir: 2.', 'Ninguna lámpara funciona sola: ¿apagada?']);
  });

  it('stand on the home board with buttons that send the same lines', () => {
    expect(composeHome(list, personId('tomek'), ES).mine[0]?.buttons).toEqual([
      { label: 'Duro', line: 'check 501 j1 handling hard' },
      { label: 'Blando', line: 'check 501 j1 handling soft' },
      { label: 'Cuándo', line: 'when 501 j1' },
    ]);
  });
});

it('the lamps of the shop', () => {
  expect([lines(composeLamps(outlooks, DE))[0], lines(composeLamps(outlooks, ES))[0]]).toEqual(['A 501 35 °C, fällig seit 09:20', 'A 501 35 °C, toca desde 09:20']);
  expect(lines(composeLamps([], DE))[0]).toBe('A frei');
});

it('the sheet of a job is in the language of the shop', () => {
  const sheet = (language: Language): string[] => lines(composeSheet(jobNo('501'), shift.outlooks('501'), { ...shift.shop, language }));
  expect(sheet('de').slice(0, 3)).toEqual(['Auftrag 501', 'j1 P2, Tomek, Strahler A 35 °C: Handfestigkeit Mo 2 Mär 09:20, nicht geprüft; Endfestigkeit: noch keine Zeit', 'Zeiten, Prüfungen und Warnungen zu diesem Auftrag stehen in diesem Thread.']);
  expect(sheet('es').slice(0, 2)).toEqual(['Trabajo 501', 'j1 P2, Tomek, lámpara A 35 °C: resistencia de manipulación: lun 2 mar 09:20, sin comprobar; resistencia final: aún sin hora']);
});

it('who has what from now on', () => {
  expect(lines(composeHanded(jobNo('501'), personId('wren'), personId('tomek'), [], DE))).toEqual(['501 ist jetzt bei Wren (Tomek 09:30).']);
  expect(lines(composeOffer(personId('tomek'), [jobNo('501'), jobNo('503')], shift.outlooks('501'), ES)).slice(0, 2)).toEqual(['Relevo de Tomek: 501, 503. Tuyos en cuanto aceptes.', 'Siguiente: 501 comprobar ya, resistencia de manipulación: toca desde 09:20 (hace 10 min).']);
  expect(lines(composeStranger(personId('kim'), DE))).toEqual(['Kim gehört nicht zur Werkstatt und wollte etwas eingeben. Nichts gespeichert. Aufnehmen?']);
});

it('the end of a shift asks who takes over', () => {
  const end: Reminder | undefined = shift.plan().map((one) => ({ ...one, dueAt: NOW, step: 0, to: personId('tomek') })).at(0);
  if (end === undefined) throw new Error('nothing is planned');
  const own = [...shift.outlooks('501'), ...shift.outlooks('503')];
  expect(takeoverLines(end, own, DE)).toEqual(['**Deine Schicht endet 09:30**, noch am Laufen: 501, 503. **Wer übernimmt?**', 'Sie bleiben bei dir, bis jemand annimmt.', 'Nicht alle: `handover Ines except 501`.']);
  expect(takeoverLines({ ...end, step: 1, to: personId('ines') }, own, ES)).toEqual(['**Nadie ha tomado el relevo** de Tomek, fin de turno 09:30: 501, 503.', 'Lo que toque te llega a ti.', 'Pásalos uno a uno: `hand 501 to NOMBRE`.']);
});

it('many questions in one', () => {
  const [outlook] = outlooks;
  if (outlook === undefined) throw new Error('nothing runs');
  const posts = [1, 2].map(() => ({ said: composeWaiting(list, DE), outlook, job: null }));
  expect([lines(composeTogether(posts, DE).answer).at(0), lines(composeTogether(posts, DE).answer).at(3)]).toEqual(['2 Fragen auf einmal, damit das Telefon nicht die ganze Stunde klingelt.', 'Antworte mit dem Auftrag: `hard 501`, `on 501`.']);
});

it('many questions in one say of each job that it stands still', () => {
  const held = new Shift();
  held.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
  held.enters('ines', '08:10', { kind: 'hold', job: '501', reason: 'panel bowed' });
  const said = composeTogether([{ said: composeWaiting([], DE), outlook: held.outlook('501'), job: held.job('501') }], DE).answer;
  expect(lines(said).at(1)).toMatch(/ GESPERRT seit 08:10 von Ines: „panel bowed“, der Meister entscheidet\.$/);
});
