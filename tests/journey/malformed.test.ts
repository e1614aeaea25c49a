import fc from 'fast-check';
import { expect, it } from 'vitest';
import { z } from 'zod';
import { jobNo } from '../../src/repair/ids.js';
import { openBook } from '../../src/store/open.js';
import { instant } from '../../src/cure/units.js';
import { Day } from '../support/day.js';

const RUNS = 200;
const Answer = z.object({ reply: z.object({ text: z.string().min(1), buttons: z.array(z.unknown()) }) });
const Problem = z.object({ type: z.string(), title: z.string().min(1), status: z.literal(400), field: z.string().min(1) });

/** Lines that mean nothing, and lines that nearly mean something. */
const badLine = fc.oneof(
  fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }).map((text) => `zz ${text}`),
  fc.tuple(fc.constantFrom('lamp 501', 'read 501', 'cure 501 P77', 'air', 'lmp 501 35', 'closed 501 at 25:70', 'paste 501 P1 P2', 'undo x', 'check 501'), fc.constantFrom('', ' ,', ' 1,30', ' 9999', ' -50', ' ?!')).map(([one, other]) => one + other),
);

const badBody = fc.oneof(
  fc.record({ from: fc.constant('tomek') }),
  fc.record({ text: fc.constant('who waits') }),
  fc.record({ from: fc.constant(''), text: fc.constant('who waits') }),
  fc.record({ from: fc.constant('tomek'), text: fc.oneof(fc.integer(), fc.constant(null), fc.array(fc.string()), fc.constant('x'.repeat(301))) }),
  fc.record({ from: fc.constant('tomek'), text: fc.constant('who waits'), more: fc.anything({ maxDepth: 0, withNullPrototype: false }) }).filter(({ more }) => more !== undefined),
  fc.constantFrom(null, 1, 'text', [], [1]),
);

it(`answers ${RUNS} malformed lines clearly and stores nothing from them`, async () => {
  const day = await Day.begin();
  await day.says('tomek', 'cure 500 K lamp 30');
  const before = await day.book();
  await fc.assert(
    fc.asyncProperty(badLine, async (text) => {
      const response = await day.program.post('/api/messages', { from: 'tomek', text });
      const { reply } = Answer.parse(await response.json());
      expect(response.status).toBe(200);
      expect(reply.text.split('\n').length).toBeLessThanOrEqual(6);
    }),
    { numRuns: RUNS },
  );
  expect(await day.book()).toEqual(before);
});

it('refuses a button that did not stand under the answer, and takes one that did', async () => {
  const day = await Day.begin();
  const reply = await day.says('tomek', 'cure 500 K lamp 30');
  const before = await day.book();
  const press = (button: string): Promise<Response> => day.program.post('/api/press', { from: 'tomek', reply: reply.id, button });
  for (const button of ['zz', 'cure 500 P77', 'Hard?!', 'when 500']) expect(Problem.parse(await (await press(button)).json()).field).toBe('button');
  expect(await day.book()).toEqual(before);
  expect((await day.program.post('/api/press', { from: 'tomek', reply: 'any', button: 'when 500' })).status).toBe(409);
  expect(await day.book()).toEqual(before);
  expect((await press(reply.buttons[0]?.id ?? '')).status).toBe(200);
});

it(`refuses ${RUNS} malformed bodies by the field, and stores nothing from them`, async () => {
  const day = await Day.begin();
  await day.says('tomek', 'cure 500 K lamp 30');
  const before = await day.book();
  await fc.assert(
    fc.asyncProperty(badBody, async (body) => {
      const response = await day.program.post('/api/messages', body);
      expect(response.headers.get('content-type')).toContain('application/problem+json');
      Problem.parse(await response.json());
    }),
    { numRuns: RUNS },
  );
  expect(await day.book()).toEqual(before);
});

it('stores each entry once, with both of its times, and an undo beside it', async () => {
  const day = await Day.begin();
  await day.at('09:20');
  await day.says('wren', 'started 20 min ago 501 K lamp 30');
  await day.says('wren', 'undo');
  expect((await day.says('wren', 'undo')).text).toContain('Nothing of yours');
  const data = await day.closedData();
  const book = openBook(data);
  const facts = book.transact((tx) => tx.factsOf(jobNo('501')));
  book.close();
  expect(facts.map((record) => record.fact.type)).toEqual(['cure-opened', 'closed', 'lamp-set', 'undone']);
  expect(facts[1]).toMatchObject({ happenedAt: instant(Date.parse(day.iso('09:00'))), enteredAt: instant(Date.parse(day.iso('09:20'))), by: 'wren' });
});

it('gives a request that is repeated under its own key the same answer, a refusal too', async () => {
  const day = await Day.begin();
  const send = async (): Promise<string> => {
    const headers = { 'content-type': 'application/json', 'idempotency-key': 'one-key' };
    const response = await fetch(`${day.program.url}/api/messages`, { method: 'POST', headers, body: JSON.stringify({ from: 'tomek', text: 'hard 777' }) });
    return Answer.parse(await response.json()).reply.text;
  };
  const first = await send();
  await day.says('tomek', 'cure 777 K lamp 30');
  await day.at('09:00');
  expect(await send()).toBe(first);
  expect(await day.milestone('777', 'handling')).toMatch(/due$/);
});
