import { describe, expect, it } from 'vitest';
import { LANGUAGES, type Language } from '../../../../src/repair/shop.js';
import { composeJobEntry } from '../../../../src/reply/compose/job-entry.js';
import { toText } from '../../../../src/reply/to-text.js';
import { personId } from '../../../../src/repair/ids.js';
import { isJobCommand } from '../../../../src/repair/commands.js';
import { postsOf } from '../../../support/spoken.js';
import { on } from '../../../support/joint.js';
import { Shift } from '../../../support/shift.js';

/** Welding is said on a job; the lines of the answer to it. */
function welded(shift: Shift, when: string, language: Language): { readonly lines: readonly string[]; readonly buttons: readonly string[] } {
  const short = { kind: 'weld', job: '7220' } as const;
  const command = shift.command(short, on(when));
  const decision = shift.enters('tomek', when, short);
  if (!decision.ok || !isJobCommand(command)) throw new Error('not entered');
  const { facts, notes } = decision;
  const entry = shift.facts.at(-1)?.entry ?? null;
  const answer = composeJobEntry({ command, by: personId('tomek'), facts, notes, entry, job: shift.job('7220'), outlooks: shift.outlooks('7220'), air: shift.air() }, { shop: shift.shop, now: on(when), language });
  return { lines: toText(answer).split('\n'), buttons: answer.buttons.map(({ label, line }) => `${label}: ${line}`) };
}

function waxed(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:00', { kind: 'cure', job: '7220', card: 'W1' });
  return shift;
}

function smoke(): Shift {
  const shift = waxed();
  welded(shift, '09:40', 'en');
  shift.enters('tomek', '09:51', { kind: 'check', job: '7220', milestone: 'fire-watch', result: 'soft' });
  shift.until('09:52');
  return shift;
}

function watched(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:40', { kind: 'weld', job: '7220' });
  shift.enters('tomek', '10:00', { kind: 'done', job: '7220', step: 'weld' });
  shift.until('11:01');
  return shift;
}

describe('hot work on a car with wax in it', () => {
  it('is STOP, in German', () => {
    expect(welded(waxed(), '09:40', 'de')).toEqual({
      lines: ['7220 HALT: keine Hitze, keine Flamme. W1 ist in diesem Auto seit 09:00: das brennt im Hohlraum.', 'Nichts davon zählt. Ines bekommt sofort Bescheid. Brenner weglegen; Reparaturmethode und Meister entscheiden.', 'Rauch? Zuerst die Feuerwehr rufen, dann alle raus. Löschen nur ohne Gefahr für dich; örtliche Regeln gehen vor.'],
      buttons: ['Nicht angefangen: undo 2', 'Schweißen vorbei: done 7220 weld', 'Rauch: check 7220 j1 fire-watch soft'],
    });
  });

  it('is STOP, in Spanish', () => {
    expect(welded(waxed(), '09:40', 'es')).toEqual({
      lines: ['7220 ALTO: ni calor ni llama. W1 está en este coche desde 09:00: arde en la cavidad.', 'Nada de esto cuenta. Se avisa enseguida a Ines. Aparta el soplete; deciden el método de reparación y el jefe de taller.', '¿Humo? Primero llama a los bomberos, luego todos fuera. Apaga solo si no corres peligro; mandan las normas locales.'],
      buttons: ['Sin empezar: undo 2', 'Soldadura terminada: done 7220 weld', 'Humo: check 7220 j1 fire-watch soft'],
    });
  });

  it('says smoke with the fire service before everything else, in every language', () => {
    const posts = LANGUAGES.map((language) => postsOf(smoke(), 'safety', language).at(-1)?.lines);
    expect(posts.map((lines) => lines?.slice(0, 2))).toEqual([
      ['Call the fire service first, then everybody out. Put it out only without danger to yourself; local rules come first. 7220 SMOKE reported 09:51 by Tomek.', 'The watch goes on only when the foreman says so.'],
      ['Zuerst die Feuerwehr rufen, dann alle raus. Löschen nur ohne Gefahr für dich; örtliche Regeln gehen vor. 7220 RAUCH gemeldet 09:51 von Tomek.', 'Die Wache geht erst weiter, wenn der Meister es sagt.'],
      ['Primero llama a los bomberos, luego todos fuera. Apaga solo si no corres peligro; mandan las normas locales. 7220 HUMO avisado 09:51 por Tomek.', 'La vigilancia sigue solo cuando lo diga el jefe de taller.'],
    ]);
  });
});

it('hot work on an unknown car is noted with its caution', () => {
  expect(welded(new Shift(), '09:40', 'de').lines).toEqual([
    '7220 Heißarbeit notiert 09:40. Sonst ist zu diesem Auto nichts eingegeben.',
    'Hitze zieht eine Handbreit weit: kurze Punkte, dazwischen abkühlen lassen, aufhören, wenn es riecht. Eine zweite Person mit Feuerlöscher.',
    'Vorbei? `done 7220 weld` startet die Brandwache von 60 min.',
  ]);
  expect(welded(new Shift(), '16:30', 'es').lines).toEqual([
    '7220 trabajo en caliente anotado 16:30. De este coche no hay nada más anotado.',
    'El calor llega a un ancho de mano: puntos cortos, deja enfriar entre ellos, detente si huele. Una segunda persona con extintor.',
    '¿Terminado? `done 7220 weld` inicia la vigilancia de incendio de 60 min.',
    'El taller cierra antes de que acabe la vigilancia de incendio. ¿Quién se queda hasta 17:30? `stay 7220`',
  ]);
});

it('the end of a fire watch asks for cold, smoke and smell', () => {
  expect([postsOf(watched(), 'fire-watch', 'de').at(-1), postsOf(watched(), 'fire-watch', 'es').at(-1)]).toEqual([
    { lines: ['7220 Brandwache nach der Uhr vorbei 11:00: alles kalt, kein Rauch, kein Geruch?', 'Rückseite abtasten, in den Hohlraum schauen.'], buttons: ['Kalt, kein Rauch: check 7220 j1 fire-watch hard', 'Rauch: check 7220 j1 fire-watch soft'] },
    { lines: ['7220 vigilancia de incendio terminada según el reloj 11:00: ¿todo frío, sin humo, sin olor?', 'Palpa la cara opuesta, mira dentro de la cavidad.'], buttons: ['Frío, sin humo: check 7220 j1 fire-watch hard', 'Humo: check 7220 j1 fire-watch soft'] },
  ]);
});
