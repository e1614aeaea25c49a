import type { Context } from 'hono';
import { languageFor } from '../../repair/people.js';
import { PAGE_WORDS } from '../../reply/catalogue/page.js';
import { LOCALES } from '../../reply/catalogue/speaker.js';
import { ReaderQuery, readQuery } from './body.js';
import { lastSeq } from './last-seq.js';
import { boardJson, isoOf } from './page-json.js';
import type { PagePorts } from './page-ports.js';

/** GET /api/desk?from=name: all that the page shows at its head and on its board, in one piece, with the words around it in the language of whoever writes; without a name in the shop's. */
export function deskJson(c: Context, ports: PagePorts): object {
  const { desk, shop, clock, practiceDay } = ports;
  const { from } = readQuery(c, ReaderQuery);
  const reader = from === undefined ? undefined : ports.speaker(from).id;
  const language = languageFor(shop, reader ?? 'channel');
  return {
    shop: shop.name,
    zone: shop.zone,
    people: shop.people.map(({ id, name }) => ({ id, name })),
    practice: clock.practice === null ? null : practiceDay !== null ? 'day' : clock.practice.standing ? 'standing' : 'running',
    now: isoOf(clock.now()),
    lastPost: lastSeq(desk),
    board: boardJson(desk, reader),
    language,
    locale: LOCALES[language],
    words: PAGE_WORDS[language],
  };
}
