import { describe, expect, it } from 'vitest';
import { celsius } from '../../../../src/cure/units.js';
import { isJobCommand } from '../../../../src/repair/commands.js';
import { entryNo, jointNo, personId } from '../../../../src/repair/ids.js';
import { nextSteps } from '../../../../src/repair/next-steps.js';
import type { Language } from '../../../../src/repair/shop.js';
import type { Answer } from '../../../../src/reply/answer.js';
import { composeAnswered } from '../../../../src/reply/compose/answered.js';
import { composeJobEntry } from '../../../../src/reply/compose/job-entry.js';
import { composeNext } from '../../../../src/reply/compose/procedure.js';
import { composeRefusal } from '../../../../src/reply/compose/refusal.js';
import { toText } from '../../../../src/reply/to-text.js';
import { on } from '../../../support/joint.js';
import { warm } from '../../../support/shift.js';
import { aStep, Walk } from '../../../support/walk.js';

type Short = Parameters<Walk['says']>[2];
interface Said {
  readonly lines: readonly string[];
  readonly buttons: readonly string[];
}

const job = '501';
const said = (answer: Answer): Said => ({ lines: toText(answer).split('\n'), buttons: answer.buttons.map(({ label, line }) => `${label}: ${line}`) });

/** What a command about the steps is answered with, in a language. */
function hears(walk: Walk, language: Language, [who, when, short]: readonly [string, string, Short]): Said {
  const setting = { shop: walk.shop, now: on(when), language };
  const command = walk.command(short, on(when));
  const decision = walk.says(who, when, short);
  if (!decision.ok) return said(composeRefusal(decision.refusal, setting));
  if (!isJobCommand(command)) throw new Error(`${short.kind} is no command about a job`);
  return said(composeJobEntry({ command, by: personId(who), facts: decision.facts, notes: decision.notes, entry: walk.facts.at(-1)?.entry ?? entryNo(0), job: walk.job(job), outlooks: walk.outlooks(job), air: walk.air() }, setting));
}

function next(walk: Walk, language: Language, when: string): Said {
  const setting = { shop: walk.shop, now: on(when), language };
  const found = nextSteps({ kind: 'next', job: null, joint: null }, walk.situation('tomek', on(when)));
  return said(found.ok ? composeNext(found.next, setting) : composeRefusal(found.refusal, setting));
}

/** `do:` of these steps is the shop's own text: shown as written, whoever reads it. */
const bonding = (): Walk => Walk.through(aStep('bond', { act: 'Paste on both faces', taps: ['both components flow', 'bead binned'], enter: ['batch', 'expiry'], sign: ['technician', 'foreman', 'quality'] }), aStep('off', { needs: [{ need: 'confirmed', joint: jointNo('j1'), milestone: 'handling' }] }));

const EXPIRED = ['tomek', '08:06', { kind: 'enter', job, what: 'expiry', text: '02/2026' }] as const;
const OVERRIDE = ['ines', '08:07', { kind: 'override', job, step: 'bond', reason: 'Blatt gibt drei Monate mehr' }] as const;

function expired(): Walk {
  const walk = bonding();
  walk.enters(...EXPIRED);
  return walk;
}

function underLamp(): Walk {
  const walk = bonding();
  walk.enters('tomek', '08:05', { kind: 'cure', job, card: 'K', setting: warm(30) });
  return walk;
}

function damp(): Walk {
  const walk = Walk.through(aStep('bond', { needs: [{ need: 'dew-margin' }, { need: 'joint-below', joint: jointNo('j1'), temperature: celsius(40) }] }));
  walk.enters('tomek', '08:01', { kind: 'air', value: warm(18), humidity: 70 });
  walk.enters('tomek', '08:03', { kind: 'cure', job, card: 'P1', setting: warm(60) });
  walk.enters('tomek', '08:04', { kind: 'read', job, value: warm(15) });
  return walk;
}

/** Read aloud in a workshop, each of them. */
const ANSWERS: readonly (readonly [string, Exclude<Language, 'en'>, () => Said, Said])[] = [
  ['what comes next', 'de', () => next(underLamp(), 'de', '08:06'), {
    lines: ['501 bond: Paste on both faces. Ab Techniker. Charge, Ablaufdatum eingeben.', 'off wartet: Handfestigkeit an j1 nicht bestätigt (frühestens 09:05).'],
    buttons: ['Both components flow: tap 501 bond 1', 'Bead binned: tap 501 bond 2'],
  }],
  ['what comes next', 'es', () => next(underLamp(), 'es', '08:06'), {
    lines: ['501 bond: Paste on both faces. Técnico o superior. Anota lote, fecha de caducidad.', 'off espera: resistencia de manipulación en j1 sin confirmar (como pronto 09:05).'],
    buttons: ['Both components flow: tap 501 bond 1', 'Bead binned: tap 501 bond 2'],
  }],
  ['a tap', 'de', () => hears(bonding(), 'de', ['tomek', '08:05', { kind: 'tap', job, step: 'bond', tap: 0 }]), {
    lines: ['501 bond: „both components flow“, Tomek 08:05.', 'Weiter: bond: noch „bead binned“ antippen; Charge, Ablaufdatum eingeben.'],
    buttons: ['Bead binned: tap 501 bond 2', 'Zurücknehmen: undo 2'],
  }],
  ['a tap', 'es', () => hears(bonding(), 'es', ['tomek', '08:05', { kind: 'tap', job, step: 'bond', tap: 0 }]), {
    lines: ['501 bond: «both components flow», Tomek 08:05.', 'Sigue: bond: falta: toca «bead binned»; anota lote, fecha de caducidad.'],
    buttons: ['Bead binned: tap 501 bond 2', 'Deshacer: undo 2'],
  }],
  ['a label out of date', 'de', () => hears(bonding(), 'de', EXPIRED), {
    lines: ['501 bond: abgelaufen: GESPERRT, 02/2026. Nimm ein neues und gib sein Datum ein; mit diesem geht es nur durch den Meister weiter, mit Grund.'],
    buttons: ['Zurücknehmen: undo 2'],
  }],
  ['a label out of date', 'es', () => hears(bonding(), 'es', EXPIRED), {
    lines: ['501 bond: caducado: RETENIDO, 02/2026. Toma uno nuevo y anota su fecha; con este solo puede seguir el jefe de taller, con un motivo.'],
    buttons: ['Deshacer: undo 2'],
  }],
  ['an override', 'de', () => hears(expired(), 'de', OVERRIDE), {
    lines: ['501 bond: Ausnahme 08:07, Ines, nur dafür: abgelaufen (02/2026). Es darf weitergehen; jede Antwort zum Auftrag zeigt es.', 'Weiter: bond: Paste on both faces. Ab Techniker. Ausnahme von Ines. Charge eingeben.', 'Ausnahme: bond, Ines 08:07: „Blatt gibt drei Monate mehr“.'],
    buttons: ['Both components flow: tap 501 bond 1', 'Bead binned: tap 501 bond 2', 'Zurücknehmen: undo 3'],
  }],
  ['an override', 'es', () => hears(expired(), 'es', OVERRIDE), {
    lines: ['501 bond: excepción 08:07, Ines, solo para esto: caducado (02/2026). Puede seguir; cada respuesta sobre el trabajo lo muestra.', 'Sigue: bond: Paste on both faces. Técnico o superior. Excepción de Ines. Anota lote.', 'Excepción: bond, Ines 08:07: «Blatt gibt drei Monate mehr».'],
    buttons: ['Both components flow: tap 501 bond 1', 'Bead binned: tap 501 bond 2', 'Deshacer: undo 3'],
  }],
  ['damp metal', 'de', () => next(damp(), 'de', '08:05'), { lines: ['501 bond wartet: GESPERRT: Metall nur 2,6 °C über dem Taupunkt von 12,4 °C, 3 °C nötig; j1 muss erst unter 40 °C gemessen sein.'], buttons: [] }],
  ['damp metal', 'es', () => next(damp(), 'es', '08:05'), { lines: ['501 bond espera: RETENIDO: metal solo 2,6 °C sobre el punto de rocío de 12,4 °C, hacen falta 3 °C; j1 tiene que leerse por debajo de 40 °C.'], buttons: [] }],
  ['a signature of somebody who may not', 'de', () => hears(bonding(), 'de', ['wren', '08:09', { kind: 'sign', job, step: 'bond' }]), { lines: ['501 bond: das ist für Techniker, Meister oder Qualität (Ines, Tomek, Quinn). Nichts gespeichert.'], buttons: [] }],
  ['a signature of somebody who may not', 'es', () => hears(bonding(), 'es', ['wren', '08:09', { kind: 'sign', job, step: 'bond' }]), { lines: ['501 bond: eso es para técnico, jefe de taller o calidad (Ines, Tomek, Quinn). Nada guardado.'], buttons: [] }],
  ['filler over a bond nobody confirmed', 'de', () => hears(underLamp(), 'de', ['tomek', '08:06', { kind: 'cure', job, joint: 'j2', card: 'F1' }]), { lines: ['501 GESPERRT: Endfestigkeit von K an j1 nicht bestätigt. F1 darüber hebt ab und zeichnet sich später ab. Weiter nur durch den Meister: `override 501 fill Grund`. Nichts gespeichert.'], buttons: [] }],
  ['filler over a bond nobody confirmed', 'es', () => hears(underLamp(), 'es', ['tomek', '08:06', { kind: 'cure', job, joint: 'j2', card: 'F1' }]), { lines: ['501 RETENIDO: resistencia final de K en j1 sin confirmar. F1 encima se levanta y se nota más tarde. Solo puede seguir el jefe de taller: `override 501 fill motivo`. Nada guardado.'], buttons: [] }],
];

describe('answers about the steps of a job', () => {
  it.each(ANSWERS)('%s in %s', (_, __, heard, expected) => {
    expect(heard()).toEqual(expected);
  });

  it('a question that is asked no more', () => {
    const walk = bonding();
    const settled = (language: Language, end: 'done' | 'overtaken', result: 'hard' | 'soft' | null): string => toText(composeAnswered({ tone: 'plain', lines: [], buttons: [] }, { end, by: personId('ines'), said: result }, { shop: walk.shop, now: on('09:05'), language }));
    expect([settled('de', 'done', 'soft'), settled('de', 'overtaken', null), settled('es', 'done', 'hard'), settled('es', 'overtaken', null)]).toEqual(['erledigt von Ines 09:05 (weich)', 'gilt nicht mehr, geändert von Ines 09:05', 'hecho por Ines 09:05 (duro)', 'ya no es así, lo cambió Ines 09:05']);
  });
});
