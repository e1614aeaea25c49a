import { writeFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { Day } from '../support/day.js';
import { tempFolder } from '../support/program.js';

it('F1 on air waits twelve hours before sanding', async () => {
  // Solder-replacement filler, 12 h unheated before sanding: common practice, no source.
  // A card of that figure; the night is as warm as the day here, so that it is one plain sum.
  const folder = tempFolder();
  writeFileSync(join(folder, 'f12.yaml'), 'card: F12\ntitle: seam filler\nversion: check 1\nexample: true\nbasis: panel-temperature\nsand: { 20: 720 }\n');
  const shop = join(folder, '..', `${Date.now()}-shop.yaml`);
  writeFileSync(shop, readFileSync('src/shop/example-shop.yaml', 'utf8').replace(/^night: .*$/m, 'night: 20'));
  const day = await Day.begin('2026-03-02T08:00', { CURECLERK_SHOP: shop, CURECLERK_CARDS: folder });
  await day.says('tomek', 'cure 501 F12');
  expect(await day.milestone('501', 'sand')).toBe('20:00 running');
});

it('what does not fit into the bundle is said on its own: no step of a ladder is lost', async () => {
  const day = await Day.begin('2026-03-02T14:00');
  for (let job = 600; job < 754; job += 11) await day.says('tomek', `cure ${job} K lamp 30`);
  await day.at('15:20');
  await day.says('wren', 'cure 777 K lamp 30');
  await day.at('2026-03-03T07:30');
  const last = (await day.posts('handling')).filter((post) => post.about.job === '777').at(-1);
  expect([last?.to, last?.at]).toEqual(['ines', day.iso('2026-03-03T07:30')]);
});
