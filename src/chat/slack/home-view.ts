import type { types } from '@slack/bolt';
import type { Answer } from '../../reply/answer.js';
import { sayHome } from '../../reply/catalogue/home.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import type { HomeBoard } from '../../reply/compose/home.js';
import { section, toBlocks } from './to-blocks.js';

const anywhere = (reader: Reader): Answer => ({
  tone: 'plain',
  lines: [],
  buttons: [{ label: sayHome(reader, 'who-waits'), line: 'who waits' }, { label: sayHome(reader, 'lamps'), line: 'lamps' }, { label: sayHome(reader, 'help'), line: 'help' }],
});

/** Somebody's home tab: own cures first, then everything that waits. Every button is a line; answers come as direct messages. */
export function homeView({ mine, waiting }: HomeBoard, reader: Reader): types.HomeView {
  const own = mine.length === 0 ? [section(sayHome(reader, 'none-of-mine'))] : mine.flatMap((one) => toBlocks(one, null));
  return { type: 'home', blocks: [section(`*${sayHome(reader, 'mine')}*`), ...own, section(`*${sayHome(reader, 'all')}*`), ...toBlocks(waiting, null), ...toBlocks(anywhere(reader), null)] };
}
