import { describe, expect, it } from 'vitest';
import { Day } from '../support/day.js';
import type { ReplyJson } from '../support/program.js';
import { writtenFiles } from '../support/written-files.js';

/** A shop that reads Spanish; Ines reads German, Wren English, Tomek what the shop reads. */
const SHOP = `name: Three languages
zone: Europe/London
hours:
  mon-sun: 07:30-17:00
air: 20
night: 12
language: es
people:
  ines: { name: Ines, role: foreman, language: de }
  tomek: { name: Tomek, role: technician }
  wren: { name: Wren, role: apprentice, language: en }
lamps: [A, B]
`;

const begin = (): Promise<Day> => Day.begin('2026-03-02T07:50', { CURECLERK_SHOP: `${writtenFiles({ 'shop.yaml': SHOP })}/shop.yaml` });

/** Words that only English sentences have; what is to be typed stands in backticks and is English for everybody. */
const ENGLISH = /\b(?:the|is|are|not|yet|and|of|due|check|strength|lamp|until|nothing|answer|reading|earliest|foreman|wait|waits|said|type|job)\b/i;

function expectNoEnglish(text: string, ...words: readonly RegExp[]): void {
  // Lines to be typed are commands, which everybody may type in English.
  expect(text.replace(/`[^`]*`|«[^»]*»|„[^“]*“/g, '')).not.toMatch(ENGLISH);
  for (const word of words) expect(text).toMatch(word);
}

/** The same joint for each of them, at the same minute. */
async function threeCures(heat = ''): Promise<{ readonly day: Day; readonly said: Readonly<Record<'de' | 'es' | 'en', ReplyJson>> }> {
  const day = await begin();
  await day.at('08:00');
  const said = { de: await day.says('ines', `cure 501 P1${heat}`), es: await day.says('tomek', `cure 502 P1${heat}`), en: await day.says('wren', `cure 503 P1${heat}`) };
  await day.at('08:05');
  return { day, said };
}

describe('one shop, three languages', () => {
  it('answers an entry to each in their own', async () => {
    const { said } = await threeCures(' lamp 30');
    expectNoEnglish(said.de.text, /^501 P1 geschlossen 08:00, Strahler 30 °C\.\nHandfestigkeit frühestens 13:00, eher später\./, /P1 ist eine Beispielkarte, nicht dein Datenblatt\.$/);
    expectNoEnglish(said.es.text, /^502 P1 cerrado 08:00, lámpara 30 °C\.\nResistencia de manipulación: como pronto 13:00, seguramente más tarde\./, /P1 es una ficha de ejemplo, no tu hoja de datos\.$/);
    expect(said.en.text).toMatch(/^503 P1 closed 08:00, lamp 30 °C\.\nHandling strength earliest 13:00, likely later\./);
    expect([said.de, said.es, said.en].map(({ buttons }) => buttons.map(({ id, label }) => `${label} ${id.replace(/\d+$/, 'N')}`))).toEqual([['Zurücknehmen undo N'], ['Deshacer undo N'], ['Undo undo N']]);
  });

  it('says to each what was not understood, and offers lines that anybody can send', async () => {
    const day = await begin();
    expect((await day.says('ines', 'cure 501 P1 lamp')).text).toBe('Verstanden: härten, lampe, Auftrag 501, Karte P1. Braucht: eine Temperatur für den Strahler. Beispiel für die Form: `cure 501 P1 lamp 35`. Nichts gespeichert.');
    expect((await day.says('tomek', 'cure 501 P1 lamp')).text).toBe('Entendido: curar, lámpara, trabajo 501, ficha P1. Hace falta: una temperatura de la lámpara. Ejemplo de la forma: `cure 501 P1 lamp 35`. Nada guardado.');
    expect((await day.says('wren', 'cure 501 P1 lamp')).text).toBe('Understood: cure, lamp, job 501, card P1. Needs a lamp temperature. Example of the form: `cure 501 P1 lamp 35`. Nothing stored.');
    const asked = await day.says('tomek', 'comprobar 501');
    expect(asked.buttons.map(({ label }) => label)).toEqual(['duro', 'blando']);
  });

  it('explains the sum to each', async () => {
    const { day } = await threeCures();
    expectNoEnglish((await day.says('ines', 'warum 501')).text.replace('example 1', ''), /^501 Handfestigkeit, Karte P1/, /Regel:/, /1,7 %/);
    expectNoEnglish((await day.says('tomek', 'por qué 501')).text.replace('example 1', ''), /^501 resistencia de manipulación, ficha P1/, /Regla:/, /1,7 %/);
    expect((await day.says('wren', 'why 501')).text).toMatch(/^501 handling strength, card P1[^]*1\.7 %/);
  });

  it('refuses each in their own', async () => {
    const { day } = await threeCures();
    expectNoEnglish((await day.says('ines', 'fest 501')).text, /NOCH NICHT/, /Handfestigkeit/, /13:00/);
    expectNoEnglish((await day.says('tomek', 'duro 502')).text, /AÚN NO/, /resistencia de manipulación/i, /13:00/);
    expect((await day.says('wren', 'hard 503')).text).toMatch(/^503 NOT yet: handling strength earliest 13:00/);
  });

  it('lists for each', async () => {
    const { day } = await threeCures();
    expectNoEnglish((await day.says('ines', 'wer wartet')).text, /Handfestigkeit/, /502.*Tomek, Luft 20 °C/);
    expectNoEnglish((await day.says('tomek', 'quién espera')).text, /resistencia de manipulación/i, /501.*Ines, aire 20 °C/);
    expect((await day.says('wren', 'who waits')).text).toMatch(/^501 handling strength 13:00, Ines, air 20 °C/);
  });

  it('reminds each in their own, and takes the tap of a translated button', async () => {
    const { day } = await threeCures();
    await day.at('13:00');
    const posts = await day.posts('handling');
    const to = (who: string): ReplyJson => posts.find((post) => post.to === who)?.reply ?? { id: '', text: `nothing to ${who}`, buttons: [] };
    expectNoEnglish(to('ines').text, /^501/, /Handfestigkeit/);
    expectNoEnglish(to('tomek').text, /^502/, /resistencia de manipulación/i);
    expect(to('wren').text).toMatch(/^503 handling strength due 13:00/);
    expect(['ines', 'tomek', 'wren'].map((who) => to(who).buttons.slice(0, 2).map(({ label }) => label))).toEqual([['Hart', 'Weich'], ['Duro', 'Blando'], ['Hard', 'Soft']]);
    expectNoEnglish((await day.program.press('ines', to('ines'), 'Hart')).text, /Handfestigkeit/);
    expect(await day.milestone('501', 'handling')).toBe('13:00 confirmed');
  });

  it('takes a time in any language from anybody', async () => {
    const day = await begin();
    await day.at('08:10');
    expectNoEnglish((await day.says('tomek', '501 P1 zu halb acht')).text, /^501 cerrado 07:30/);
    expectNoEnglish((await day.says('ines', '502 P1 cerrado hace 20 min')).text, /^502 geschlossen 07:50/);
  });

  it('speaks to the channel in the language of the shop', async () => {
    const { day } = await threeCures(' lamp 30');
    expect(JSON.stringify(await day.program.get('/api/waiting'))).toMatch(/"heat":"lámpara 30 °C"/);
    await day.at('17:01');
    const closing = (await day.posts('bundle')).find((post) => post.to === 'channel');
    expectNoEnglish(closing?.reply.text ?? 'nothing', /resistencia de manipulación/i, /502/);
  });

  it('speaks to strangers in the language of the shop, and goes on so when they are taken on', async () => {
    const day = await begin();
    await day.at('08:00');
    expectNoEnglish((await day.says('Sam', 'cure 501 P1')).text, /Sam/, /Ines/, /`adopt sam technician`/);
    expectNoEnglish((await day.says('ines', 'adopt sam technician')).text, /Sam/);
    expectNoEnglish((await day.says('Sam', 'cure 502 P1')).text, /^502 P1 cerrado 08:00/);
  });
});
