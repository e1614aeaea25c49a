import type { types } from '@slack/bolt';
import type { HomeBoard } from '../../reply/compose/home.js';
import { section, toBlocks } from './to-blocks.js';

const NONE_OF_MINE = 'None of your cures waits for anything.';
const ANYWHERE = { tone: 'plain', lines: [], buttons: [{ label: 'Who waits', line: 'who waits' }, { label: 'Lamps', line: 'lamps' }, { label: 'Help', line: 'help' }] } as const;

/** Somebody's home tab: own cures first, then everything that waits. Every button is a line; answers come as direct messages. */
export function homeView({ mine, waiting }: HomeBoard): types.HomeView {
  const own = mine.length === 0 ? [section(NONE_OF_MINE)] : mine.flatMap((one) => toBlocks(one, null));
  return { type: 'home', blocks: [section('*My cures*'), ...own, section('*All that waits*'), ...toBlocks(waiting, null), ...toBlocks(ANYWHERE, null)] };
}
